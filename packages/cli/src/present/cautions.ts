import { wrap } from "./table.js";

/** The cautions in two lines, for a terminal; reports and JSON carry them whole. */
export function shortCautions(width: number): string {
  return wrap(
    "* A low SWR shows neither that an antenna radiates nor that you may transmit. Mind licence and local rules, RF exposure, power lines, storms, work at height, and all ratings.",
    width,
    "  ",
  );
}
