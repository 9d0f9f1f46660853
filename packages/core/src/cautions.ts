/**
 * The usual cautions. Common practice, no source; they defer to local rules and the makers' instructions.
 */
export const CAUTIONS: readonly string[] = [
  "A low SWR does not show that an antenna radiates, nor that transmitting is permitted: the licence and local rules decide.",
  "Keep people away from a transmitting antenna; check RF exposure by the rules that apply where you are.",
  "Keep wires and masts well clear of power lines, work at height only secured, and disconnect before a thunderstorm.",
  "Stay within the ratings that the makers of radio, tuner, feedline and antenna state.",
];
