import type { Need } from "../limits.js";
import type { BandDiff } from "./band-diff.js";
import { type Cause, type CauseCode, isLikely } from "./cause.js";
import type { DiffVerdict } from "./verdict.js";

/**
 * What a person would say of a comparison, in one to three sentences.
 *
 * @param areUnlike whether the repeats of a side differ by more than counts as a change
 */
export function headlineOf(bands: readonly BandDiff[], causes: readonly Cause[], areUnlike: boolean): string {
  if (bands.length === 0) return "The two sweeps have no band in common.";
  const verdicts = new Set(bands.map(({ verdict }) => verdict));
  const likely = causes.filter(isLikely).flatMap(({ code }) => REASONS[code] ?? []);
  const reason = likely.length === 0 ? "" : ` ${capital(likely.join("; "))}.`;
  if (verdicts.size === 1 && verdicts.has("unchanged")) {
    const where = bands.map(({ band }) => band).join(", ");
    if (areUnlike)
      return `Nothing can be told on ${where}: the sweeps of one side differ too much among themselves.${reason}`;
    if (reason !== "") return `No band is better or worse by as much as matters: ${where}.${reason}`;
    return `No difference that matters on ${bands.length === 1 ? where : "any band"}.`;
  }
  if (verdicts.size === 1 && verdicts.has("not-comparable")) {
    return `The two cannot be compared as antennas: ${bands[0]?.why ?? ""}.`;
  }
  const parts = ORDER.flatMap((verdict) => {
    const names = bands.filter((band) => band.verdict === verdict).map(({ band }) => band);
    return names.length === 0 ? [] : [`${WORDS[verdict]} on ${names.join(", ")}`];
  });
  const needs = bands.flatMap(needChange);
  return `${capital(parts.join("; "))}.${needs.length === 0 ? "" : ` ${capital(needs.join("; "))}.`}${reason}`;
}

const ORDER: readonly DiffVerdict[] = ["improved", "worse", "mixed", "unchanged", "not-comparable"];

const WORDS: Readonly<Record<DiffVerdict, string>> = {
  improved: "better",
  worse: "worse",
  mixed: "neither clearly better nor worse",
  unchanged: "unchanged",
  "not-comparable": "not comparable",
};

const REASONS: Readonly<Partial<Record<CauseCode, string>>> = {
  "loss-added": "more is lost on the way, and loss lowers the SWR without making a better antenna",
  "loss-removed": "less is lost on the way, which raises the SWR without making a worse antenna",
  "resonance-moved": "the whole curve moved in frequency",
  "antenna-changed": "the antenna itself changed",
  interference: "one of the sweeps jumps",
  "line-length-changed": "the line between analyser and antenna has another length",
  "reference-changed": "one of the sweeps refers to another impedance",
};

const NEEDS: Readonly<Record<Need, string | null>> = {
  none: "no tuner",
  "built-in-tuner": "a built-in tuner",
  "wide-range-tuner": "a wide-range tuner",
  "beyond-tuner": "more than a tuner",
  unknown: null,
};

/** What the whole band needs now, where the change of that is part of the verdict. */
function needChange({ band, before, after, verdict }: BandDiff): readonly string[] {
  if (verdict === "unchanged" || verdict === "not-comparable" || before.need === after.need) return [];
  const [was, is] = [NEEDS[before.need], NEEDS[after.need]];
  return was === null || is === null ? [] : [`all of ${band} now needs ${is} instead of ${was}`];
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
