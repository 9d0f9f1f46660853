import { interquartileRange, median } from "simple-statistics";
import { grouped } from "../../numbers/grouped.js";
import { chanceOfDifference, leastChance } from "../../numbers/rank-test.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { SweepGrade } from "../grade.js";
import { lossesBeside } from "./loss-change.js";

/** Median and spread of one number over some sweeps. */
export interface Spread {
  readonly median: number;
  /** Interquartile range; null for fewer than three sweeps */
  readonly spread: number | null;
}

/** The sweeps that share a value of a column of the log, on one band. */
export interface GroupOnBand {
  /** What the log says under the column */
  readonly value: string;
  /** How many there are that reach the band */
  readonly sweeps: number;
  /** Infinite ones left out; null where there is no other */
  readonly bestSwr: Spread | null;
  /** Share of the band within the limit */
  readonly coverage: Spread | null;
  /** How much more it loses than the sweep that loses least, one way at 10 MHz, dB; null where that is not known of any */
  readonly lossDb: Spread | null;
}

/** How groups differ on one band. */
export interface BandGroups {
  readonly band: string;
  /** The one with the greatest coverage first */
  readonly groups: readonly GroupOnBand[];
  /**
   * Whether coverage or best SWR of the first and the last group of three sweeps or more differ by more than either scatters, and
   * by more than chance would set any two of the groups apart, on any of the bands compared, once in twenty times; null: too few sweeps
   * to tell
   */
  readonly isBeyondSpread: boolean | null;
  /**
   * Whether the first group loses so much more than the last one that its better match may be loss and nothing else; null: not known of
   * both
   */
  readonly restsOnLoss: boolean | null;
}

/** Fewer sweeps than these have no spread worth the name. */
const FEWEST_FOR_SPREAD = 3;

/**
 * Compares groups of sweeps by a column of the deployment log, band by band. Sweeps without a value there are left out.
 *
 * @param column as the log calls it, to the letter
 * @example
 * ```ts
 * import { gradeSweep, groupGrades, planById, rankFor, readSweeps, type SweepGrade } from "@feedpoint/core";
 *
 * // An invented sweep that is flat over 40 m, with what the log says of it.
 * function graded(swr: number, height: string): SweepGrade {
 *   const rows = [6.9, 7.0, 7.1, 7.2, 7.3].map((megahertz) => `${megahertz},${swr}`);
 *   const [sweep] = readSweeps(`Frequency (MHz),SWR\n${rows.join("\n")}`);
 *   return { ...gradeSweep(sweep, { plan: planById("itu-r1"), bands: ["40m"] }), log: { height } };
 * }
 *
 * const season = [graded(1.5, "8 m"), graded(2.6, "4 m"), graded(1.7, "8 m")];
 * const [band] = groupGrades(season, "height");
 * band?.groups.map(({ value, sweeps, coverage }) => [value, sweeps, coverage?.median]); // → [["8 m", 2, 1], ["4 m", 1, 0]]
 * band?.isBeyondSpread; // → null
 * rankFor(season, "40m").map(({ rank, graded }) => [rank, graded.log?.height]); // → [[1, "8 m"], [2, "8 m"], [3, "4 m"]]
 * ```
 */
export function groupGrades(sweeps: readonly SweepGrade[], column: string): readonly BandGroups[] {
  const lossOf = lossesBeside(sweeps);
  const values = [...grouped(sweeps, ({ log }) => log?.[column] ?? "")].filter(([value]) => value !== "");
  const names = [...new Set(sweeps.flatMap(({ bands }) => bands.map(({ band }) => band)))];
  const known = names.map((band) => ({
    band,
    groups: values
      .map(([value, members]) => readingsOf(value, members, band, lossOf))
      .filter(({ coverage }) => coverage.length > 0)
      .map((readings) => ({ readings, group: groupOnBand(readings) }))
      .sort((a, b) => compare(a.group, b.group)),
  }));
  const compared = known.filter(({ groups }) => groups.filter(hasSpread).length > 1).length;
  return known
    .filter(({ groups }) => groups.length > 0)
    .map(({ band, groups }) => ({
      band,
      groups: groups.map(({ group }) => group),
      isBeyondSpread: isBeyondSpread(groups, compared),
      restsOnLoss: restsOnLoss(groups),
    }));
}

