import { grouped } from "../../numbers/grouped.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { SweepGrade } from "../grade.js";
import { dateOf, timeOf } from "./dates.js";
import type { ChangeOverTime } from "./events.js";
import { FEWEST_POINTS, type LossChange, lossChange } from "./loss-change.js";
import { MILLISECONDS_A_MONTH } from "./months.js";
import { slopeMargin } from "./persistent-scatter.js";

/** What one deployment lost over time, against its first sweep or a stated one. */
export interface LossHistory {
  /** Value of the log's column that names the deployment; null where all sweeps are taken for one */
  readonly deployment: string | null;
  /** Label of the sweep that the others are held against */
  readonly reference: string;
  /** In order of time, the reference among them */
  readonly sweeps: readonly (LossChange & { readonly label: string; readonly date: string })[];
  /** dB a month at 10 MHz; null for fewer than four dates */
  readonly slopeDbPerMonth: number | null;
  /** By how much the slope may be off (95 %) */
  readonly slopeMarginDbPerMonth: number | null;
}

/**
 * Loss over time, by deployment: each dated sweep against the first one, or against a stated one where it is of that deployment.
 *
 * @param column of the log whose values tell deployments apart; null: all sweeps are of one
 * @param reference label of a sweep to hold the others of its deployment against; null: the first one
 */
export function lossOverTime(
  sweeps: readonly SweepGrade[],
  column: string | null,
  reference: string | null = null,
): readonly LossHistory[] {
  const deployments = grouped(sweeps, ({ log }) => (column === null ? null : (log?.[column] ?? "")));
  return [...deployments].flatMap(([deployment, members]) =>
    deployment === "" ? [] : (historyOf(deployment, members, reference) ?? []),
  );
}

function historyOf(
  deployment: string | null,
  members: readonly SweepGrade[],
  wanted: string | null,
): LossHistory | null {
  const dated = members
    .flatMap((graded) => {
      const date = dateOf(graded);
      const time = date === null ? null : timeOf(date);
      return date === null || time === null || graded.returnLosses.length < FEWEST_POINTS
        ? []
        : [{ graded, date, time }];
    })
    .sort((a, b) => a.time - b.time);
  const reference = dated.find(({ graded }) => graded.sweep.label === wanted) ?? dated[0];
  if (reference === undefined) return null;
  const told = dated.flatMap(({ graded, date, time }) => {
    const change = lossChange(reference.graded, graded);
    return change === null ? [] : [{ ...change, label: graded.sweep.label, date, months: time / MILLISECONDS_A_MONTH }];
  });
  if (told.length < 2) return null;
  const slope = slopeOf(told);
  return {
    deployment,
    reference: reference.graded.sweep.label,
    sweeps: told.map(({ months: _, ...sweep }) => sweep),
    slopeDbPerMonth: slope?.slope ?? null,
    slopeMarginDbPerMonth: slope?.margin ?? null,
  };
}

const FEWEST_DATES = 4;

/** Least squares, with a margin that allows for scatter that persists; the reference is a sweep like the others. */
function slopeOf(told: readonly { readonly months: number; readonly at10MHzDb: number }[]) {
  const months = told.map((each) => each.months);
  if (new Set(months).size < FEWEST_DATES) return null;
  const middle = months.reduce((sum, month) => sum + month, 0) / months.length;
  const square = months.reduce((sum, month) => sum + (month - middle) ** 2, 0);
  const slope = told.reduce((sum, each) => sum + (each.months - middle) * each.at10MHzDb, 0) / square;
  const mean = told.reduce((sum, each) => sum + each.at10MHzDb, 0) / told.length;
  const residuals = told.map((each) => each.at10MHzDb - mean - slope * (each.months - middle));
  return { slope, margin: slopeMargin(months, residuals, [0]) };
}

/** Less than this in all is not worth a word, dB one way at 10 MHz (our own choice: 6 % of the power; an antenna that takes more by itself, off its bands, comes to less). */
const LEAST_TOTAL_DB = 0.25;

/**
 * What of the histories is worth a word: loss that surely rises, or falls.
 *
 * @param known what events of the log did to the loss, which is no trend
 */
export function lossFindings(
  histories: readonly LossHistory[],
  known: readonly ChangeOverTime[] = [],
): readonly Finding[] {
  return histories.flatMap(({ deployment, sweeps, slopeDbPerMonth, slopeMarginDbPerMonth }) => {
    if (
      known.some((change) => change.measure === "loss" && change.course === "event" && change.deployment === deployment)
    )
      return [];
    const [first, last] = [sweeps[0], sweeps.at(-1)];
    if (slopeDbPerMonth === null || slopeMarginDbPerMonth === null || first === undefined || last === undefined)
      return [];
    const months = ((timeOf(last.date) ?? 0) - (timeOf(first.date) ?? 0)) / MILLISECONDS_A_MONTH;
    const totalDb = slopeDbPerMonth * months;
    if (Math.abs(slopeDbPerMonth) <= slopeMarginDbPerMonth || Math.abs(totalDb) < LEAST_TOTAL_DB) return [];
    const params = { deployment, slopeDbPerMonth, marginDbPerMonth: slopeMarginDbPerMonth, totalDb, since: first.date };
    return [
      finding(slopeDbPerMonth > 0 ? "caution" : "info", slopeDbPerMonth > 0 ? "loss-rising" : "loss-falling", params),
    ];
  });
}
