import { type BandGrade, dateOf, type SweepGrade } from "@feedpoint/core";
import { UsageError } from "../exit.js";
import { GRADES } from "./report.js";

type Compare = (a: SweepGrade, b: SweepGrade) => number;

/**
 * Sorts graded sweeps: by `name` of their file, by `date`, by overall `grade`, or by what they do on a band ("40m").
 *
 * @throws UsageError for another key
 */
export function sortedBy(sweeps: readonly SweepGrade[], key: string, bands: readonly string[]): readonly SweepGrade[] {
  return sweeps.toSorted(compareBy(key, bands));
}

function compareBy(key: string, bands: readonly string[]): Compare {
  const byName: Compare = (a, b) => (a.sweep.file < b.sweep.file ? -1 : a.sweep.file > b.sweep.file ? 1 : 0);
  if (key === "name") return byName;
  if (key === "date") return (a, b) => (dateOf(a) ?? "").localeCompare(dateOf(b) ?? "") || byName(a, b);
  if (key === "grade") return (a, b) => place(a.grade) - place(b.grade) || byName(a, b);
  if (!bands.includes(key)) {
    throw new UsageError(`--sort takes name, date, grade, or a band: ${bands.join(", ")}.`);
  }
  const on = ({ bands: all }: SweepGrade): BandGrade | undefined => all.find(({ band }) => band === key);
  return (a, b) => {
    const [first, second] = [on(a), on(b)];
    return (
      place(first?.grade ?? null) - place(second?.grade ?? null) ||
      (second?.withinLimitFraction ?? 0) - (first?.withinLimitFraction ?? 0) ||
      (first?.bestSwr ?? Number.POSITIVE_INFINITY) - (second?.bestSwr ?? Number.POSITIVE_INFINITY) ||
      byName(a, b)
    );
  };
}

const place = (grade: SweepGrade["grade"]) => (grade === null ? GRADES.length : GRADES.indexOf(grade));
