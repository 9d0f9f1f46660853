import {
  type BandResult,
  type CheckResult,
  type Interval,
  isDip,
  type Limits,
  type Mode,
  type Point,
  type Verdict,
} from "@feedpoint/core";
import { shortCautions } from "./cautions.js";
import { stationTexts } from "./check-station.js";
import { csvTable } from "./csv.js";
import { markdownCell, printable } from "./escape.js";
import { findingLines } from "./findings.js";
import { markdownTable, type Table, type TableColumn, textTable, wrap } from "./table.js";
import {
  emissions,
  limitsLine,
  megahertz,
  need,
  needOf,
  percent,
  planLine,
  pointSwr,
  span,
  stationLines,
  swr,
  use,
} from "./units.js";

const VERDICTS: Readonly<Record<Verdict, string>> = {
  pass: "pass",
  partial: "partial",
  fail: "fail",
  "not-swept": "not swept",
};

/** More spans or pieces than these are counted, not listed. */
const MOST_SPANS = 2;

export interface CheckTextOptions {
  readonly width: number;
  readonly withSegments: boolean;
  readonly stationFile: string | null;
  readonly modes?: readonly Mode[];
  /** A picture for each result; absent where none was asked for */
  readonly charts?: readonly string[];
}

/** Results for a person at a terminal; what is common to all is said once, at the end. */
export function checkText(
  results: readonly CheckResult[],
  { width, withSegments, stationFile, modes, charts = [] }: CheckTextOptions,
): string {
  const blocks = results.map((result, i) => {
    const chart = charts[i] ?? "";
    const notSwept = result.bands.filter(({ best }) => best === null).map(({ band }) => band);
    const findings = findingLines([...result.sweep.findings, ...result.findings], width);
    return [
      heading(result, { width, stationFile, modes }),
      "",
      notSwept.length < result.bands.length
        ? textTable(columnsFor(result), rowsFor(result), { width })
        : wrap(nothingJudged(result), width),
      chart === "" ? null : `\n${chart}`,
      withSegments ? `\n${textTable(SEGMENT_COLUMNS, segmentRows(result), { width })}` : null,
      ...stationTexts(result, width).map((table) => `\n${table}`),
      notSwept.length > 0 ? `\n${wrap(`Not swept: ${notSwept.join(", ")}`, width, "  ")}` : null,
      findings === "" ? null : `\n${findings}`,
    ]
      .filter((part) => part !== null)
      .join("\n");
  });
  return [...blocks, shortCautions(width)].join("\n\n");
}

export function checkMarkdown(result: CheckResult): string {
  return [`## ${markdownCell(result.sweep.label)}`, "", markdownTable(columnsFor(result), rowsFor(result))].join("\n");
}

/** The bands that were swept, and the segments of each. */
export const bandTable = (result: CheckResult): Table => ({ columns: columnsFor(result), rows: rowsFor(result) });
export const segmentTable = (result: CheckResult): Table => ({ columns: SEGMENT_COLUMNS, rows: segmentRows(result) });

/** One row a band. */
export function checkCsv(results: readonly CheckResult[]): string {
  return csvTable(
    results.flatMap(({ sweep, plan, bands }) =>
      bands.map((band) => ({
        file: sweep.file,
        label: sweep.label,
        plan: plan.id,
        band: band.band,
        lowHz: band.lowHz,
        highHz: band.highHz,
        verdict: band.verdict,
        need: band.need,
        sweptFraction: band.sweptFraction,
        bestSwr: band.best?.swr ?? null,
        bestHz: band.best?.frequencyHz ?? null,
        worstSwr: band.worst?.swr ?? null,
        worstHz: band.worst?.frequencyHz ?? null,
        limitSwr: band.withinLimit.limitSwr,
        withinLimitHz: band.withinLimit.widthHz,
        withinLimitFraction: band.withinLimit.fraction,
      })),
    ),
  );
}

function heading(
  { sweep, plan, limits }: CheckResult,
  {
    width,
    stationFile,
    modes,
  }: Pick<CheckTextOptions, "width" | "stationFile"> & { modes: readonly Mode[] | undefined },
): string {
  const taken = sweep.takenAt === null ? "" : `, taken ${sweep.takenAt}`;
  const below = (text: string) => `  ${wrap(text, width - 2, "    ")}`;
  return [
    printable(sweep.label),
    below(
      `${sweep.points} point${sweep.points === 1 ? "" : "s"}, ${span({ lowHz: sweep.startHz, highHz: sweep.stopHz })} MHz, ${sweep.referenceOhms} Ω${taken}`,
    ),
    below(sweep.description),
    below(planLine(plan)),
    below(limitsLine(limits)),
    ...(modes === undefined
      ? []
      : [below(`Judged where these may be sent: ${modes.map(({ name }) => name).join(", ")}`)]),
    ...stationLines(stationFile).map((line) => `  ${line}`),
  ].join("\n");
}

