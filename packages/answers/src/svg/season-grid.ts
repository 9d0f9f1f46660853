import { type BandGrade, dateOf, type SweepGrade } from "@feedpoint/core";
import { html, type Markup } from "../text/markup.js";
import { sweepNames } from "../text/sweep-names.js";
import { percent, swr } from "../text/units.js";

/** Many deployments at a glance: a row each, a column a band, the more of it within the limit the fuller its cell. */

const ROW = 26;
const COLUMN = 66;
const HEAD = 34;
const GAP = 4;
/** Width of a letter of the chart's font, about. */
const LETTER = 7.2;
const MOST_LETTERS = 52;
const FOOT = 62;
/** So that the words below fit. */
const LEAST_WIDTH = 480;

/** @returns null where no band was swept by any of them */
export function seasonGrid(sweeps: readonly SweepGrade[], limitSwr: number): Markup | null {
  const bands = bandsOf(sweeps);
  if (bands.length === 0) return null;
  const nameOf = sweepNames(sweeps);
  const names = sweeps.map(({ sweep }) => shortened(nameOf(sweep)));
  const left = Math.ceil(LETTER * Math.max(...names.map(({ length }) => length))) + 14;
  const width = Math.max(LEAST_WIDTH, left + COLUMN * bands.length + 10);
  const height = HEAD + ROW * sweeps.length + FOOT;
  const rows = sweeps.map((graded, i) => {
    const y = HEAD + ROW * i;
    return html`<text x="6" y="${y + 17}">${names[i] ?? ""}</text>${bands.map((band, k) => cell(graded, band, left + COLUMN * k, y))}`;
  });
  const heads = bands.map(
    (band, k) =>
      html`<text class="strong" x="${left + COLUMN * k + COLUMN / 2}" y="${HEAD - 10}" text-anchor="middle">${band}</text>`,
  );
  const foot = HEAD + ROW * sweeps.length + 18;
  const name = `${sweeps.length} deployments by band: ${sweeps.map((graded) => inWords(nameOf(graded.sweep), graded, bands)).join("; ")}`;
  return html`<svg class="chart season" xmlns="http://www.w3.org/2000/svg" style="max-width:${width}px" viewBox="0 0 ${width} ${height}" role="img" aria-label="${name}">${heads}${rows}<text class="t" x="6" y="${foot}">Filled: the share of the band within ${limitSwr}:1. Number: the best SWR.</text><text class="t" x="6" y="${foot + 18}">Dashed: readings, or not all of it swept. –: not swept.</text><text class="t" x="6" y="${foot + 36}">A low SWR may be no more than loss, which this does not show.</text></svg>`;
}

const bandsOf = (sweeps: readonly SweepGrade[]): readonly string[] => {
  const swept = new Set(
    sweeps.flatMap(({ bands }) => bands.filter(({ bestSwr }) => bestSwr !== null).map(({ band }) => band)),
  );
  return (sweeps[0]?.bands ?? []).map(({ band }) => band).filter((band) => swept.has(band));
};

const shortened = (name: string): string => (name.length > MOST_LETTERS ? `${name.slice(0, MOST_LETTERS - 1)}…` : name);

function cell({ bands }: SweepGrade, name: string, x: number, y: number): Markup {
  const entry = bands.find(({ band }) => band === name);
  const middle = x + COLUMN / 2;
  if (entry === undefined || entry.bestSwr === null)
    return html`<text class="t" x="${middle}" y="${y + 17}" text-anchor="middle">–</text>`;
  const [wide, high] = [COLUMN - GAP, ROW - GAP];
  const filled = Math.round(wide * entry.withinLimitFraction * 10) / 10;
  return html`<rect class="share" x="${x}" y="${y}" width="${filled}" height="${high}"/><rect class="frame${isSure(entry) ? "" : " dashed"}" x="${x}" y="${y}" width="${wide}" height="${high}"/><text class="halo" x="${middle - GAP / 2}" y="${y + 16}" text-anchor="middle">${entry.isBestAtLeast ? "≥" : ""}${swr(entry.bestSwr)}</text>`;
}

const isSure = ({ grade, restsOn }: BandGrade): boolean => grade !== null && restsOn === "curve";

function inWords(name: string, graded: SweepGrade, bands: readonly string[]): string {
  const date = dateOf(graded);
  const cells = bands.flatMap((band) => {
    const entry = graded.bands.find((each) => each.band === band);
    return entry === undefined || entry.bestSwr === null
      ? []
      : [`${band} ${percent(entry.withinLimitFraction)}, best ${swr(entry.bestSwr)}`];
  });
  return `${name}${date === null || name.includes(date) ? "" : ` of ${date}`}: ${cells.join(", ") || "no band swept"}`;
}
