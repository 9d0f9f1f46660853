import type { Instrument } from "../../curve/uncertainty/instrument.js";
import { type CauseCode, isLikely } from "./cause.js";
import { type Explained, findCauses } from "./find-causes.js";
import { magnitudeCauses } from "./magnitude-causes.js";
import type { Side } from "./sides.js";
import { suspectedLoss } from "./suspected-loss.js";
import { tolerancesFor } from "./thresholds.js";

/** Causes beside which loss may have changed as well. */
const LEAVES_LOSS_OPEN: ReadonlySet<CauseCode> = new Set(["antenna-changed", "interference"]);

/** The causes that the data support; where none is sure, loss that the far-from-matched parts of the sweeps suggest as well. */
export function explanationOf(first: Side, second: Side, instrument: Instrument | null): Explained {
  const [before, after] = [first.middle.curve, second.middle.curve];
  if (before === null || after === null) return { causes: [], line: null };
  const tolerances = tolerancesFor(before, after, Math.max(first.scatter, second.scatter), instrument);
  const found =
    before.isVector && after.isVector
      ? findCauses(before, after, tolerances, instrument)
      : { causes: magnitudeCauses(before, after, tolerances), line: null };
  const isSure = found.causes.some((cause) => isLikely(cause) && !LEAVES_LOSS_OPEN.has(cause.code));
  if (isSure) return found;
  const suspected = suspectedLoss(before, after).filter(
    ({ code }) => !found.causes.some((cause) => cause.code === code),
  );
  return { ...found, causes: [...found.causes, ...suspected] };
}