/** Says so where the log's rows for some sweeps have nothing under the column that they are grouped by. */
export function groupFindings(sweeps: readonly SweepGrade[], column: string): readonly Finding[] {
  const labels = sweeps.filter(({ log }) => (log?.[column] ?? "") === "").map(({ sweep }) => sweep.label);
  return labels.length === 0 ? [] : [finding("caution", "group-value-missing", { column, labels })];
}

/** The greater coverage first, of equal ones the lower SWR; one whose SWR is infinite throughout last. */
const compare = (a: GroupOnBand, b: GroupOnBand): number =>
  (b.coverage?.median ?? 0) - (a.coverage?.median ?? 0) ||
  (a.bestSwr?.median ?? Number.MAX_VALUE) - (b.bestSwr?.median ?? Number.MAX_VALUE);

/** What the sweeps of a group read on one band; an infinite SWR stands above all others. */
interface Readings {
  readonly value: string;
  readonly bestSwr: readonly number[];
  readonly coverage: readonly number[];
  readonly lossDb: readonly number[];
}

function readingsOf(
  value: string,
  members: readonly SweepGrade[],
  name: string,
  lossOf: ReadonlyMap<SweepGrade, number>,
): Readings {
  const swept = members.flatMap(({ bands }) => bands.filter(({ band, bestSwr }) => band === name && bestSwr !== null));
  return {
    value,
    bestSwr: swept.map(({ bestSwr }) => bestSwr ?? Number.POSITIVE_INFINITY),
    coverage: swept.map(({ withinLimitFraction }) => withinLimitFraction),
    lossDb: members.flatMap((member) => lossOf.get(member) ?? []),
  };
}

const groupOnBand = ({ value, bestSwr, coverage, lossDb }: Readings): GroupOnBand => ({
  value,
  sweeps: coverage.length,
  bestSwr: spreadOf(bestSwr.filter(Number.isFinite)),
  coverage: spreadOf(coverage),
  lossDb: spreadOf(lossDb),
});

/** So much more loss in a group may be all that its better match is (our own choice: it lowers an SWR of 2.5 below 2.3). */
const MATTERS_DB = 0.25;

function restsOnLoss(groups: readonly Known[]): boolean | null {
  const [first, last] = [groups[0]?.group.lossDb, groups.at(-1)?.group.lossDb];
  if (groups.length < 2 || first == null || last == null) return null;
  return first.median - last.median > Math.max(MATTERS_DB, first.spread ?? 0, last.spread ?? 0);
}

function spreadOf(values: readonly number[]): Spread | null {
  if (values.length === 0) return null;
  return {
    median: median([...values]),
    spread: values.length < FEWEST_FOR_SPREAD ? null : interquartileRange([...values]),
  };
}

/** A difference that chance makes no more often than this counts, over all that is compared. */
const LARGEST_CHANCE = 0.05;

/** A group on one band, with what its sweeps read. */
interface Known {
  readonly readings: Readings;
  readonly group: GroupOnBand;
}

const hasSpread = ({ group }: Known): boolean => group.sweeps >= FEWEST_FOR_SPREAD;

/** @param bands how many bands are compared: the more are looked at, the oftener chance sets groups apart on one of them */
function isBeyondSpread(groups: readonly Known[], bands: number): boolean | null {
  const enough = groups.filter(hasSpread);
  const [first, last] = [enough[0], enough.at(-1)];
  if (first === undefined || last === undefined || first === last) return null;
  // The two are the farthest apart of all pairs, in either of two numbers.
  const comparisons = bands * enough.length * (enough.length - 1);
  if (comparisons * leastChance(first.group.sweeps, last.group.sweeps) > LARGEST_CHANCE) return null;
  return (["coverage", "bestSwr"] as const).some((name) => {
    const [a, b] = [first.group[name], last.group[name]];
    if (a?.spread == null || b?.spread == null) return false;
    const isApart = Math.abs(a.median - b.median) > Math.max(a.spread, b.spread);
    return isApart && comparisons * chanceOfDifference(first.readings[name], last.readings[name]) <= LARGEST_CHANCE;
  });
}
