import { html, type Markup, trusted } from "../text/markup.js";
import { chartStyles } from "./chart-styles.js";
import { LIGHT } from "./palette.js";

/** Room above the chart for the name of what it shows. */
const HEAD = 28;

const LINE = 18;

/** A chart as an SVG file of its own, on paper, with its colours in it, a title above, and below that a note if there is one. */
export function standaloneSvg(chart: Markup, title: string, note: string | null): string {
  const head = HEAD + (note === null ? 0 : LINE);
  const [frame = "", width = "480", height = "480"] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(chart.markup) ?? [];
  const wholeHeight = Number(height) + head;
  const dress = html`<style>${trusted(chartStyles((name) => LIGHT[name]))}</style><rect y="${-head}" width="${width}" height="${wholeHeight}" fill="${LIGHT.paper}"/><text class="strong" x="10" y="${LINE - head}">${title}</text>${note === null ? null : html`<text class="t" x="10" y="${2 * LINE - head}">${note}</text>`}`;
  const sized = `width="${width}" height="${wholeHeight}" viewBox="0 ${-head} ${width} ${wholeHeight}"`;
  const [tag = "", ...content] = chart.markup.replace(frame, () => sized).split(/(?<=^<svg [^>]*>)/);
  return `${tag}${dress.markup}${content.join("")}\n`;
}
