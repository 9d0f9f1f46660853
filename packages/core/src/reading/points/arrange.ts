import { extent, median, sumNthPowerDeviations } from "simple-statistics";
import { at, type Column, magnitudesOf } from "../../numbers/column.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { Rounding } from "./rounding.js";

/** Points as a file lists them: any order, perhaps repeated. Scalar points have no real and imaginary part; of others the magnitude is theirs. */
export interface Points {
  readonly frequencyHz: Float64Array;
  readonly reflectionMagnitude: Float64Array;
  readonly reflectionReal: Float64Array | null;
  readonly reflectionImaginary: Float64Array | null;
  /** Line of each point in its file */
  readonly line: Uint32Array;
  /** ρ from which on a reading means "at least"; null where the instrument's scale did not end */
  readonly ceiling: number | null;
  /** Known to be single readings, however close they lie */
  readonly areSpots: boolean;
  /** Noise of the averaged values, told from readings repeated at the same frequency; null without enough of them */
  readonly repeatNoise: number | null;
  /** How far rounding in print may have moved Γ; 0 where that is next to nothing */
  readonly rounding: Rounding;
}

/** What is said of rows that hold no usable number: the line of the first, and how many there are. */
export function rowsWithoutNumber(firstLine: number, count: number): Finding {
  return finding("caution", "row-without-number", { firstLine, count }, { line: firstLine });
}

/** Runs of ascending frequency this long or longer, over the same range, are sweeps of their own. */
const FEWEST_POINTS_OF_A_SWEEP = 5;

/**
 * Puts points into ascending order, one set for each sweep that the file holds.
 *
 * - A sweep that runs downwards is turned round.
 * - Stretches that do not overlap (band by band) become one sweep with gaps.
 * - A restart over a range already swept begins another sweep.
 * - A few rows out of order are sorted in; rows of the same frequency are averaged. Both are reported.
 *
 * @param findings what was changed is added here
 */
export function arrangePoints(points: Points, findings: Finding[]): readonly Points[] {
  if (at(points.frequencyHz, 0) > 0 && isAscending(points.frequencyHz)) return [points];
  const usable = withoutUnusableFrequencies(points, findings);
  if (isAscending(usable.frequencyHz)) return [usable];
  if (isDescending(usable.frequencyHz)) {
    findings.push(finding("info", "frequency-descending", {}));
    return [sortAndMerge(usable, findings)];
  }
  return groupRuns(usable).map((indices) => sortAndMerge(pick(usable, indices), findings));
}

function withoutUnusableFrequencies(points: Points, findings: Finding[]): Points {
  const { frequencyHz } = points;
  if (frequencyHz.every((value) => value > 0)) return points;
  const kept = [...frequencyHz.keys()].filter((i) => at(frequencyHz, i) > 0);
  const lost = frequencyHz.findIndex((value) => !(value > 0));
  const count = frequencyHz.length - kept.length;
  findings.push(finding("info", "frequency-not-positive", { count }, { line: points.line[lost] as number }));
  return pick(points, kept);
}

const isAscending = (column: Column) => isEveryStep(column, (before, value) => value > before);
const isDescending = (column: Column) =>
  column.length > 1 &&
  at(column, column.length - 1) < at(column, 0) &&
  isEveryStep(column, (before, value) => value <= before);

function isEveryStep(column: Column, condition: (before: number, value: number) => boolean): boolean {
  for (let i = 1; i < column.length; i++) if (!condition(at(column, i - 1), at(column, i))) return false;
  return true;
}

const MOST_ASTRAY = 2;

/** Splits at every descent and every gap, then joins runs into sweeps: those that do not overlap, and those too short to stand alone. */
function groupRuns({ frequencyHz }: Points): readonly number[][] {
  const runs: number[][] = [[]];
  frequencyHz.forEach((value, i) => {
    if (i > 0 && value < at(frequencyHz, i - 1)) runs.push([]);
    runs.at(-1)?.push(i);
  });
  const isStray = runs.some((run) => run.length < FEWEST_POINTS_OF_A_SWEEP);
  if (isStray) return [runs.flat()];
  const sweeps: { indices: number[]; ranges: { low: number; high: number }[] }[] = [];
  for (const run of runs.flatMap((indices) => splitAtGaps(indices, frequencyHz))) {
    const low = at(frequencyHz, run[0] as number);
    const high = at(frequencyHz, run.at(-1) as number);
    const isWithin = (index: number, range: { low: number; high: number }) =>
      at(frequencyHz, index) > range.low && at(frequencyHz, index) < range.high;
    const shared = (range: { low: number; high: number }) => run.filter((index) => isWithin(index, range)).length;
    // A row or two that changed their places begin no sweep.
    const home = sweeps.find(({ ranges }) =>
      ranges.every((range) => high <= range.low || low >= range.high || shared(range) <= MOST_ASTRAY),
    );
    if (home === undefined) sweeps.push({ indices: run, ranges: [{ low, high }] });
    else {
      home.indices.push(...run);
      home.ranges.push({ low, high });
    }
  }
  return sweeps.map(({ indices }) => indices);
}

/** A step this many times the usual one of a run is a gap: on either side of it lies a stretch of its own (our own choice). */
const GAP_RATIO = 5;

function splitAtGaps(run: readonly number[], frequencyHz: Column): readonly number[][] {
  const stepTo = (k: number) => at(frequencyHz, run[k] as number) - at(frequencyHz, run[k - 1] as number);
  const steps = run.slice(1).map((_, k) => stepTo(k + 1));
  const widest = GAP_RATIO * (steps.length === 0 ? 0 : median(steps));
  const parts: number[][] = [[]];
  run.forEach((index, k) => {
    if (k > 0 && stepTo(k) > widest) parts.push([]);
    parts.at(-1)?.push(index);
  });
  return parts;
}

