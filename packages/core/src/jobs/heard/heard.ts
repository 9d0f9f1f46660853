import { median } from "simple-statistics";
import { CAUTIONS } from "../../facts/cautions.js";
import { locatorArea } from "../../facts/earth/locator.js";
import { demand } from "../../input/argument.js";
import { grouped } from "../../numbers/grouped.js";
import type { ReceptionReport } from "../../reading/reports/report.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { compareOnBand, type HeardComparison } from "./compare.js";
import type { HeardOnBand, HeardResult } from "./heard-result.js";
import { type OnAir, onAirFinder } from "./on-air.js";
import { receiverName } from "./pairs.js";
import { slotOf } from "./slots.js";
import { heardWhere, sectorOf } from "./where.js";

/** What is asked of reports. */
export interface HeardOptions {
  /** When each deployment was up; {@link onAirOf} has it of a log */
  readonly periods: readonly OnAir[];
  /** The own call sign; the station that most reports are of where left out */
  readonly transmitter?: string;
  /** Where the own station is; its reports say where left out */
  readonly locator?: string;
  /** Two deployments to compare; each with the next one in the order of the log where left out */
  readonly compare?: readonly [before: string, after: string];
  /** Bands to look at; all that there are reports of where left out */
  readonly bands?: readonly string[];
}

/** Two stations as often reported leave open which is the own one. */
const MOST_OF_OTHERS = 0.5;

/**
 * Says who heard which deployment, and where two were heard by the same receivers, which was heard better.
 *
 * A report proves that something was radiated; that there is none proves nothing.
 *
 * @throws RangeError where no report is given, where two stations might be the own one, or a deployment was never up
 * @example
 * ```ts
 * import { heard, onAirOf, readDeploymentLog, readReports } from "@feedpoint/core";
 *
 * const log = readDeploymentLog("file,up,down\nhigh,2026-05-02 14:00,2026-05-02 15:00\n", "deployments.csv");
 * const { reports } = readReports("time,tx,rx,band,snr\n2026-05-02 14:22,Q0AAA,Q0BBB,40m,-21\n");
 * heard(reports, { periods: onAirOf(log) }).deployments[0]?.receivers; // → 1
 * ```
 */
export function heard(reports: readonly ReceptionReport[], options: HeardOptions): HeardResult {
  const { periods, locator, compare, bands } = options;
  const transmitter = (options.transmitter ?? commonest(reports)).toUpperCase();
  const area = locator === undefined ? null : locatorArea(locator);
  demand(locator === undefined || area !== null, "locator", "a locator such as JO01", locator);
  const unique = withoutRepeats(reports);
  const wanted = unique.filter(({ band }) => bands === undefined || bands.includes(band));
  const own = wanted.filter((report) => receiverName(report.transmitter) === receiverName(transmitter));
  if (own.length === 0) throw new RangeError(`there is no report of ${transmitter}`);
  const onAirAt = onAirFinder(periods);
  const byDeployment = grouped(own, (report) => onAirAt(report)?.deployment ?? null);
  const names = [...new Set(periods.map(({ deployment }) => deployment))].filter((name) => byDeployment.has(name));
  const byBand = new Map(names.map((name) => [name, grouped(byDeployment.get(name) ?? [], ({ band }) => band)]));
  const reportsOf = (name: string, band: string) => byBand.get(name)?.get(band) ?? [];
  const pairs = compare === undefined ? neighbours(names) : [compare];
  for (const name of pairs.flat())
    if (!names.includes(name))
      throw new RangeError(`no report is of "${name}"; reports are of ${names.join(", ") || "none"}`);
  const onBands = [...grouped(wanted, ({ band }) => band)];
  const where = names.flatMap((name) =>
    onBands.flatMap(([band]) => {
      const own = reportsOf(name, band);
      return own.length === 0 ? [] : [heardWhere(name, band, own, area)];
    }),
  );
  const comparisons = pairs.flatMap(([before, after]) =>
    onBands.flatMap(([band, all]): readonly HeardComparison[] => {
      const sides = { before: reportsOf(before, band), after: reportsOf(after, band) };
      if (sides.before.length === 0 || sides.after.length === 0) return [];
      const places = where.filter((each) => each.band === band && [before, after].includes(each.deployment));
      const listeners = new Map(places.flatMap((each) => each.listeners).map((each) => [each.receiver, each]));
      const directionOf = (receiver: string) => {
        const listener = listeners.get(receiver);
        return listener === undefined ? null : sectorOf(listener);
      };
      return [compareOnBand({ before, after, band }, sides, all, (report) => onAirAt(report)?.up ?? 0, directionOf)];
    }),
  );
  const totals = {
    reports: own.length,
    outside: byDeployment.get(null)?.length ?? 0,
    ofOthers: wanted.length - own.length,
    repeated: reports.length - unique.length,
    withoutRatio: own.filter(({ snrDb }) => snrDb === null).length,
  };
  return {
    schema: "feedpoint/heard@1",
    transmitter,
    deployments: where.map(({ deployment, band, listeners }) =>
      onBand(
        deployment,
        band,
        reportsOf(deployment, band),
        listeners.map(({ distanceKm }) => distanceKm),
      ),
    ),
    comparisons,
    where,
    findings: findingsOf(totals, comparisons, names.length),
    cautions: CAUTIONS,
    totals,
  };
}

