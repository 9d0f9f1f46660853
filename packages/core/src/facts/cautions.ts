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

/**
 * What belongs beside every answer that names a power, a voltage or a current, or is of an antenna that is fed where its impedance
 * is high, as a wire fed at its end is. Common practice, no source.
 */
export const HIGH_VOLTAGE_CAUTIONS: readonly string[] = [
  "The ends of a wire, a feed point of high impedance (a wire fed at its end or near it), ladder line and the inside of a tuner carry high RF voltage, at a few watts already: it burns skin and starts fires. Keep all of them out of reach, insulated, and clear of what can burn.",
  "What a tuner, a transformer, a choke or a line loses becomes heat in it: rated for one match and one mode, it may overheat in another. Feel for heat only with the transmitter off.",
];

/** The cautions that fit an answer. */
export const cautionsFor = (answer: { readonly hasHighVoltage: boolean }): readonly string[] =>
  answer.hasHighVoltage ? [...HIGH_VOLTAGE_CAUTIONS, ...CAUTIONS] : CAUTIONS;
