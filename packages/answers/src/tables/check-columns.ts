import {
  type BandResult,
  type CheckResult,
  type Interval,
  isDip,
  type Limits,
  type Point,
  type Span,
  type Tuner,
} from "@feedpoint/core";
import { megahertz, percent, pointSwr, span, swr } from "../text/units.js";
import { aboutBand, codesOf, gravest } from "../words/severity.js";
import { needText, needWhereSwept, verdictText } from "../words/verdicts.js";
import type { Column } from "./column.js";

/** A band of a result. */
export interface CheckRow {
  readonly result: CheckResult;
  readonly band: BandResult;
}

export const checkRows = (results: readonly CheckResult[]): readonly CheckRow[] =>
  results.flatMap((result) => result.bands.map((band) => ({ result, band })));

/** The rows that people are shown: bands of which something is known. */
export const sweptRows = (result: CheckResult): readonly CheckRow[] =>
  checkRows([result]).filter(({ band }) => band.best !== null);

/** The column with the ends of each band. */
export const RANGE_KEY = "range";

/** Which parts of the deployment a band rests on. */
const partsText = ({ result, band }: CheckRow): string =>
  band.answeredBy.map((place) => result.parts[place]?.label ?? "").join(", ");

const findingsOf = ({ result, band }: CheckRow) => aboutBand([...result.sweep.findings, ...result.findings], band.band);

/** What check tells of each band. With a tuner stated, the megahertz that it reaches stand beside those without one. */
export const checkColumns = (limits: Limits, tuner: Tuner = "none"): readonly Column<CheckRow>[] => [
  { key: "file", value: ({ result }) => result.sweep.file },
  { key: "label", value: ({ result }) => result.sweep.label },
  { key: "plan", value: ({ result }) => result.plan.id },
  { key: "band", title: "Band", value: ({ band }) => band.band, text: ({ band }) => band.band },
  { key: RANGE_KEY, title: "MHz", spare: 4, text: ({ band }) => rangeText(band) },
  { key: "lowHz", value: ({ band }) => band.lowHz },
  { key: "highHz", value: ({ band }) => band.highHz },
  {
    key: "verdict",
    about: "pass: all of it swept and within the limit; partial: some of it; fail: none of the swept part",
    title: "Verdict",
    value: ({ band }) => band.verdict,
    text: ({ band }) => verdictText(band),
  },
  { key: "need", about: "what the worst swept point takes", value: ({ band }) => band.need },
  { key: "sweptFraction", about: "0 to 1", value: ({ band }) => band.sweptFraction },
  {
    key: "bestSwr",
    title: "Best SWR",
    align: "right",
    value: ({ band }) => band.best?.swr ?? null,
    text: ({ band }) => swrText(band.best, limits),
  },
  { key: "bestHz", value: ({ band }) => band.best?.frequencyHz ?? null },
  { key: "bestPlace", title: "at MHz", spare: 3, text: ({ band }) => placeText(band) },
  {
    key: "worstSwr",
    title: "Worst SWR",
    align: "right",
    spare: 1,
    value: ({ band }) => band.worst?.swr ?? null,
    text: ({ band }) => swrText(band.worst, limits),
  },
  { key: "worstHz", value: ({ band }) => band.worst?.frequencyHz ?? null },
  { key: "limitSwr", value: ({ band }) => band.withinLimit.limitSwr },
  { key: "withinLimitHz", value: ({ band }) => band.withinLimit.widthHz },
  { key: "withinLimitFraction", about: "0 to 1", value: ({ band }) => band.withinLimit.fraction },
  {
    key: "withinLimit",
    title: `MHz within ${limits.swr}:1`,
    ...(tuner === "none" ? {} : { spare: 2 }),
    text: ({ band }) => spansText(band, band.withinLimit.spans) + edgeDoubt(band),
  },
  ...tunerColumns(limits, tuner),
  ...reachesOf(limits).map(
    ({ swr: limit, spare, by }): Column<CheckRow> => ({
      key: by,
      title: `to ${limit}:1`,
      align: "right",
      spare,
      value: ({ band }) => band.usable[by],
      text: ({ band }) => (areSpots(band) ? "–" : percent(band.usable[by])),
    }),
  ),
  {
    key: "wholeBandNeeds",
    title: "Whole band needs",
    text: ({ band }) => (areSpots(band) ? `${needText(band.need)} there` : needWhereSwept(band)),
  },
  { key: "bestIsAtLeast", about: "the scale ended", value: ({ band }) => band.best?.isAtLeast ?? null },
  { key: "bestSwrLow", about: "both ends of what it may be, 95 %", value: ({ band }) => band.best?.swrLow ?? null },
  { key: "bestSwrHigh", value: ({ band }) => band.best?.swrHigh ?? null },
  { key: "worstIsAtLeast", value: ({ band }) => band.worst?.isAtLeast ?? null },
  { key: "worstSwrLow", value: ({ band }) => band.worst?.swrLow ?? null },
  { key: "worstSwrHigh", value: ({ band }) => band.worst?.swrHigh ?? null },
  {
    key: "planCertainty",
    about: "how much of the plan was read from a source",
    value: ({ result }) => result.plan.certainty,
  },
  { key: "severity", about: "of the gravest finding", value: (row) => gravest(findingsOf(row)) },
  { key: "findings", about: "codes, the gravest first", value: (row) => codesOf(findingsOf(row)) },
  {
    key: "restsOn",
    about: "curve, spots (single readings) or stretch (an SWR noted for all of it)",
    value: ({ band }) => band.restsOn,
  },
  { key: "answeredBy", about: "labels of the parts that it rests on", value: (row) => partsText(row) },
];

