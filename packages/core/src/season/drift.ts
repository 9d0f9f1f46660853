import { median, medianAbsoluteDeviation } from "simple-statistics";
import { type Finding, finding } from "../finding.js";
import type { SweepGrade } from "../grade.js";
import { dateOf, timeOf } from "./dates.js";
import { grouped } from "./grouped.js";

/** How the dip on one band went over time, for one deployment. */
export interface Drift {
  /** Value of the log's column that names the deployment; null where all sweeps are taken for one */
  readonly deployment: string | null;
  readonly band: string;
  /** Dated sweeps with a dip within the band */
  readonly sweeps: number;
  readonly firstDate: string;
  readonly lastDate: string;
  /** Median of the slopes between all pairs, Hz a month; null for fewer than three dates */
  readonly slopeHzPerMonth: number | null;
  /** Median distance of the dips from that slope, Hz; null for fewer than three dates */
  readonly scatterHz: number | null;
  /** Changes from one sweep to the next that the slope does not account for, far beyond that scatter */
  readonly jumps: readonly { readonly date: string; readonly changeHz: number }[];
}

const MILLISECONDS_A_MONTH = (365.25 / 12) * 24 * 3600 * 1000;
const FEWEST_DATES = 3;
/** A jump is this many times the usual scatter, and at least so many Hz (our own choices). */
const JUMP_RATIO = 5;
const LEAST_JUMP_HZ = 15_000;
/** A drift is worth a word where it is more than this many times the scatter, and at least so many Hz in all. */
const DRIFT_RATIO = 3;
const LEAST_DRIFT_HZ = 10_000;

interface Dated {
  readonly date: string;
  readonly months: number;
  readonly dipHz: number;
}

/**
 * Follows the dips of deployments over time. The slope is the median over all pairs of sweeps, which a few odd ones do not
 * move (H. Theil, 1950; P. K. Sen, Journal of the American Statistical Association 63, 1968; both from memory).
 *
 * @param column column of the log that tells deployments apart; null: all sweeps are of one
 */
export function driftsOf(sweeps: readonly SweepGrade[], column: string | null): readonly Drift[] {
  const deployments = grouped(sweeps, ({ log }) => (column === null ? null : (log?.[column] ?? "")));
  return [...deployments].flatMap(([deployment, members]) => {
    if (deployment === "") return [];
    const names = [...new Set(members.flatMap(({ bands }) => bands.map(({ band }) => band)))];
    return names.flatMap((band) => driftOn(deployment, band, datedDips(members, band)) ?? []);
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

function driftOn(deployment: string | null, band: string, dips: readonly Dated[]): Drift | null {
  const [first, last] = [dips[0], dips.at(-1)];
  if (first === undefined || last === undefined || dips.length < 2) return null;
  const slope = robustSlope(dips);
  const offsets = slope === null ? [] : dips.map(({ months, dipHz }) => dipHz - slope * (months - first.months));
  const scatterHz = slope === null ? null : medianAbsoluteDeviation(offsets);
  const usual = Math.max(LEAST_JUMP_HZ, JUMP_RATIO * (scatterHz ?? Number.POSITIVE_INFINITY));
  const jumps = dips.slice(1).flatMap((dip, i) => {
    const before = dips[i] ?? dip;
    const changeHz = dip.dipHz - before.dipHz;
    const drifted = (slope ?? 0) * (dip.months - before.months);
    return Math.abs(changeHz - drifted) > usual ? [{ date: dip.date, changeHz }] : [];
  });
  return {
    deployment,
    band,
    sweeps: dips.length,
    firstDate: first.date,
    lastDate: last.date,
    slopeHzPerMonth: slope,
    scatterHz,
    jumps,
  };
}

/** With more sweeps than this not all pairs are looked at, but each sweep with the one half of the series later. */
const MOST_FOR_ALL_PAIRS = 1000;

/** Median of the slopes between pairs. (H. Theil's incomplete method, for a long series, pairs the two halves; from memory.) */
function robustSlope(dips: readonly Dated[]): number | null {
  const half = Math.ceil(dips.length / 2);
  const partners = (i: number) =>
    dips.length > MOST_FOR_ALL_PAIRS ? dips.slice(i + half, i + half + 1) : dips.slice(i + 1);
  const slopes = dips.flatMap((a, i) =>
    partners(i).flatMap((b) => (b.months > a.months ? [(b.dipHz - a.dipHz) / (b.months - a.months)] : [])),
  );
  const dates = new Set(dips.map(({ months }) => months)).size;
  return dates < FEWEST_DATES || slopes.length === 0 ? null : median(slopes);
}

/** What of the drifts is worth a word: a dip that wanders, and jumps. */
export function driftFindings(drifts: readonly Drift[]): readonly Finding[] {
  return drifts.flatMap(({ deployment, band, slopeHzPerMonth, scatterHz, firstDate, lastDate, jumps }) => {
    const where = deployment === null ? band : `${deployment}, ${band}`;
    const months = ((timeOf(lastDate) ?? 0) - (timeOf(firstDate) ?? 0)) / MILLISECONDS_A_MONTH;
    const total = (slopeHzPerMonth ?? 0) * months;
    const isDrifting = Math.abs(total) > Math.max(LEAST_DRIFT_HZ, DRIFT_RATIO * (scatterHz ?? 0));
    const kilohertz = (hertz: number) => `${Math.abs(hertz / 1000).toFixed(0)} kHz`;
    return [
      ...(isDrifting
        ? [
            finding(
              "info",
              "dip-drifts",
              `${where}: the dip has ${total < 0 ? "fallen" : "risen"} ${kilohertz(total)} from ${firstDate} to ${lastDate}.`,
              { band },
            ),
          ]
        : []),
      ...jumps.map(({ date, changeHz }) =>
        finding(
          "info",
          "dip-jumped",
          `${where}: the dip ${changeHz < 0 ? "fell" : "rose"} ${kilohertz(changeHz)} at once by ${date}.`,
          { band },
        ),
      ),
    ];
  });
}
