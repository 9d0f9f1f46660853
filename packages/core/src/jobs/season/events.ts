import { chanceOfRatio } from "../../numbers/beta.js";
import { grouped } from "../../numbers/grouped.js";
import { criterionOf, leastSquares } from "../../numbers/least-squares.js";
import { student95 } from "../../numbers/student.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { SweepGrade } from "../grade.js";
import { dateOf, timeOf } from "./dates.js";
import { LEAST_TOLD, type Measure, measuresOf } from "./measures.js";
import { MILLISECONDS_A_MONTH } from "./months.js";

/** Something that the log says happened on a date. */
export interface LoggedEvent {
  /** ISO 8601 */
  readonly date: string;
  readonly what: string;
}

/** How one number went over time: not at all, evenly, at once with an event of the log, or without one (step), with the seasons; or not told. */
export type Course = "nothing" | "drift" | "event" | "step" | "season" | "cannot-tell";

/** How one number of a deployment went over time. */
export interface ChangeOverTime {
  /** Value of the log's column that names the deployment; null where all sweeps are taken for one */
  readonly deployment: string | null;
  readonly measure: Measure;
  /** null: the loss, which is of no band */
  readonly band: string | null;
  readonly course: Course;
  /** The event that goes with it; null: none */
  readonly event: LoggedEvent | null;
  /** After the event less before it, or over the whole time; a fraction, Hz or dB at 10 MHz; null where nothing is told */
  readonly size: number | null;
  readonly between: { readonly low: number; readonly high: number } | null;
  /** Other courses that explain it as well; empty where none does */
  readonly rivals: readonly Course[];
  readonly sweeps: number;
}

/** The events of a log, by a column that tells what happened; rows without a date or a word there are none. */
export function eventsOf(rows: readonly Readonly<Record<string, string>>[], column: string): readonly LoggedEvent[] {
  return rows.flatMap((row) => {
    const date = Object.entries(row).find(([name]) => name.toLowerCase() === "date")?.[1] ?? "";
    const what = (row[column] ?? "").trim();
    return what === "" || timeOf(date) === null ? [] : [{ date, what }];
  });
}

const FEWEST_SWEEPS = 6;
const FEWEST_ON_A_SIDE = 3;
const FEWEST_FREEDOM = 3;
/** A claim that chance makes no more often than this counts, over all that is looked at; several are asked at once (our own choice). */
const LARGEST_CHANCE = 0.01;
/** Courses whose criterion is no farther from the least than this explain as much (K. P. Burnham, D. R. Anderson 2002; from memory). */
const AS_GOOD = 2;
/** Seasons are looked for over this much of a year at least. */
const LEAST_MONTHS_FOR_SEASON = 10;

/**
 * How dips, shares and loss went over time: a step at an event that the log tells is a question of two groups, held against an even
 * drift and, over most of a year, against the seasons; and against the best step on a date that no event tells.
 *
 * @param column of the log whose values tell deployments apart; null: all sweeps are of one
 */
export function changesOverTime(
  sweeps: readonly SweepGrade[],
  column: string | null,
  events: readonly LoggedEvent[],
): readonly ChangeOverTime[] {
  const deployments = grouped(sweeps, ({ log }) => (column === null ? null : (log?.[column] ?? "")));
  const all = [...deployments].flatMap(([deployment, members]) =>
    deployment === "" ? [] : measuresOf(members).map((measured) => ({ deployment, ...measured })),
  );
  return all.flatMap(({ deployment, measure, band, rows }) => {
    const dated = rows.flatMap(({ graded, value }) => {
      const date = dateOf(graded);
      const time = date === null ? null : timeOf(date);
      return time === null ? [] : [{ months: time / MILLISECONDS_A_MONTH, value }];
    });
    if (dated.length < FEWEST_SWEEPS) return [];
    return [
      { deployment, measure, band, ...courseOf(dated, events, { looked: all.length, least: LEAST_TOLD[measure] }) },
    ];
  });
}

interface Dated {
  readonly months: number;
  readonly value: number;
}

/** A course as columns of a fit; `last` is the one whose coefficient is told. */
interface Explanation {
  readonly course: Course;
  readonly event: LoggedEvent | null;
  readonly columns: readonly (readonly number[])[];
  /** What the coefficient of the last column is multiplied by to be the size */
  readonly scale: number;
}

