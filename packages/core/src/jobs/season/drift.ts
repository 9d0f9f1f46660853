import { median } from "simple-statistics";
import { grouped } from "../../numbers/grouped.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { SweepGrade } from "../grade.js";
import { dateOf, timeOf } from "./dates.js";
import type { ChangeOverTime } from "./events.js";
import { MILLISECONDS_A_MONTH } from "./months.js";
import { type DatedDip, type Trend, trendOf } from "./trend.js";

/** How the dip on one band went over time, for one deployment. */
export interface Drift {
  /** Value of the log's column that names the deployment; null where all sweeps are taken for one */
  readonly deployment: string | null;
  readonly band: string;
  /** Dated sweeps with a dip within the band or beside it */
  readonly sweeps: number;
  /** Of the earliest of these sweeps, as the log or the file states it */
  readonly firstDate: string;
  /** Of the latest of them */
  readonly lastDate: string;
  /** Median of the slopes between all pairs, Hz a month; null for fewer than three dates */
  readonly slopeHzPerMonth: number | null;
  /** By how much the slope may be off (95 %), Hz a month; null for fewer than three dates */
  readonly slopeMarginHzPerMonth: number | null;
  /** Median distance of the dips from that slope, but for those that set it, Hz; null for fewer than three dates */
  readonly scatterHz: number | null;
  /** Changes from one sweep to the next that the slope does not account for, far beyond that scatter; none of fewer than five sweeps */
  readonly jumps: readonly { readonly date: string; readonly changeHz: number }[];
  /** Dips far beyond that scatter from those before and after them, which agree; none of fewer than five sweeps */
  readonly odd: readonly { readonly date: string; readonly departureHz: number }[];
}

/** In fewer sweeps than this the scatter that a jump has to stand out from is not known (our own choice). */
export const FEWEST_FOR_JUMPS = 5;
const LEAST_JUMP_HZ = 15_000;
/**
 * A jump is this many times the scatter, by the number of sweeps: of few the scatter is hardly known (by simulation with
 * normal scatter, which alone makes a jump in one series of twenty; the tests hold it to that).
 */
const JUMP_RATIOS: readonly { readonly sweeps: number; readonly ratio: number }[] = [
  { sweeps: 5, ratio: 13 },
  { sweeps: 6, ratio: 11.5 },
  { sweeps: 8, ratio: 10.5 },
  { sweeps: Number.POSITIVE_INFINITY, ratio: 7.5 },
];
/** A drift is worth a word where it is surely one, and at least so many Hz in all (our own choice). */
const LEAST_DRIFT_HZ = 10_000;

interface Dated extends DatedDip {
  readonly date: string;
}

/**
 * Follows the dips of deployments over time. Sweeps without a date, without a dip or without a value in the column are left out,
 * and so is a band with fewer than two that are left.
 *
 * The slope is the median of those between all pairs of dips (H. Theil, 1950; P. K. Sen, 1968; both from memory).
 *
 * @param column column of the log that tells deployments apart; null: all sweeps are of one
 * @param known what events of the log did to dips, which is taken out first; see {@link changesOverTime}
 * @example
 * ```ts
 * import { driftsOf, gradeSweep, planById, readSweeps, type SweepGrade } from "@feedpoint/core";
 *
 * // An invented sweep with its dip at a frequency in MHz, taken on a day.
 * function graded(dip: number, date: string): SweepGrade {
 *   const rows = Array.from({ length: 31 }, (_, i) => `${6.9 + i / 75},${1.2 + 8 * Math.abs(6.9 + i / 75 - dip)}`);
 *   const [sweep] = readSweeps(`Frequency (MHz),SWR\n${rows.join("\n")}`);
 *   return { ...gradeSweep(sweep, { plan: planById("itu-r1"), bands: ["40m"] }), log: { date } };
 * }
 *
 * const season = [graded(7.14, "2026-04-01"), graded(7.12, "2026-05-01"), graded(7.1, "2026-06-01")];
 * const [drift] = driftsOf(season, null);
 * drift?.sweeps; // → 3
 * Math.round((drift?.slopeHzPerMonth ?? 0) / 10e3); // → -2
 * ```
 */
export function driftsOf(
  sweeps: readonly SweepGrade[],
  column: string | null,
  known: readonly ChangeOverTime[] = [],
): readonly Drift[] {
  const deployments = grouped(sweeps, ({ log }) => (column === null ? null : (log?.[column] ?? "")));
  return [...deployments].flatMap(([deployment, members]) => {
    if (deployment === "") return [];
    const names = [...new Set(members.flatMap(({ bands }) => bands.map(({ band }) => band)))];
    return names.flatMap(
      (band) => driftOn(deployment, band, withoutSteps(datedDips(members, band), deployment, band, known)) ?? [],
    );
  });
}