function sortAndMerge(points: Points, findings: Finding[]): Points {
  const order = [...points.frequencyHz.keys()].sort(
    (a, b) => at(points.frequencyHz, a) - at(points.frequencyHz, b) || a - b,
  );
  const outOfOrder = points.frequencyHz.findIndex((value, i) => i > 0 && value < at(points.frequencyHz, i - 1));
  if (outOfOrder > 0 && !isDescending(points.frequencyHz) && !isBandByBand(points)) {
    findings.push(finding("caution", "frequency-not-ascending", {}, { line: points.line[outOfOrder] as number }));
  }
  const groups: number[][] = [];
  for (const index of order) {
    const last = groups.at(-1);
    const value = at(points.frequencyHz, index);
    if (last !== undefined && value === at(points.frequencyHz, last[0] as number)) last.push(index);
    else groups.push([index]);
  }
  const repeated = groups.filter((group) => group.length > 1);
  if (repeated.length > 0) {
    const apart = median(repeated.map((group) => distanceWithin(points, group)));
    const isFar = apart > MOST_APART;
    findings.push(
      finding(
        apart > 0 ? "caution" : "info",
        "frequency-repeated",
        { band: null, count: repeated.length, apart: isFar ? apart : null },
        { line: points.line[(repeated[0] as number[])[1] as number] as number },
      ),
    );
  }
  return averaged(points, groups);
}

/** Repeated readings of one antenna lie closer together in Γ (in ρ, where that is all) than this (our own choice). */
const MOST_APART = 0.01;

/** How far apart some readings of one frequency lie, in Γ or in ρ. */
function distanceWithin(
  { reflectionMagnitude, reflectionReal, reflectionImaginary }: Points,
  group: readonly number[],
): number {
  const spreadIn = (column: Column) => spreadOf(group.map((index) => at(column, index)));
  return reflectionReal === null || reflectionImaginary === null
    ? spreadIn(reflectionMagnitude)
    : Math.hypot(spreadIn(reflectionReal), spreadIn(reflectionImaginary));
}

function spreadOf(values: number[]): number {
  const [least, greatest] = extent(values);
  return greatest - least;
}

/** Whether the points are whole stretches in another order than of frequency, and not rows astray. */
function isBandByBand({ frequencyHz }: Points): boolean {
  const ranges: { low: number; high: number }[] = [];
  frequencyHz.forEach((value, i) => {
    const last = ranges.at(-1);
    if (last === undefined || value < at(frequencyHz, i - 1)) ranges.push({ low: value, high: value });
    else last.high = value;
  });
  const areApart = ranges
    .toSorted((a, b) => a.low - b.low)
    .every(({ low }, i, sorted) => i === 0 || low >= (sorted[i - 1]?.high ?? low));
  return areApart && frequencyHz.length / ranges.length >= FEWEST_POINTS_OF_A_SWEEP;
}

function averaged(points: Points, groups: readonly (readonly number[])[]): Points {
  const mean = (column: Float64Array) =>
    Float64Array.from(groups, (group) => group.reduce((sum, index) => sum + at(column, index), 0) / group.length);
  const real = points.reflectionReal && mean(points.reflectionReal);
  const imaginary = points.reflectionImaginary && mean(points.reflectionImaginary);
  return {
    ...points,
    frequencyHz: Float64Array.from(groups, (group) => at(points.frequencyHz, group[0] as number)),
    reflectionReal: real,
    reflectionImaginary: imaginary,
    reflectionMagnitude: real && imaginary ? magnitudesOf(real, imaginary) : mean(points.reflectionMagnitude),
    line: Uint32Array.from(groups, (group) => points.line[group[0] as number] as number),
    repeatNoise: noiseOfRepeats(points, groups),
  };
}

/** Frequencies that must be repeated for their spread to say something. */
const FEWEST_REPEATED = 5;

/** Standard deviation, in each part of Γ, of the mean of repeated readings: pooled over all of them. */
function noiseOfRepeats(points: Points, groups: readonly (readonly number[])[]): number | null {
  const columns =
    points.reflectionReal !== null && points.reflectionImaginary !== null
      ? [points.reflectionReal, points.reflectionImaginary]
      : [points.reflectionMagnitude];
  const repeated = groups.filter((group) => group.length > 1);
  if (repeated.length < FEWEST_REPEATED) return null;
  let square = 0;
  let freedom = 0;
  for (const group of repeated) {
    for (const column of columns) {
      const values = group.map((index) => at(column, index));
      square += sumNthPowerDeviations(values, 2);
      freedom += group.length - 1;
    }
  }
  const readings = repeated.reduce((sum, group) => sum + group.length, 0) / repeated.length;
  return Math.sqrt(square / freedom / readings);
}

export function pick(points: Points, indices: readonly number[]): Points {
  const column = (source: Float64Array) => Float64Array.from(indices, (index) => at(source, index));
  return {
    ...points,
    frequencyHz: column(points.frequencyHz),
    reflectionMagnitude: column(points.reflectionMagnitude),
    reflectionReal: points.reflectionReal && column(points.reflectionReal),
    reflectionImaginary: points.reflectionImaginary && column(points.reflectionImaginary),
    line: Uint32Array.from(indices, (index) => points.line[index] as number),
  };
}
