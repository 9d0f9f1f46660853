import { type BandGrade, type BandPlan, dateOf, type SweepGrade, timeOf } from "@feedpoint/core";
import { bandName } from "../asked/find-plan.js";
import { UsageError } from "../asked/usage-error.js";
import { GRADES } from "./report.js";

export type Compare = (a: SweepGrade, b: SweepGrade) => number;

/**
 * An order of graded sweeps: by `name` of their file, by `date` (those without one last), by overall `grade`, or by what they
 * do on a band ("40m").
 *
 * @param bands those that are graded; all of the plan where absent
 * @throws UsageError for another key, and for a band that is not graded
 */
export function compareBy(key: string, plan: BandPlan, bands: readonly string[] | undefined): Compare {
  if (key === "name") return byName;
  if (key === "date") return (a, b) => timeTaken(a) - timeTaken(b) || byName(a, b);
  if (key === "grade") return (a, b) => place(a.grade) - place(b.grade) || byName(a, b);
  const band = bandToSortBy(key, plan);
  mustBeGraded(band, `--sort ${key}`, bands);
  const on = ({ bands: all }: SweepGrade): BandGrade | undefined => all.find((entry) => entry.band === band);
  return (a, b) => compareOnBand(on(a), on(b)) || byName(a, b);
}

/** Below 0 where the first does more on a band: by grade, then by the share within the limit, then by SWR; undefined: not known. */
export const compareOnBand = (first: BandGrade | undefined, second: BandGrade | undefined): number =>
  place(first?.grade ?? null) - place(second?.grade ?? null) ||
  (second?.withinLimitFraction ?? 0) - (first?.withinLimitFraction ?? 0) ||
  finiteSwr(first) - finiteSwr(second);

/**
 * @param asked the option that names the band, as it was given
 * @param bands those that are graded; all of the plan where absent
 * @throws UsageError for a band that is not graded
 */
export function mustBeGraded(band: string, asked: string, bands: readonly string[] | undefined): void {
  if (bands === undefined || bands.includes(band)) return;
  throw new UsageError(`${asked}: only ${bands.join(", ")} are graded. Name ${band} in --bands as well.`);
}

function bandToSortBy(key: string, plan: BandPlan): string {
  try {
    return bandName(key, plan);
  } catch {
    const bands = plan.bands.map(({ band }) => band);
    throw new UsageError(`--sort takes name, date, grade, or a band: ${bands.join(", ")}.`);
  }
}

const byName: Compare = (a, b) => (a.sweep.file < b.sweep.file ? -1 : a.sweep.file > b.sweep.file ? 1 : 0);

const timeTaken = (graded: SweepGrade): number => timeOf(dateOf(graded) ?? "") ?? Number.MAX_VALUE;

/** An infinite SWR, or none, as the greatest number there is: two of them differ by 0, not by NaN. */
const finiteSwr = (entry: BandGrade | undefined): number =>
  Math.min(entry?.bestSwr ?? Number.MAX_VALUE, Number.MAX_VALUE);

const place = (grade: SweepGrade["grade"]) => (grade === null ? GRADES.length : GRADES.indexOf(grade));
