import type { Advice, AdviseResult, WishNow, WishOutcome } from "@feedpoint/core";
import { percent, swr } from "../text/units.js";
import { codesOf, gravest } from "../words/severity.js";
import type { Column } from "./column.js";

/** One line of the table for people: as it is, an advice, or what no network can do better. */
interface TryRow {
  readonly name: string;
  /** One cell a wish */
  readonly cells: readonly string[];
}

/** As it is, each advice, and the most that a lossless network can do, over all that is wanted. */
export function tryRows(result: AdviseResult): readonly TryRow[] {
  const { wishes, advice, ends } = result;
  const isArrivalKnown = ends !== "analyser";
  const after = advice.map(({ outcomes }, i) => {
    const byWish = outcomesByWish(result, outcomes);
    return { name: `Advice ${i + 1}`, cells: byWish.map((outcome) => outcomeText(outcome, isArrivalKnown)) };
  });
  const limits = wishes.map(limitText);
  return [
    { name: "As it is", cells: wishes.map(({ now }) => outcomeText(now, isArrivalKnown)) },
    ...after,
    ...(limits.some((text) => text !== "–") ? [{ name: "At most", cells: limits }] : []),
  ];
}

/** A column for each wish. */
export const tryColumns = ({ wishes }: AdviseResult): readonly Column<TryRow>[] => [
  { key: "what", title: "What", text: ({ name }) => name },
  ...wishes.map(({ title }, i) => ({ key: title, title, text: ({ cells }: TryRow) => cells[i] ?? "–" })),
];

/** The outcomes of an advice by wish; null for those of which nothing can be foretold. */
function outcomesByWish({ wishes }: AdviseResult, outcomes: readonly WishOutcome[]): readonly (WishOutcome | null)[] {
  const foretold = wishes.filter(({ notForetold }) => notForetold === null);
  return wishes.map((wish) => outcomes[foretold.indexOf(wish)] ?? null);
}

/** Share within reach, what it may be, and what arrives: "63 % (55-70), 91 % arrives". */
function outcomeText(outcome: WishOutcome | null, isArrivalKnown: boolean): string {
  if (outcome === null) return "not known";
  const { reached, reachedBetween, arrives } = outcome;
  const [low, high] = [Math.round(100 * reachedBetween.low), Math.round(100 * reachedBetween.high)];
  const between = low === high ? "" : ` (${low}-${high})`;
  // Where no line is known it loses what it loses, and only added parts are counted.
  const arrival =
    arrives === null || reached === 0 || (!isArrivalKnown && arrives > WHOLE)
      ? ""
      : arrivalText(arrives, isArrivalKnown);
  return `${percent(reached)}${between}${arrival}`;
}

const WHOLE = 0.9999;
const arrivalText = (arrives: number, isKnown: boolean) => `, ${isKnown ? "" : "≤"}${percent(arrives)} arrives`;

function limitText({ limit, now, notForetold }: WishNow): string {
  if (now === null || notForetold !== null || limit === null || limit.q === null) return "–";
  const q = `Q ${Math.round(limit.q)}`;
  if (!limit.isOneResonance) return `several resonances (${q})`;
  const { leastSwr, greatestShare } = limit;
  return greatestShare === 1 ? `100 % (${q})` : `${percent(greatestShare ?? 0)}, or SWR ${swr(leastSwr)} on all (${q})`;
}

/** A wish and one advice; null: as it is. */
interface AdviceRow {
  readonly result: AdviseResult;
  readonly wish: WishNow;
  readonly rank: number;
  readonly advice: Advice | null;
  readonly outcome: WishOutcome | null;
}

export const adviceRows = (result: AdviseResult): readonly AdviceRow[] => {
  const after = result.advice.map((advice) => outcomesByWish(result, advice.outcomes));
  return result.wishes.flatMap((wish, w) => [
    { result, wish, rank: 0, advice: null, outcome: wish.now },
    ...result.advice.map((advice, i) => ({ result, wish, rank: i + 1, advice, outcome: after[i]?.[w] ?? null })),
  ]);
};

const findingsOf = ({ result }: AdviceRow) => [...result.sweep.findings, ...result.findings];

/** For programs: one row for each wish and advice, as it is first. */
export const ADVICE_COLUMNS: readonly Column<AdviceRow>[] = [
  { key: "file", value: ({ result }) => result.sweep.file },
  { key: "verdict", value: ({ result }) => result.verdict },
  { key: "rank", about: "0: as it is", value: ({ rank }) => rank },
  { key: "kind", value: ({ advice }) => advice?.kind ?? "as-is" },
  { key: "what", value: ({ advice }) => advice?.what ?? "Leave it as it is" },
  { key: "lengthChange", about: "relative", value: ({ advice }) => advice?.lengthChange ?? 0 },
  { key: "lengthChangeM", value: ({ advice }) => advice?.lengthChangeM ?? null },
  { key: "wish", value: ({ wish }) => wish.title },
  { key: "notForetold", value: ({ wish }) => wish.notForetold },
  { key: "reachedFraction", about: "0 to 1", value: ({ outcome }) => outcome?.reached ?? null },
  { key: "reachedFractionLow", value: ({ outcome }) => outcome?.reachedBetween.low ?? null },
  { key: "reachedFractionHigh", value: ({ outcome }) => outcome?.reachedBetween.high ?? null },
  { key: "withoutTunerFraction", value: ({ outcome }) => outcome?.withoutTuner ?? null },
  { key: "arrivingFraction", about: "the least within reach", value: ({ outcome }) => outcome?.arrives ?? null },
  { key: "limitQ", value: ({ wish }) => wish.limit?.q ?? null },
  { key: "limitLeastSwr", value: ({ wish }) => wish.limit?.leastSwr ?? null },
  { key: "limitFraction", value: ({ wish }) => wish.limit?.greatestShare ?? null },
  { key: "plan", value: ({ result }) => result.plan.id },
  { key: "planCertainty", value: ({ result }) => result.plan.certainty },
  { key: "severity", about: "of the gravest finding", value: (row) => gravest(findingsOf(row)) },
  { key: "findings", about: "codes, the gravest first", value: (row) => codesOf(findingsOf(row)) },
];