/** The span of megahertz within the reach of the tuner that was stated. */
function tunerColumns(limits: Limits, tuner: Tuner): readonly Column<CheckRow>[] {
  if (tuner === "none") return [];
  const [limit, reach] =
    tuner === "built-in"
      ? ([limits.builtInTunerSwr, "builtIn"] as const)
      : ([limits.wideRangeTunerSwr, "wideRange"] as const);
  return [
    {
      key: "withinTuner",
      title: `MHz within ${limit}:1`,
      text: ({ band }) => spansText(band, band.tunerSpans[reach]),
    },
  ];
}

/** The limits in force, each told once: raised far enough, one takes the place of the next. */
function reachesOf({ swr: limit, builtInTunerSwr, wideRangeTunerSwr }: Limits) {
  const reaches = [
    { swr: limit, by: "withoutTuner", spare: 0 },
    { swr: builtInTunerSwr, by: "withBuiltInTuner", spare: 2 },
    { swr: wideRangeTunerSwr, by: "withWideRangeTuner", spare: 5 },
  ] as const;
  return reaches.filter((reach, i) => i === 0 || reach.swr !== reaches[i - 1]?.swr);
}

/** More spans or pieces than these are counted, not listed. */
const MOST_SPANS = 2;

/** An SWR that was noted for a band lies within the limit on some of it, without saying where. */
const isOpen = ({ restsOn, verdict }: BandResult) => restsOn === "stretch" && verdict === "partial";

/** Of single readings no share of a band is known. */
const areSpots = ({ sweptFraction }: BandResult) => sweptFraction === 0;

const rangeText = (band: BandResult): string =>
  band.pieces.length > MOST_SPANS ? `${span(band)} in ${band.pieces.length} pieces` : band.pieces.map(span).join(", ");

function spansText(band: BandResult, spans: readonly Span[]): string {
  if (areSpots(band)) return "–";
  if (spans.length === 0) return isOpen(band) ? "–" : "none";
  const more = spans.length > MOST_SPANS ? ` +${spans.length - MOST_SPANS} more` : "";
  return spans.slice(0, MOST_SPANS).map(span).join(", ") + more;
}

/** Where the best point is, and how sure that is; "edge" where it is no dip. */
function placeText(result: BandResult): string {
  const { best, uncertainty } = result;
  if (best === null || result.restsOn === "stretch") return "–";
  const place = megahertz(best.frequencyHz);
  return isDip(result) ? place + doubt([uncertainty?.bestHz ?? null]) : `${place} edge`;
}

/** How sure those edges of the span around the best point are that lie within the band. */
function edgeDoubt({ uncertainty, pieces, bandwidth, withinLimit, sweptFraction }: BandResult): string {
  if (uncertainty === null || bandwidth === null || withinLimit.spans.length === 0 || sweptFraction === 0) return "";
  const isWithin = (frequencyHz: number) =>
    pieces.some(({ lowHz, highHz }) => frequencyHz > lowHz && frequencyHz < highHz);
  return doubt([
    isWithin(bandwidth.lowHz) ? uncertainty.lowEdgeHz : null,
    isWithin(bandwidth.highHz) ? uncertainty.highEdgeHz : null,
  ]);
}

/** Half the widest of some intervals, where it shows in kilohertz. */
function doubt(intervals: readonly (Interval | null)[]): string {
  const halves = intervals.map((interval) => (interval === null ? 0 : (interval.high - interval.low) / 2));
  const kilohertz = Math.round(Math.max(0, ...halves) / 1000);
  return kilohertz === 0 ? "" : ` ±${kilohertz} kHz`;
}

/** Ends of an interval that are nearer together than this share of the SWR are not worth their place. */
const LEAST_INTERVAL = 0.02;

/** An SWR with both ends of what it may be, where they are apart or a limit lies between them. */
function swrText(point: Point | null, limits: Limits): string {
  if (point === null) return "–";
  const value = pointSwr(point);
  if (point.isAtLeast || point.swrLow === undefined || point.swrHigh === undefined) return value;
  const { swrLow: low, swrHigh: high } = point;
  const isOpen = Object.values(limits).some((limit) => low <= limit && limit <= high);
  if (high - low < LEAST_INTERVAL * point.swr && !isOpen) return value;
  return `${value} (${swr(low)}-${swr(high)})`;
}
