import { mean, rootMeanSquare, sampleVariance } from "simple-statistics";
import { student95 } from "../../numbers/student.js";
import { commonSamples, meanDifference, thinnedAxis } from "./common-samples.js";
import { magnitudeAt, type SideCurve } from "./side-curve.js";

/** How two groups of repeats differ in one number. */
export interface GroupChange {
  /** Mean of the second group less mean of the first */
  readonly change: number;
  /** What the scatter of the repeats alone may make of it, with 95 % probability; 0 where nothing was repeated */
  readonly margin: number;
  /** Standard deviation of the repeats around the mean of their side; 0 where nothing was repeated */
  readonly scatter: number;
}

/** Compares one number over repeats before and after, with the scatter of both groups pooled. */
export function groupChange(before: readonly number[], after: readonly number[]): GroupChange {
  const change = mean([...after]) - mean([...before]);
  const freedom = before.length + after.length - 2;
  if (freedom < 1) return { change, margin: 0, scatter: 0 };
  const squares = [before, after].reduce(
    (sum, group) => sum + (group.length > 1 ? sampleVariance([...group]) * (group.length - 1) : 0),
    0,
  );
  const scatter = Math.sqrt(squares / freedom);
  const error = scatter * Math.sqrt(1 / before.length + 1 / after.length);
  return { change, margin: student95(freedom) * error, scatter };
}

/** Which of several curves has a ρ that lies closest to that of all others. */
export function indexOfMiddle(curves: readonly (SideCurve | null)[]): number {
  const sums = curves.map((curve) => curves.reduce((sum, other) => sum + distanceBetween(curve, other), 0));
  return sums.indexOf(Math.min(...sums));
}

/** Root mean square of what lies between the middle one of some repeats and the others, of Γ where all know it, else of ρ; 0 for one alone. */
export function scatterAround(middle: SideCurve | null, curves: readonly (SideCurve | null)[]): number {
  const distances = curves
    .filter((curve) => curve !== middle)
    .map((curve) =>
      middle?.isVector && curve?.isVector
        ? meanDifference(commonSamples(middle, curve))
        : distanceBetween(middle, curve),
    )
    .filter((distance) => !Number.isNaN(distance));
  return distances.length === 0 ? 0 : rootMeanSquare(distances);
}

/** Root mean square of the difference of ρ where both curves are known; 0 where they never are. */
function distanceBetween(first: SideCurve | null, second: SideCurve | null): number {
  if (first === second || first === null || second === null) return 0;
  const differences = Array.from(thinnedAxis(first, second))
    .map((frequencyHz) => magnitudeAt(first, frequencyHz) - magnitudeAt(second, frequencyHz))
    .filter((difference) => !Number.isNaN(difference));
  return differences.length === 0 ? 0 : rootMeanSquare(differences);
}
