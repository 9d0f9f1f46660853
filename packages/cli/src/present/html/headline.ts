import type { BandResult, CheckResult } from "@feedpoint/core";
import { percent } from "../units.js";

/** The verdict of a check in a sentence. */
export function checkHeadline(result: CheckResult): string {
  const known = result.bands.filter(({ best }) => best !== null);
  if (known.length === 0) return "None of the bands was swept.";
  return known.some(({ sweptFraction }) => sweptFraction > 0)
    ? `Without a tuner (SWR up to ${result.limits.swr}:1) you can use ${withoutTuner(result)}.`
    : "There are only single readings on the bands, and nothing is known between them.";
}

/** What can be used without a tuner: "all of 40m, 11 % of 20m and none of 15m". */
export function withoutTuner({ bands }: CheckResult): string {
  const swept = bands.filter(({ best }) => best !== null);
  const names = (verdict: BandResult["verdict"]) =>
    swept.filter((band) => band.verdict === verdict).map(({ band }) => band);
  const [whole, none] = [names("pass"), names("fail")];
  const parts = [
    ...(whole.length === 0 ? [] : [`all of ${listed(whole)}`]),
    ...swept
      .filter(({ verdict }) => verdict === "partial")
      .map(({ band, withinLimit }) => `${percent(withinLimit.fraction)} of ${band}`),
    ...(none.length === 0 ? [] : [`none of ${listed(none)}`]),
  ];
  return parts.length === 0 ? "nothing that was swept" : listed(parts);
}

/** "a, b and c" */
const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join("") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;