function courseOf(
  dated: readonly Dated[],
  events: readonly LoggedEvent[],
  { looked, least }: { readonly looked: number; readonly least: number },
): Omit<ChangeOverTime, "deployment" | "measure" | "band"> {
  const values = dated.map(({ value }) => value);
  const explanations = explanationsOf(dated, events).map((each) => ({
    ...each,
    criterion: criterionOf(each.columns, values),
  }));
  const logged = explanations.reduce((a, b) => (b.criterion < a.criterion ? b : a));
  const nothing = { event: null, size: null, between: null, rivals: [], sweeps: dated.length } as const;
  const toldBy = logged.course === "nothing" ? null : sizeOf(logged, values, looked * (explanations.length - 1));
  if (toldBy === null || Math.abs(toldBy.size) < least) return { course: "nothing", ...nothing };
  // What the log tells of explains a change only as far as no step on another date explains it better.
  const step = untoldStep(dated, values);
  const stepTold =
    step !== null && step.criterion + AS_GOOD < logged.criterion ? sizeOf(step, values, looked * dated.length) : null;
  const [best, told] = step !== null && stepTold !== null ? [step, stepTold] : [logged, toldBy];
  const rivals = [...explanations, ...(step === null ? [] : [step])].filter(
    (each) => each !== best && each.course !== "nothing" && each.criterion < best.criterion + AS_GOOD,
  );
  const { course } = best;
  const event = best.event ?? rivals.find((rival) => rival.event !== null)?.event ?? null;
  const others = [...new Set(rivals.map((rival) => rival.course))].filter((each) => each !== course);
  return {
    course: others.length > 0 ? "cannot-tell" : course,
    event,
    ...told,
    rivals: others.length > 0 ? [course, ...others] : [],
    sweeps: dated.length,
  };
}

/** A date that is looked for is one more number than a fit's columns, and takes as much to be believed (our own choice). */
const OF_A_SEARCHED_DATE = 4;

/** The best step on a date that no event tells, as a rival of what else explains it; null where no date leaves enough on both sides. */
function untoldStep(
  dated: readonly Dated[],
  values: readonly number[],
): (Explanation & { readonly criterion: number }) | null {
  const steps = [...new Set(dated.map(({ months }) => months))].flatMap((at) => {
    const after = stepAt(dated, at);
    if (after === null) return [];
    const criterion = criterionOf([after], values) + OF_A_SEARCHED_DATE;
    return [{ course: "step" as const, event: null, columns: [after], scale: 1, criterion }];
  });
  return steps.reduce<(typeof steps)[number] | null>(
    (best, each) => (best === null || each.criterion < best.criterion ? each : best),
    null,
  );
}

/** 0 before a date and 1 from it on; null where too few are on a side. */
function stepAt(dated: readonly Dated[], at: number): readonly number[] | null {
  const after = dated.map(({ months }) => Number(months >= at));
  const count = after.reduce((sum, each) => sum + each, 0);
  return count >= FEWEST_ON_A_SIDE && dated.length - count >= FEWEST_ON_A_SIDE ? after : null;
}

function explanationsOf(dated: readonly Dated[], events: readonly LoggedEvent[]): readonly Explanation[] {
  const first = Math.min(...dated.map(({ months }) => months));
  const span = Math.max(...dated.map(({ months }) => months)) - first;
  const time = dated.map(({ months }) => months - first);
  const steps = events.flatMap((event): Explanation[] => {
    const after = stepAt(dated, (timeOf(event.date) ?? 0) / MILLISECONDS_A_MONTH);
    return after === null ? [] : [{ course: "event", event, columns: [after], scale: 1 }];
  });
  const year = (2 * Math.PI) / 12;
  const season: readonly Explanation[] =
    span < LEAST_MONTHS_FOR_SEASON
      ? []
      : [
          {
            course: "season",
            event: null,
            columns: [
              dated.map(({ months }) => Math.sin(year * months)),
              dated.map(({ months }) => Math.cos(year * months)),
            ],
            scale: 2,
          },
        ];
  return [
    { course: "nothing", event: null, columns: [], scale: 0 },
    ...(span > 0 ? [{ course: "drift", event: null, columns: [time], scale: span } as const] : []),
    ...steps,
    ...season,
  ];
}

/** What a course comes to; null where chance makes as much once in a hundred times over all that is looked at. */
function sizeOf({ columns, scale }: Explanation, values: readonly number[], looked: number) {
  const fit = leastSquares([values.map(() => 1), ...columns], values);
  const flat = leastSquares([values.map(() => 1)], values);
  const freedom = values.length - columns.length - 1;
  if (fit === null || flat === null || freedom < FEWEST_FREEDOM) return null;
  const left = Math.max(fit.residualSquares / freedom, Number.MIN_VALUE);
  const chance = chanceOfRatio(
    (flat.residualSquares - fit.residualSquares) / columns.length / left,
    columns.length,
    freedom,
  );
  if (chance * looked > LARGEST_CHANCE) return null;
  const size = scale * (fit.coefficients.at(-1) ?? 0);
  const half = Math.abs(scale) * student95(freedom) * Math.sqrt((fit.variances.at(-1) ?? 0) * left);
  return { size, between: { low: size - half, high: size + half } };
}

/** What of the changes is worth a word: those that go with an event, with the seasons, or of which it cannot be told with what. */
export function changeFindings(changes: readonly ChangeOverTime[]): readonly Finding[] {
  return changes.flatMap(({ deployment, measure, band, course, event, size, between, rivals }) => {
    if (size === null || between === null || course === "nothing" || course === "drift") return [];
    // Jumps of a dip have findings of their own.
    if (course === "step" && measure === "dip") return [];
    const isMoreLoss = measure === "loss" && size > 0;
    const params = { deployment, measure, band, course, event, size, ...between, rivals };
    return [finding(isMoreLoss ? "caution" : "info", "changed-over-time", params, band === null ? {} : { band })];
  });
}
