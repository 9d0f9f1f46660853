import type { Advice, AdviseResult, WishNow, WishOutcome } from "@feedpoint/core";
import { percent, swr } from "../present/units.js";
import { codesOf, gravest } from "../words/severity.js";
import type { Column } from "./column.js";

/** A wish with what is to be expected of it, as it is and after each advice. */
interface WishRow {
  readonly result: AdviseResult;
  readonly wish: WishNow;
  /** After each advice */
  readonly after: readonly (WishOutcome | null)[];
}

export const wishRows = (result: AdviseResult): readonly WishRow[] => {
  const foretold = result.wishes.filter(({ now }) => now !== null);
  return result.wishes.map((wish) => {
    const place = foretold.indexOf(wish);
    return { result, wish, after: result.advice.map(({ outcomes }) => outcomes[place] ?? null) };
  });
};

/** What is wanted and what each advice does for it, one row a wish. */
export const wishColumns = (result: AdviseResult): readonly Column<WishRow>[] => [
  { key: "wish", title: "Wanted", text: ({ wish }) => wish.title },
  { key: "now", title: "As it is", text: ({ wish }) => outcomeText(wish.now) },
  ...result.advice.map((_, i) => ({
    key: `advice${i + 1}`,
    title: `Advice ${i + 1}`,
    spare: i + 1,
    text: ({ after }: WishRow) => outcomeText(after[i] ?? null),
  })),
  { key: "limit", title: "The most that a lossless network can do", spare: 1, text: limitText },
];

/** Share within reach, what it may be, and what arrives: "63 % (55-70) · 91 %". */
function outcomeText(outcome: WishOutcome | null): string {
  if (outcome === null) return "not known";
  const { reached, reachedBetween, arrives } = outcome;
  const [low, high] = [Math.round(100 * reachedBetween.low), Math.round(100 * reachedBetween.high)];
  const between = low === high ? "" : ` (${low}-${high})`;
  return `${percent(reached)}${between}${arrives === null ? "" : ` · ${percent(arrives)}`}`;
}

function limitText({ wish: { limit, now } }: WishRow): string {
  if (now === null) return "–";
  if (limit === null || limit.q === null) return "not known";
  if (!limit.isOneResonance) return "several resonances: does not apply";
  const { leastSwr, greatestShare } = limit;
  if (greatestShare === 1) return `all of it (Q ${Math.round(limit.q)})`;
  return `${percent(greatestShare ?? 0)}, or SWR ${swr(leastSwr)} throughout (Q ${Math.round(limit.q)})`;
}

/** A wish and one advice; null: as it is. */
interface AdviceRow {
  readonly result: AdviseResult;
  readonly wish: WishNow;
  readonly rank: number;
  readonly advice: Advice | null;
  readonly outcome: WishOutcome | null;
}

export const adviceRows = (result: AdviseResult): readonly AdviceRow[] =>
  wishRows(result).flatMap(({ wish, after }) => [
    { result, wish, rank: 0, advice: null, outcome: wish.now },
    ...result.advice.map((advice, i) => ({ result, wish, rank: i + 1, advice, outcome: after[i] ?? null })),
  ]);

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
