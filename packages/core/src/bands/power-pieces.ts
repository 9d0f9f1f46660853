import type { Piece } from "../curve/pieces.js";
import type { PlanSegment, PowerLimit, UsableBand } from "../facts/band-plan/band-plan.js";
import { powerLimitsIn, takesSignal } from "../facts/band-plan/privileges.js";
import type { Mode } from "../facts/modes.js";

/** The parts of a band where a mode may be sent, joined where they adjoin, apart for each set of power limits. */
export function segmentsByLimit(
  { segments }: UsableBand,
  licenceClass: string | null,
  mode: Mode,
): readonly { limits: readonly PowerLimit[]; pieces: readonly Piece[] }[] {
  const groups: { limits: readonly PowerLimit[]; pieces: { lowHz: number; highHz: number }[] }[] = [];
  for (const segment of segments) {
    if (!takesSignal(segment, licenceClass, mode)) continue;
    const limits = powerLimitsIn(segment, licenceClass, mode);
    const group = groups.find((known) => isSame(known.limits, limits));
    if (group === undefined) {
      groups.push({ limits, pieces: [pieceOf(segment)] });
      continue;
    }
    const last = group.pieces.at(-1);
    if (last !== undefined && last.highHz === segment.lowHz) last.highHz = segment.highHz;
    else group.pieces.push(pieceOf(segment));
  }
  return groups;
}

const pieceOf = ({ lowHz, highHz }: PlanSegment) => ({ lowHz, highHz });

const isSame = (a: readonly PowerLimit[], b: readonly PowerLimit[]) =>
  a.length === b.length && a.every(({ watts, basis }, i) => watts === b[i]?.watts && basis === b[i]?.basis);