function datedDips(members: readonly SweepGrade[], name: string): readonly Dated[] {
  return members
    .flatMap((graded): Dated[] => {
      const date = dateOf(graded);
      const dipHz = graded.bands.find(({ band }) => band === name)?.dipHz ?? null;
      const time = date === null ? null : timeOf(date);
      return date === null || dipHz === null || time === null
        ? []
        : [{ date, months: time / MILLISECONDS_A_MONTH, dipHz }];
    })
    .sort((a, b) => a.months - b.months);
}

/** The same dips as if what an event of the log did had not happened: steps are searched for elsewhere. */
function withoutSteps(
  dips: readonly Dated[],
  deployment: string | null,
  name: string,
  known: readonly ChangeOverTime[],
): readonly Dated[] {
  const steps = known.filter(
    ({ measure, band, course, ...change }) =>
      measure === "dip" && band === name && course === "event" && change.deployment === deployment,
  );
  return dips.map((dip) => {
    const before = steps.filter(({ event }) => event !== null && dip.date >= event.date);
    return { ...dip, dipHz: before.reduce((hz, { size }) => hz - (size ?? 0), dip.dipHz) };
  });
}

function driftOn(deployment: string | null, band: string, dips: readonly Dated[]): Drift | null {
  const [first, last] = [dips[0], dips.at(-1)];
  if (first === undefined || last === undefined || dips.length < 2) return null;
  const trend = trendOf(dips);
  return {
    deployment,
    band,
    sweeps: dips.length,
    firstDate: first.date,
    lastDate: last.date,
    slopeHzPerMonth: trend?.slope ?? null,
    slopeMarginHzPerMonth: trend?.margin ?? null,
    scatterHz: trend?.scatter ?? null,
    ...(trend === null ? { jumps: [], odd: [] } : farOff(dips, trend)),
  };
}

/** Dips on either side that tell whether a change lasts: one that went off by itself comes back with the next. */
const DIPS_BESIDE = 3;
/** So much of a change is left of it between the middle of the dips before and of those after, or it was one dip alone. */
const LASTING_SHARE = 0.6;

/** Changes that last, and dips alone, that lie further from the others than scatter puts them. */
function farOff(dips: readonly Dated[], { slope, scatter }: Trend): Pick<Drift, "jumps" | "odd"> {
  const ratio = JUMP_RATIOS.find(({ sweeps }) => dips.length <= sweeps)?.ratio ?? Number.POSITIVE_INFINITY;
  if (dips.length < FEWEST_FOR_JUMPS) return { jumps: [], odd: [] };
  const farHz = Math.max(LEAST_JUMP_HZ, ratio * scatter);
  const offsets = dips.map(({ months, dipHz }) => dipHz - slope * months);
  const middleBefore = (index: number) => median(offsets.slice(Math.max(0, index - DIPS_BESIDE), index));
  const middleFrom = (index: number) => median(offsets.slice(index, index + DIPS_BESIDE));
  const jumps = dips.flatMap(({ date, dipHz }, i) => {
    if (i === 0) return [];
    const departure = (offsets[i] ?? 0) - (offsets[i - 1] ?? 0);
    const isLasting = (middleFrom(i) - middleBefore(i)) / departure > LASTING_SHARE;
    return Math.abs(departure) > farHz && isLasting ? [{ date, changeHz: dipHz - (dips[i - 1]?.dipHz ?? dipHz) }] : [];
  });
  const odd = dips.flatMap(({ date }, i) => {
    if (i === 0 || i === dips.length - 1) return [];
    const [before, after] = [middleBefore(i), middleFrom(i + 1)];
    const departureHz = (offsets[i] ?? 0) - (before + after) / 2;
    const isAlone = Math.abs(after - before) < (1 - LASTING_SHARE) * Math.abs(departureHz);
    return Math.abs(departureHz) > farHz && isAlone ? [{ date, departureHz }] : [];
  });
  return { jumps, odd };
}

/** What of the drifts is worth a word: a dip that surely wanders, by 10 kHz at least in all, and jumps. */
export function driftFindings(drifts: readonly Drift[]): readonly Finding[] {
  return drifts.flatMap(
    ({ deployment, band, slopeHzPerMonth, slopeMarginHzPerMonth, firstDate, lastDate, jumps, odd }) => {
      const months = ((timeOf(lastDate) ?? 0) - (timeOf(firstDate) ?? 0)) / MILLISECONDS_A_MONTH;
      const slope = slopeHzPerMonth ?? 0;
      const total = slope * months;
      const isDrifting = Math.abs(slope) > (slopeMarginHzPerMonth ?? 0) && Math.abs(total) > LEAST_DRIFT_HZ;
      return [
        ...(isDrifting
          ? [finding("info", "dip-drifts", { deployment, band, totalHz: total, firstDate, lastDate }, { band })]
          : []),
        ...jumps.map(({ date, changeHz }) =>
          finding("info", "dip-jumped", { deployment, band, changeHz, date }, { band }),
        ),
        ...odd.map(({ date, departureHz }) =>
          finding("info", "dip-odd", { deployment, band, departureHz, date }, { band }),
        ),
      ];
    },
  );
}
