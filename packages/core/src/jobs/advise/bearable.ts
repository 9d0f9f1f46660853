import type { AdvisedPart } from "./advice.js";

/** Heat that a coil or a capacitor of the size that one makes or buys gives off by itself, W (common practice, no source). */
const MOST_HEAT_W = { coil: 20, capacitor: 5 } as const;
/**
 * The same for each metre of a line, W: what thin coax loses in a metre at the few hundred watts that it is made for (reckoned from its
 * loss). Heat gathers where the current is greatest, at twice the mean.
 */
const MOST_HEAT_W_PER_M = 5;

/** Whether a part gets no hotter than such parts may. What the core of a transformer loses no sweep shows. */
export function isBearable({ part, stress: { heatW } }: AdvisedPart): boolean {
  switch (part.kind) {
    case "coil":
    case "capacitor":
      return heatW <= MOST_HEAT_W[part.kind];
    case "line":
    case "stub":
      return heatW <= MOST_HEAT_W_PER_M * part.feedline.lengthM;
    case "transformer":
      return true;
  }
}
