import type { Need } from "../../facts/limits.js";
import type { BandDiff } from "./band-diff.js";
import { type Cause, type CauseCode, isLikely } from "./cause.js";
import { lossNotTold } from "./diff-findings.js";
import { type DiffVerdict, isAsRehung } from "./verdict.js";

/** What a person would say of a comparison, in one to three sentences. */
export const headlineOf = (bands: readonly BandDiff[], causes: readonly Cause[]): string =>
  headlineSentences(bands, causes).join(" ");

/** Its sentences one by one: the verdict first, then what it means. */
export function headlineSentences(bands: readonly BandDiff[], causes: readonly Cause[]): readonly string[] {
  if (bands.length === 0) return ["The two sweeps have no band in common."];
  const outcomes = bands.map(outcomeOf);
  const verdicts = new Set(outcomes);
  const likely = causes.filter(isLikely).flatMap((cause) => reasonOf(cause) ?? []);
  const reason = likely.length === 0 ? [] : [sentence(likely)];
  const where = bands.map(({ band }) => band).join(", ");
  if (verdicts.size === 1 && verdicts.has("hidden"))
    return [`Nothing can be told on ${where}: the sweeps of one side differ too much among themselves.`, ...reason];
  if (verdicts.size === 1 && verdicts.has("unchanged")) {
    if (reason.length > 0) return [`No band is better or worse by as much as matters: ${where}.`, ...reason];
    return [`No difference that matters on ${bands.length === 1 ? where : "any band"}.`];
  }
  if (verdicts.size === 1 && verdicts.has("not-comparable"))
    return [`The two cannot be compared as antennas: ${bands[0]?.why ?? ""}.`];
  const parts = ORDER.flatMap((outcome) => {
    const names = bands.filter((_, i) => outcomes[i] === outcome).map(({ band }) => band);
    return names.length === 0 ? [] : [`${WORDS[outcome]} on ${names.join(", ")}`];
  });
  const needs = bands.flatMap(needChange);
  const orLoss = lossNotTold(bands, causes).length === 0 ? [] : [OR_LOSS];
  return [sentence(parts), ...(needs.length === 0 ? [] : [sentence(needs)]), ...reason, ...orLoss];
}

/** A verdict; whether it is one that scatter may have made; and "hidden" for one that is "unchanged" only for want of anything to tell. */
type BandOutcome = DiffVerdict | "perhaps-improved" | "perhaps-worse" | "hidden";

function outcomeOf({ verdict, isHidden, isPerhaps }: BandDiff): BandOutcome {
  if (isHidden) return "hidden";
  return isPerhaps && (verdict === "improved" || verdict === "worse") ? `perhaps-${verdict}` : verdict;
}

const ORDER: readonly BandOutcome[] = [
  "improved",
  "worse",
  "perhaps-improved",
  "perhaps-worse",
  "mixed",
  "unchanged",
  "hidden",
  "not-comparable",
];

const WORDS: Readonly<Record<BandOutcome, string>> = {
  improved: "better",
  worse: "worse",
  "perhaps-improved": "perhaps better",
  "perhaps-worse": "perhaps worse",
  mixed: "neither clearly better nor worse",
  unchanged: "unchanged",
  hidden: "nothing can be told",
  "not-comparable": "not comparable",
};

const REASONS: Readonly<Partial<Record<CauseCode, string>>> = {
  "loss-added": "more is lost on the way, and loss lowers the SWR without making a better antenna",
  "loss-removed": "less is lost on the way, which raises the SWR without making a worse antenna",
  "resistance-added": "a resistance in series takes power, and that lowers the SWR without making a better antenna",
  "coil-added": "a coil, or as much as one, came in series",
  "capacitor-added": "a capacitor, or as much as one, came in series",
  "resonance-moved": "the whole curve moved in frequency",
  "antenna-changed": "the antenna itself changed",
  interference: "one of the sweeps jumps",
  "line-length-changed": "the line between analyser and antenna has another length",
  "reference-changed": "one of the sweeps refers to another impedance",
};

const OR_LOSS = "More loss would lower the SWR as well, and these sweeps do not rule it out.";

const reasonOf = (cause: Cause): string | undefined =>
  cause.code === "resonance-moved" && isAsRehung(cause)
    ? `${REASONS[cause.code]}, by no more than hanging the same wire up again does`
    : REASONS[cause.code];

const NEEDS: Readonly<Record<Need, string | null>> = {
  none: "no tuner",
  "built-in-tuner": "a built-in tuner",
  "wide-range-tuner": "a wide-range tuner",
  "beyond-tuner": "more than a tuner",
  unknown: null,
};

/** What the whole band needs now, where the change of that is part of the verdict. */
function needChange({ band, before, after, verdict, isPerhaps }: BandDiff): readonly string[] {
  if (isPerhaps || verdict === "unchanged" || verdict === "not-comparable" || before.need === after.need) return [];
  const [was, is] = [NEEDS[before.need], NEEDS[after.need]];
  return was === null || is === null ? [] : [`to use all of ${band} now takes ${is} instead of ${was}`];
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

const sentence = (parts: readonly string[]) => `${capital(parts.join("; "))}.`;
