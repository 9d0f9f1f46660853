import type { BandResult, CheckResult, DialResult, Limits, Need, Tuner } from "@feedpoint/core";
import { megahertz, percent } from "../text/units.js";
import { problemsIn } from "./severity.js";
import { needText } from "./verdicts.js";

/** A way to transmit: its name in a sentence, its limit, and the share of a band that it serves. */
interface Means {
  readonly name: string;
  readonly swr: (limits: Limits) => number;
  readonly share: (band: BandResult) => number;
}

const WITHOUT: Means = { name: "Without a tuner", swr: ({ swr }) => swr, share: ({ usable }) => usable.withoutTuner };

const WITH: Readonly<Record<Exclude<Tuner, "none">, Means>> = {
  "built-in": {
    name: "With the radio's tuner",
    swr: ({ builtInTunerSwr }) => builtInTunerSwr,
    share: ({ usable }) => usable.withBuiltInTuner,
  },
  "wide-range": {
    name: "With your wide-range tuner",
    swr: ({ wideRangeTunerSwr }) => wideRangeTunerSwr,
    share: ({ usable }) => usable.withWideRangeTuner,
  },
};

/** The verdict of a check in a sentence, for the tuner that was stated; of a sweep with a problem only behind a word of it. */
export function checkHeadline(result: CheckResult, tuner: Tuner = "none"): string {
  const verdict = verdictSentence(result, tuner);
  const hasProblem = problemsIn([...result.sweep.findings, ...result.findings]).length > 0;
  return hasProblem ? `Settle the problem named below before you believe this: ${lowerFirst(verdict)}` : verdict;
}

const lowerFirst = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

function verdictSentence(result: CheckResult, tuner: Tuner): string {
  const { bands, limits } = result;
  const known = bands.filter(({ best }) => best !== null);
  if (known.length === 0) return "None of the bands was swept.";
  if (!known.some(({ sweptFraction }) => sweptFraction > 0))
    return "There are only single readings on the bands, and nothing is known between them.";
  if (tuner === "none") return `${sentenceOf(result, WITHOUT)}.`;
  const without = usableBy(bands, WITHOUT);
  return `${sentenceOf(result, WITH[tuner])}; without one (up to ${limits.swr}:1) ${without}.`;
}

const sentenceOf = ({ bands, limits }: CheckResult, means: Means): string =>
  `${means.name} (SWR up to ${means.swr(limits)}:1) you can use ${usableBy(bands, means)}`;

/** What can be used without a tuner: "all of 40m, 11 % of 20m and none of 15m". */
export const withoutTuner = ({ bands }: CheckResult): string => usableBy(bands, WITHOUT);

function usableBy(bands: readonly BandResult[], { share }: Means): string {
  const swept = bands.filter(({ best }) => best !== null);
  const names = (is: (fraction: number, band: BandResult) => boolean) =>
    swept.filter((band) => is(share(band), band)).map(({ band }) => band);
  const whole = names((fraction) => fraction === 1);
  const isOpen = ({ restsOn, verdict }: BandResult) => restsOn === "stretch" && verdict === "partial";
  const open = names((fraction, band) => fraction === 0 && isOpen(band));
  const none = names((fraction, band) => fraction === 0 && !isOpen(band));
  const parts = [
    ...(whole.length === 0 ? [] : [`all of ${listed(whole)}`]),
    ...swept
      .filter((band) => share(band) > 0 && share(band) < 1)
      .map((band) => `${percent(share(band))} of ${band.band}`),
    ...(open.length === 0 ? [] : [`some of ${listed(open)} (the readings do not tell where)`]),
    ...(none.length === 0 ? [] : [`none of ${listed(none)}`]),
  ];
  return parts.length === 0 ? "nothing that was swept" : listed(parts);
}

const NEEDS: readonly Need[] = ["none", "built-in-tuner", "wide-range-tuner", "beyond-tuner", "unknown"];

/** What the dial frequencies that were asked for take, a sentence for each use: "FT8: no tuner on 40m and 20m; built-in tuner on 15m." */
export function dialSentences({ dials }: CheckResult): readonly string[] {
  const uses = [...new Set(dials.map(useOf))];
  return uses.map((use) => {
    const own = dials.filter((dial) => useOf(dial) === use);
    const permitted = own.filter(({ isPermitted }) => isPermitted !== false);
    const parts = NEEDS.flatMap((need) => {
      const places = permitted.filter((dial) => dial.need === need);
      return places.length === 0 ? [] : [`${needText(need)} ${placesText(places, own)}`];
    });
    const forbidden = own.filter(({ isPermitted }) => isPermitted === false);
    return `${use}: ${[...parts, ...(forbidden.length === 0 ? [] : [`not permitted ${placesText(forbidden, own)}`])].join("; ")}.`;
  });
}

const useOf = ({ activity, mode }: DialResult): string => activity ?? (mode === null ? "At the dial" : mode);

/** A band by its name where it has one such dial, else by frequency as well. */
function placesText(places: readonly DialResult[], all: readonly DialResult[]): string {
  const name = ({ activity, band, frequencyHz }: DialResult) => {
    const isOnly = activity !== null && all.filter((other) => other.band === band).length === 1;
    return band !== null && isOnly ? band : `${megahertz(frequencyHz)} MHz`;
  };
  return `on ${listed(places.map(name))}`;
}

/** "a, b and c" */
const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join("") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;
