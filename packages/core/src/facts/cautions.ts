/**
 * The usual cautions, with where to look. Common practice, no source, but for what each names (ICNIRP and IEC from memory);
 * they defer to local rules and the makers' instructions.
 */
export const CAUTIONS: readonly string[] = [
  "A low SWR does not show that an antenna radiates, nor that transmitting is permitted: your licence and the rules of the country you are in decide.",
  "Keep people away from a transmitting antenna, and check RF exposure by the rules that apply where you are (United States: 47 CFR 1.1310 and 97.13(c), FCC OET Bulletin 65 with Supplement B; elsewhere the regulator's own, mostly after the ICNIRP guidelines).",
  "Keep wires and masts clear of power lines by more than their own length, also while they go up or if they fall; ask the operator of the lines.",
  "Disconnect and ground the feedline before a thunderstorm, and do not touch it during one; a building's lightning protection is work for those who know IEC 62305 and the local rules.",
  "Work at height only secured and never alone.",
  "Stay within the ratings that the makers of radio, tuner, feedline and antenna state, for the mode in use.",
];
