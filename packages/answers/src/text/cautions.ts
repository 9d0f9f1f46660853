import { wrap } from "./table.js";

/** The cautions in a few lines, for a terminal; reports, Markdown and JSON carry them whole. */
export function shortCautions(width: number, { hasHighVoltage = false } = {}): string {
  return [...(hasHighVoltage ? [HIGH_VOLTAGE] : []), GENERAL].map((text) => wrap(text, width, "  ")).join("\n");
}

const GENERAL =
  "* A low SWR shows neither that an antenna radiates nor that you may transmit. Mind licence and local rules, RF exposure, power lines, storms, work at height, and all ratings.";

const HIGH_VOLTAGE =
  "* High RF voltage at the ends of a wire, at a feed point of high impedance and in a tuner, also at low power: burns, fire. Losses heat tuner, transformer and choke. Keep out of reach.";

/** Cautions as a list in Markdown. */
export const cautionItems = (cautions: readonly string[]): string => cautions.map((text) => `- ${text}`).join("\n");
