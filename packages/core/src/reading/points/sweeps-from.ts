import { median } from "simple-statistics";
import { ReadError } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { isOverStretch, type Reading } from "../../sweep/reading.js";
import { type Sweep, type SweepDetails, scalarSweep, vectorSweepOf } from "../../sweep/sweep.js";
import type { ReadOptions } from "../options/read-options.js";
import { takenAtFrom } from "../text/taken-at.js";
import { arrangePoints, type Points, pick } from "./arrange.js";
import type { ReadPoints } from "./read-points.js";
import { notedRounding } from "./rounding.js";

/**
 * The sweeps that points make, each in ascending order, with what there is to say of them.
 *
 * @param reads what was read of each section of a file; of one that has none, what was read of the whole
 * @param ofText what there is to say of the text that they were read from
 * @throws ReadError where no point has a frequency
 */
export function sweepsFrom(
  reads: readonly ReadPoints[],
  ofText: readonly Finding[],
  options: ReadOptions,
): [Sweep, ...Sweep[]] {
  const arranged = reads.map((read) => arrangedOf(read, ofText));
  const count = arranged.reduce((sum, { points }) => sum + points.length, 0);
  let number = 0;
  const sweeps = arranged.flatMap(({ read, points, findings }) =>
    points.map((own, index) => {
      number += 1;
      const suffix = count > 1 ? ` (sweep ${number} of ${count})` : "";
      return sweepOf(own, read, read.readings?.[index], findings, suffix, options);
    }),
  );
  // Points are arranged into one set at least.
  return sweeps as [Sweep, ...Sweep[]];
}

interface Arranged {
  readonly read: ReadPoints;
  readonly points: readonly Points[];
  readonly findings: readonly Finding[];
}

function arrangedOf(read: ReadPoints, ofText: readonly Finding[]): Arranged {
  const findings: Finding[] = [...ofText, ...read.findings];
  const points = arrangeSeries(read, findings);
  findings.push(...seriesUntold(points, findings));
  return { read, points, findings };
}

function sweepOf(
  points: Points,
  read: ReadPoints,
  readings: readonly Reading[] | undefined,
  findings: readonly Finding[],
  suffix: string,
  options: ReadOptions,
): Sweep {
  const file = options.fileName ?? "input";
  if (points.frequencyHz.length === 0) {
    throw new ReadError({
      code: "no-data",
      file,
      found: "no row has a frequency above 0 Hz",
      expected: "frequencies in the first column",
    });
  }
  const comments = read.comments.filter((comment) => comment !== "");
  const noted = notedRounding(comments);
  const areSpots = isSpots(points);
  return build(
    points,
    {
      label: baseName(file) + suffix,
      source: { file, format: read.format, description: read.description, comments },
      takenAt: takenAtFrom(comments, options.fileName),
      referenceOhms: read.referenceOhms,
      continuity: areSpots ? "spots" : "curve",
      repeatNoise: points.repeatNoise,
      rounding: Math.max(points.rounding.usual, noted.usual),
      greatestRounding: Math.max(points.rounding.greatest, noted.greatest),
      findings: [...findings, ...findingsAbout(points, areSpots, readings)],
    },
    readings,
  );
}

/** The points of each series, in ascending order; of a file without any, of each sweep that their order tells. */
function arrangeSeries({ points, series }: ReadPoints, findings: Finding[]): readonly Points[] {
  if (!series) return arrangePoints(points, findings);
  return series.names.flatMap((_, index) => {
    const rows = [...series.of.keys()].filter((row) => series.of[row] === index);
    return rows.length === 0 ? [] : arrangePoints(pick(points, rows), findings);
  });
}

/** Two sweeps of the same frequencies in one file, with nothing that tells them apart: before and after, or two antennas. */
function seriesUntold(arranged: readonly Points[], said: readonly Finding[]): readonly Finding[] {
  const [first, second] = arranged;
  if (first === undefined || second === undefined || said.some(({ code }) => code === "series-told-apart")) return [];
  const frequencies = new Set(first.frequencyHz);
  const shared = second.frequencyHz.filter((frequency) => frequencies.has(frequency)).length;
  return 2 * shared > second.frequencyHz.length
    ? [finding("caution", "series-untold", { count: arranged.length }, { line: second.line[0] as number })]
    : [];
}

function build(points: Points, details: SweepDetails, readings: readonly Reading[] | undefined): Sweep {
  const { frequencyHz, reflectionMagnitude, reflectionReal, reflectionImaginary } = points;
  return reflectionReal === null || reflectionImaginary === null
    ? scalarSweep(details, { frequencyHz, reflectionMagnitude }, points.ceiling, readings)
    : vectorSweepOf(details, { frequencyHz, reflectionReal, reflectionImaginary, reflectionMagnitude });
}

/** A handful of readings this far apart, as a share of their frequency, is no curve (our own choice). */
const MOST_SPOTS = 12;
const SPOT_STEP = 0.05;

function isSpots({ frequencyHz, areSpots }: Points): boolean {
  if (areSpots) return true;
  if (frequencyHz.length < 2 || frequencyHz.length > MOST_SPOTS) return false;
  const steps = Array.from(frequencyHz.subarray(1), (value, i) => value / (frequencyHz[i] as number) - 1);
  return median(steps) > SPOT_STEP;
}

/** Noise and calibration lift the edges of a sweep beyond total reflection, not as much of it as this. */
const MOST_BEYOND_SHARE = 0.5;

function findingsAbout(
  { frequencyHz, reflectionMagnitude, line }: Points,
  areSpots: boolean,
  readings: readonly Reading[] = [],
): readonly Finding[] {
  const findings: Finding[] = [];
  let beyond = 0;
  let first = -1;
  for (let i = 0; i < reflectionMagnitude.length; i++) {
    if ((reflectionMagnitude[i] as number) <= 1) continue;
    beyond++;
    if (first < 0) first = i;
  }
  if (beyond > 0) {
    const areMost = beyond > MOST_BEYOND_SHARE * reflectionMagnitude.length;
    const params = { count: beyond, points: reflectionMagnitude.length, areMost };
    findings.push(
      finding(areMost ? "problem" : "caution", "beyond-total-reflection", params, { line: line[first] as number }),
    );
  }
  const spots = frequencyHz.length - readings.filter(isOverStretch).length;
  if (areSpots && spots > 0) {
    findings.push(finding("caution", "spot-readings", { count: spots }));
  }
  if (frequencyHz.length === 1 && spots === 1) {
    findings.push(finding("caution", "single-point", {}));
  }
  return findings;
}

const baseName = (file: string) =>
  file
    .split("+")
    .map((part) => part.replace(/^.*[/\\]/, ""))
    .join("+");