/** The column with the ends of each band. */
export const RANGE_KEY = "range";

function columnsFor({ limits }: CheckResult): readonly TableColumn[] {
  return [
    { title: "Band" },
    { key: RANGE_KEY, title: "MHz", spare: 4 },
    { title: "Verdict" },
    { title: "Best SWR", align: "right" },
    { title: "at MHz", spare: 3 },
    { title: "Worst SWR", align: "right", spare: 1 },
    { title: `MHz within ${limits.swr}:1` },
    ...reachesOf(limits).map(({ swr: limit, spare }) => ({ title: `to ${limit}:1`, align: "right" as const, spare })),
    { title: "Whole band needs" },
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

function rowsFor({ bands, limits }: CheckResult): readonly (readonly string[])[] {
  return bands.filter(({ best }) => best !== null).map((band) => rowFor(band, limits));
}

function rowFor(result: BandResult, limits: Limits): readonly string[] {
  const { band, pieces, best, worst, withinLimit, usable } = result;
  const spans = withinLimit.spans;
  // Of single readings no share of a band is known.
  const areSpots = result.sweptFraction === 0;
  const within = spans.slice(0, MOST_SPANS).map(span).join(", ");
  const more = spans.length > MOST_SPANS ? ` +${spans.length - MOST_SPANS} more` : "";
  return [
    band,
    pieces.length > MOST_SPANS ? `${span(result)} in ${pieces.length} pieces` : pieces.map(span).join(", "),
    verdictText(result),
    swrOf(best, limits),
    placeOf(result),
    swrOf(worst, limits),
    areSpots ? "–" : spans.length === 0 ? "none" : within + more + edgeDoubt(result),
    ...reachesOf(limits).map(({ by }) => (areSpots ? "–" : percent(usable[by]))),
    areSpots ? `${need(result.need)} there` : needOf(result),
  ];
}

/** Where the best point is, and how sure that is; "edge" where it is no dip. */
function placeOf(result: BandResult): string {
  const { best, uncertainty } = result;
  if (best === null) return "–";
  const place = megahertz(best.frequencyHz);
  return isDip(result) ? place + doubt([uncertainty?.bestHz ?? null]) : `${place} edge`;
}

/** How sure those edges of the span around the best point are that lie within the band. */
function edgeDoubt({ uncertainty, pieces, bandwidth }: BandResult): string {
  if (uncertainty === null || bandwidth === null) return "";
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

function nothingJudged({ bands, sweep }: CheckResult): string {
  if (bands.length === 0) return "There is no band left to judge.";
  return `None of these bands was swept: the sweep covers ${span({ lowHz: sweep.startHz, highHz: sweep.stopHz })} MHz. Is its unit of frequency right?`;
}

const SEGMENT_COLUMNS: readonly TableColumn[] = [
  { title: "Band" },
  { title: "Segment MHz" },
  { title: "For", spare: 1 },
  { title: "You may send", spare: 2 },
  { title: "Verdict" },
  { title: "Worst SWR", align: "right" },
  { title: "within limit", align: "right" },
];

/** A row for each segment of the bands that were swept. */
function segmentRows({ bands }: CheckResult): readonly (readonly string[])[] {
  return bands
    .filter(({ best }) => best !== null)
    .flatMap(({ band, segments }) =>
      segments.map((segment) => [
        band,
        span(segment),
        use(segment.use),
        emissions(segment.emissions),
        VERDICTS[segment.verdict],
        swr(segment.worstSwr),
        percent(segment.withinLimitFraction),
      ]),
    );
}

/** Ends of an interval that are nearer together than this share of the SWR are not worth their place. */
const LEAST_INTERVAL = 0.02;

/** An SWR with both ends of what it may be, where they are apart or a limit lies between them. */
function swrOf(point: Point | null, limits: Limits): string {
  if (point === null) return "–";
  const value = pointSwr(point);
  if (point.isAtLeast || point.swrLow === undefined || point.swrHigh === undefined) return value;
  const { swrLow: low, swrHigh: high } = point;
  const isOpen = Object.values(limits).some((limit) => low <= limit && limit <= high);
  if (high - low < LEAST_INTERVAL * point.swr && !isOpen) return value;
  return `${value} (${swr(low)}-${swr(high)})`;
}

/** A verdict, with the share that was swept where that is not all of the band. */
export function verdictText({ verdict, sweptFraction }: BandResult): string {
  if (sweptFraction === 0) return "single reading";
  return sweptFraction < 1 ? `${VERDICTS[verdict]} (${percent(sweptFraction)} swept)` : VERDICTS[verdict];
}
