import type { BandDiff, BandResult, DiffVerdict, Need, PlanCertainty, Verdict } from "@feedpoint/core";
import { percent } from "../text/units.js";

/** Verdicts, needs and certainties in words: the one place where they stand. */

const VERDICTS: Readonly<Record<Verdict, string>> = {
  pass: "pass",
  partial: "partial",
  fail: "fail",
  "not-swept": "not swept",
};

export const verdictWord = (verdict: Verdict): string => VERDICTS[verdict];

/** A verdict, with the share that was swept where that is not all of the band. */
export function verdictText({
  verdict,
  sweptFraction,
  restsOn,
}: Pick<BandResult, "verdict" | "sweptFraction" | "restsOn">): string {
  if (sweptFraction === 0) return "single reading";
  if (restsOn === "stretch") return `${VERDICTS[verdict]}, from readings`;
  return sweptFraction < 1 ? `${VERDICTS[verdict]} (${percent(sweptFraction)} swept)` : VERDICTS[verdict];
}

const DIFF_VERDICTS: Readonly<Record<DiffVerdict, string>> = {
  improved: "improved",
  worse: "worse",
  unchanged: "unchanged",
  mixed: "mixed",
  "not-comparable": "not comparable",
};

/** A band's verdict in words; "not told" where the repeats of a side hide it, "perhaps" where it may be scatter. */
export function diffVerdictText({
  verdict,
  isHidden,
  isPerhaps,
}: Pick<BandDiff, "verdict" | "isHidden" | "isPerhaps">): string {
  if (isHidden) return "not told";
  return isPerhaps && verdict !== "mixed" ? `perhaps ${DIFF_VERDICTS[verdict]}` : DIFF_VERDICTS[verdict];
}

const NEEDS: Readonly<Record<Need, string>> = {
  none: "no tuner",
  "built-in-tuner": "built-in tuner",
  "wide-range-tuner": "wide-range tuner",
  "beyond-tuner": "more than a tuner",
  unknown: "not known",
};

export const needText = (need: Need): string => NEEDS[need];

/** What a band needs, as far as it was swept. */
export const needWhereSwept = ({ need, sweptFraction }: { need: Need; sweptFraction: number }): string =>
  sweptFraction < 1 ? `${NEEDS[need]} where swept` : NEEDS[need];

const CERTAINTIES: Readonly<Record<PlanCertainty, string>> = {
  "from-sources": "from sources",
  "partly-from-memory": "partly from memory",
  "mostly-from-memory": "mostly from memory",
  "from-memory": "from memory",
};

export const certaintyText = (certainty: PlanCertainty): string => CERTAINTIES[certainty];
