import { type BandSummary, type Limits, reflectionAt, reflectionMagnitudeFromSwr } from "@feedpoint/core";
import { symbol, symbolsFill } from "d3-shape";
import { html, type Markup } from "../text/markup.js";
import { legend, tenths } from "./frequency-chart.js";
import { linePath } from "./line-path.js";
import { BAND_COLOURS } from "./palette.js";
import { plotRuns, type Run } from "./plot-points.js";
import type { Series } from "./series.js";
import { smithGrid, smithLabels, smithPlace, type UnitCircle } from "./smith-grid.js";
import { rangeOf } from "./swr-chart.js";

const WIDTH = 480;
const RADIUS = 190;
const LEGEND_COLUMNS = 5;
const LEGEND_ROW = 22;
const POINTS_OF_SWEEP = 1500;
const POINTS_OF_BAND = 300;

/** Γ over each band that was swept, on top of the whole sweep; the sign of a band stands at its low end. */
export function smithChart(series: readonly Series[], limits: Limits): Markup {
  const referenceOhms = series[0]?.sweep.referenceOhms ?? 50;
  const top = series.length > 1 ? 22 : 0;
  const circle: UnitCircle = { centreX: WIDTH / 2, centreY: top + RADIUS + 30, radius: RADIUS };
  const bands = (series[0]?.bands ?? []).filter(({ band }) =>
    series.some((one) => one.bands.some((other) => other.band === band && other.best !== null)),
  );
  const legendTop = circle.centreY + RADIUS + 48;
  const height = legendTop + LEGEND_ROW * Math.ceil(bands.length / LEGEND_COLUMNS) - 8;
  const ids = series.map(({ valuesId }) => valuesId);
  const attributes = ids.every((id) => id !== undefined)
    ? html` data-values="${ids.join(" ")}" data-smith="1" data-ohms="${referenceOhms}" data-x="${circle.centreX}" data-y="${circle.centreY}" data-radius="${RADIUS}"`
    : null;
  return html`<svg class="chart" viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label="Smith chart: the path of the reflection coefficient over ${bands.map(({ band }) => band).join(", ")}" xmlns="http://www.w3.org/2000/svg"${attributes}>${[
    smithGrid(circle, referenceOhms),
    html`<circle class="limit" cx="${circle.centreX}" cy="${circle.centreY}" r="${tenths(RADIUS * reflectionMagnitudeFromSwr(limits.swr))}"/>`,
    series.map(
      (one) =>
        html`<path class="line faint" d="${pathOf(plotRuns(one.trace, rangeOf([one]), POINTS_OF_SWEEP), circle)}"/>`,
    ),
    series.map((one) =>
      one.bands.map((summary) =>
        bandPath(
          one,
          summary,
          bands.findIndex(({ band }) => band === summary.band),
          circle,
        ),
      ),
    ),
    smithLabels(circle, referenceOhms),
    bands.map(({ band }, i) => legendEntry(band, i, legendTop)),
    legend(series, 10),
  ]}</svg>`;
}

function bandPath({ trace, curve, role }: Series, { pieces, best }: BandSummary, index: number, circle: UnitCircle) {
  if (best === null) return null;
  const runs = pieces.flatMap((piece) => plotRuns(trace, piece, POINTS_OF_BAND));
  const start = reflectionAt(curve, runs[0]?.[0]?.frequencyHz ?? best.frequencyHz);
  return html`<path class="line b${index % BAND_COLOURS}${role === "before" ? " dashed" : ""}" d="${pathOf(runs, circle)}"/>${
    start === null ? null : sign(index, smithPlace(circle, start), role === "before")
  }`;
}

const pathOf = (runs: readonly Run[], circle: UnitCircle): string =>
  linePath(
    runs.map((run) => run.flatMap(({ reflection }) => (reflection === null ? [] : [smithPlace(circle, reflection)]))),
  );

/** The sign of a band: shape and colour together are its own. */
function sign(index: number, { x, y }: { x: number; y: number }, isHollow: boolean): Markup {
  const shape = symbolsFill[index % symbolsFill.length] ?? symbolsFill[0];
  const path = shape === undefined ? "" : (symbol(shape, 70).digits(1)() ?? "");
  return html`<path class="sign s${index % BAND_COLOURS}${isHollow ? " hollow" : ""}" transform="translate(${tenths(x)},${tenths(y)})" d="${path}"/>`;
}

function legendEntry(band: string, index: number, top: number): Markup {
  const x = 40 + (index % LEGEND_COLUMNS) * ((WIDTH - 50) / LEGEND_COLUMNS);
  const y = top + LEGEND_ROW * Math.floor(index / LEGEND_COLUMNS);
  return html`${sign(index, { x, y }, false)}<text x="${tenths(x + 13)}" y="${y + 4}">${band}</text>`;
}
