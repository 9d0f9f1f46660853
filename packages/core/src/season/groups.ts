import { interquartileRange, median } from "simple-statistics";
import type { SweepGrade } from "../grade.js";
import { grouped } from "./grouped.js";

/** Median and spread of one number over some sweeps. */
export interface Spread {
  readonly median: number;
  /** Interquartile range; null for fewer than three sweeps */
  readonly spread: number | null;
}

/** The sweeps that share a value of a column of the log, on one band. */
export interface GroupOnBand {
  readonly value: string;
  readonly sweeps: number;
  readonly bestSwr: Spread | null;
  /** Share of the band within the limit */
  readonly coverage: Spread | null;
}

/** How groups differ on one band. */
export interface BandGroups {
  readonly band: string;
  /** The one with the greatest coverage first */
  readonly groups: readonly GroupOnBand[];
  /** Whether coverage or best SWR of the first and the last group of three sweeps or more differ by more than either scatters; null: too few */
  readonly isBeyondSpread: boolean | null;
}

/** Fewer sweeps than these have no spread worth the name. */
const FEWEST_FOR_SPREAD = 3;

/**
 * Compares groups of sweeps by a column of the deployment log, band by band. Sweeps without a value there are left out.
 */
export function groupGrades(sweeps: readonly SweepGrade[], column: string): readonly BandGroups[] {
  const values = [...grouped(sweeps, ({ log }) => log?.[column] ?? "")].filter(([value]) => value !== "");
  const names = [...new Set(sweeps.flatMap(({ bands }) => bands.map(({ band }) => band)))];
  return names.flatMap((band): BandGroups[] => {
    const groups = values
      .map(([value, members]) => groupOnBand(value, members, band))
      .filter(({ sweeps: count }) => count > 0)
      .sort(compare);
    return groups.length === 0 ? [] : [{ band, groups, isBeyondSpread: isBeyondSpread(groups) }];
  });
}

/** The greater coverage first, of equal ones the lower SWR; one whose SWR is infinite throughout last. */
const compare = (a: GroupOnBand, b: GroupOnBand): number =>
  (b.coverage?.median ?? 0) - (a.coverage?.median ?? 0) ||
  (a.bestSwr?.median ?? Number.MAX_VALUE) - (b.bestSwr?.median ?? Number.MAX_VALUE);

function groupOnBand(value: string, members: readonly SweepGrade[], name: string): GroupOnBand {
  const swept = members.flatMap(({ bands }) => bands.filter(({ band, bestSwr }) => band === name && bestSwr !== null));
  return {
    value,
    sweeps: swept.length,
    bestSwr: spreadOf(swept.flatMap(({ bestSwr }) => (bestSwr === null || !Number.isFinite(bestSwr) ? [] : [bestSwr]))),
    coverage: spreadOf(swept.map(({ withinLimitFraction }) => withinLimitFraction)),
  };
}

function spreadOf(values: readonly number[]): Spread | null {
  if (values.length === 0) return null;
  return {
    median: median([...values]),
    spread: values.length < FEWEST_FOR_SPREAD ? null : interquartileRange([...values]),
  };
}

function isBeyondSpread(groups: readonly GroupOnBand[]): boolean | null {
  const enough = groups.filter(({ sweeps }) => sweeps >= FEWEST_FOR_SPREAD);
  const [first, last] = [enough[0], enough.at(-1)];
  if (first === undefined || last === undefined || first === last) return null;
  const isBeyond = (a: Spread | null, b: Spread | null): boolean | null => {
    if (a?.spread == null || b?.spread == null) return null;
    return Math.abs(a.median - b.median) > Math.max(a.spread, b.spread);
  };
  const answers = [isBeyond(first.coverage, last.coverage), isBeyond(first.bestSwr, last.bestSwr)];
  return answers.includes(true) ? true : answers.includes(null) ? null : false;
}
