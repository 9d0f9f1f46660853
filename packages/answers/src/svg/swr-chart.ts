import { type BandSummary, type Limits, type Piece, reflectionMagnitudeFromSwr } from "@feedpoint/core";
import { html, type Markup } from "../text/markup.js";
import { greatestShownSwr, limitLines } from "../text/swr-ticks.js";
import { megahertz, swr } from "../text/units.js";
import { swrAxis } from "./axes.js";
import { type BandShade, type Frame, frequencyChart, type Limit, tenths } from "./frequency-chart.js";
import type { Place } from "./line-path.js";
import type { Series } from "./series.js";

/** The whole of some sweeps, a wide picture and one for a narrow screen. */
export function sweepSwrChart(series: readonly Series[], limits: Limits, size: "wide" | "narrow"): Markup {
  const isWide = size === "wide";
  const top = series.length > 1 ? 44 : 28;
  const frame: Frame = isWide
    ? { width: 1000, height: 390, left: 44, right: 862, top, bottom: 364 }
    : { width: 400, height: 296, left: 40, right: 392, top, bottom: 270 };
  return frequencyChart({
    name: `SWR over the whole sweep${series.length > 1 ? ", before and after" : ""}`,
    frame,
    range: rangeOf(series),
    series,
    value: ({ reflectionMagnitude }) => Math.min(1, reflectionMagnitude),
    valueAxis: swrAxis(Number.POSITIVE_INFINITY, [frame.bottom, frame.top]),
    valueTitle: "SWR",
    limits: limitsUpTo(limits, Number.POSITIVE_INFINITY, isWide),
    bands: shadesOf(series),
    withBandNames: true,
    marks: (place) => html`${series.map((one) => one.bands.map((band) => dip(one, band, place)))}`,
  });
}

/** Share of a band that is shown on either side of it, so that a dip just beside it is seen. */
const MARGIN = 0.08;

/** One band, with its dip and the span within the limit marked; the end of the axis is the same for all bands. */
export function bandSwrChart(
  series: readonly Series[],
  band: string,
  limits: Limits,
  size: "panel" | "picture",
): Markup {
  const own = series.map((one) => ({ one, summary: one.bands.find((other) => other.band === band) }));
  const known = own.flatMap(({ one, summary }) => (summary === undefined ? [] : [{ one, summary }]));
  const [first] = known;
  const { lowHz, highHz } = first?.summary ?? { lowHz: 0, highHz: 1 };
  const margin = MARGIN * (highHz - lowHz);
  const top = series.length > 1 ? 44 : 28;
  const frame: Frame =
    size === "panel"
      ? { width: 340, height: 222, left: 38, right: 332, top, bottom: 196 }
      : { width: 800, height: 430, left: 44, right: 662, top, bottom: 404 };
  const end = greatestShownSwr(limits, worstSwrs(series));
  const valueAxis = swrAxis(end, [frame.bottom, frame.top]);
  const endMagnitude = reflectionMagnitudeFromSwr(end);
  return frequencyChart({
    name: `SWR on ${band}: ${known.map(({ one, summary }) => `${one.role === "only" ? "" : `${one.role} `}${inWords(summary)}`).join("; ")}`,
    frame,
    range: { lowHz: lowHz - margin, highHz: highHz + margin },
    series,
    value: ({ reflectionMagnitude }) => Math.min(endMagnitude, reflectionMagnitude),
    valueAxis,
    valueTitle: "SWR",
    limits: limitsUpTo(limits, end, size === "picture"),
    bands: (first?.summary.pieces ?? []).map((piece) => ({ ...piece, band })),
    withBandNames: size === "picture",
    marks: (place) =>
      html`${known.map(({ one, summary }, i) => [
        withinBar(one, summary, place, frame.bottom - 3 - 7 * (known.length - 1 - i)),
        edges(summary, place, frame, { lowHz: lowHz - margin, highHz: highHz + margin }),
        dip(one, summary, place),
      ])}`,
  });
}

function inWords({ best, worst, withinLimit }: BandSummary): string {
  if (best === null || worst === null) return "not swept";
  return `best ${swr(best.swr)} at ${megahertz(best.frequencyHz)} MHz, worst ${swr(worst.swr)}, ${Math.round(withinLimit.widthHz / 1000)} kHz within ${withinLimit.limitSwr}:1`;
}

type PlaceOf = (frequencyHz: number, value: number) => Place;

/** The best point of a band: a ring, for the sweep before a change a square. */
function dip({ role }: Series, { best }: BandSummary, place: PlaceOf): Markup | null {
  if (best === null) return null;
  const { x, y } = place(best.frequencyHz, Math.min(1, best.reflectionMagnitude));
  return role === "before"
    ? html`<rect class="dip ${role}" x="${tenths(x - 4)}" y="${tenths(y - 4)}" width="8" height="8"/>`
    : html`<circle class="dip ${role}" cx="${tenths(x)}" cy="${tenths(y)}" r="4.5"/>`;
}

/** The parts of the band within the limit, along the bottom. */
function withinBar({ role }: Series, { withinLimit }: BandSummary, place: PlaceOf, y: number): readonly Markup[] {
  return withinLimit.spans.map(
    ({ lowHz, highHz }) =>
      html`<path class="within ${role}" d="M${tenths(place(lowHz, 0).x)},${y}H${tenths(place(highHz, 0).x)}"/>`,
  );
}

/** Where the curve around the best point meets the limit. */
function edges(
  { bandwidth, withinLimit }: BandSummary,
  place: PlaceOf,
  { bottom }: Frame,
  range: Piece,
): readonly Markup[] {
  if (bandwidth === null) return [];
  const found = [bandwidth.openLow ? null : bandwidth.lowHz, bandwidth.openHigh ? null : bandwidth.highHz];
  return found.flatMap((frequencyHz) => {
    if (frequencyHz === null || frequencyHz < range.lowHz || frequencyHz > range.highHz) return [];
    const { x, y } = place(frequencyHz, reflectionMagnitudeFromSwr(withinLimit.limitSwr));
    return [html`<path class="edge" d="M${tenths(x)},${tenths(y)}V${bottom}"/>`];
  });
}

const worstSwrs = (series: readonly Series[]): readonly number[] =>
  series.flatMap(({ bands }) => bands.flatMap(({ worst }) => (worst === null ? [] : [worst.swr])));

/** The limits that lie on an axis, as lines across it. */
const limitsUpTo = (limits: Limits, greatestSwr: number, withNotes: boolean): readonly Limit[] =>
  limitLines(limits, greatestSwr).map((line) => ({
    value: reflectionMagnitudeFromSwr(line.swr),
    label: String(line.swr),
    note: withNotes ? line.note : "",
  }));

/** From the least to the greatest frequency of some sweeps. */
export function rangeOf(series: readonly Series[]): Piece {
  const ends = series.flatMap(({ sweep }) => [sweep.frequencyHz.at(0) ?? 0, sweep.frequencyHz.at(-1) ?? 0]);
  const [lowHz, highHz] = [Math.min(...ends), Math.max(...ends)];
  // A single reading has no range; a little of what lies about it is shown.
  return lowHz < highHz ? { lowHz, highHz } : { lowHz: 0.99 * lowHz, highHz: 1.01 * highHz };
}

/** The pieces of all bands that were judged. */
export function shadesOf(series: readonly Series[]): readonly BandShade[] {
  return (series[0]?.bands ?? [])
    .flatMap(({ band, pieces }) => pieces.map((piece) => ({ ...piece, band })))
    .sort((first, second) => first.lowHz - second.lowHz);
}