/** @throws RangeError where two stations have about as many */
function commonest(reports: readonly ReceptionReport[]): string {
  const [first, second] = [...grouped(reports, ({ transmitter }) => receiverName(transmitter))].sort(
    ([, one], [, other]) => other.length - one.length,
  );
  if (first === undefined) throw new RangeError("there is no report");
  if (second !== undefined && second[1].length > MOST_OF_OTHERS * first[1].length)
    throw new RangeError(`reports are of ${first[0]} and of ${second[0]}; say which station is yours`);
  return first[0];
}

/** The same stations, band, mode and slot are one report: the best of them. */
function withoutRepeats(reports: readonly ReceptionReport[]): readonly ReceptionReport[] {
  const best = new Map<string, ReceptionReport>();
  for (const report of reports) {
    const { transmitter, receiver, band, mode, time } = report;
    const key = `${transmitter}\n${receiver}\n${band}\n${mode}\n${slotOf(time, mode)}`;
    const known = best.get(key);
    if (known === undefined || (report.snrDb ?? Number.NEGATIVE_INFINITY) > (known.snrDb ?? Number.NEGATIVE_INFINITY))
      best.set(key, report);
  }
  return [...best.values()];
}

const neighbours = (names: readonly string[]): readonly (readonly [string, string])[] =>
  names.slice(1).map((name, i) => [names[i] as string, name]);

function onBand(
  deployment: string,
  band: string,
  reports: readonly ReceptionReport[],
  distances: readonly number[],
): HeardOnBand {
  const ratios = reports.flatMap(({ snrDb }) => snrDb ?? []);
  const times = reports.map(({ time }) => time);
  const iso = (time: number) => new Date(time).toISOString().slice(0, 16).replace("T", " ");
  return {
    deployment,
    band,
    reports: reports.length,
    receivers: new Set(reports.map(({ receiver }) => receiverName(receiver))).size,
    medianSnrDb: ratios.length === 0 ? null : median(ratios),
    farthestKm: distances.length === 0 ? null : Math.max(...distances),
    first: iso(times.reduce((least, time) => Math.min(least, time))),
    last: iso(times.reduce((most, time) => Math.max(most, time))),
  };
}

function findingsOf(
  { outside, ofOthers, withoutRatio }: HeardResult["totals"],
  comparisons: readonly HeardComparison[],
  deployments: number,
): readonly Finding[] {
  const withoutPowers = comparisons.filter(({ pairs, withPowers }) => withPowers < pairs).map(({ band }) => band);
  const withoutPairs = comparisons.filter(({ pairs }) => pairs === 0).map(({ band }) => band);
  return [
    ...(outside === 0 ? [] : [finding("caution", "heard-outside", { reports: outside })]),
    ...(withoutPowers.length === 0
      ? []
      : [finding("caution", "heard-powers-not-stated", { bands: [...new Set(withoutPowers)] })]),
    ...(withoutPairs.length === 0
      ? []
      : [finding("caution", "heard-without-pairs", { bands: [...new Set(withoutPairs)] })]),
    ...(deployments === 1 ? [finding("info", "heard-one-deployment", {})] : []),
    ...(withoutRatio === 0 ? [] : [finding("caution", "heard-without-ratio", { reports: withoutRatio })]),
    ...(ofOthers === 0 && comparisons.length > 0 ? [finding("info", "heard-no-others", {})] : []),
    finding("info", "heard-absence", {}),
  ];
}
