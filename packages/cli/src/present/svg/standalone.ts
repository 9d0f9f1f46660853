import { html, type Markup, trusted } from "../markup.js";
import { chartStyles } from "./chart-styles.js";
import { LIGHT } from "./palette.js";

/** Room above the chart for the name of what it shows. */
const HEAD = 28;

/** A chart as an SVG file of its own, on paper, with its colours in it and a title above. */
export function standaloneSvg(chart: Markup, title: string): string {
  const [frame = "", width = "480", height = "480"] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(chart.markup) ?? [];
  const wholeHeight = Number(height) + HEAD;
  const dress = html`<style>${trusted(chartStyles((name) => LIGHT[name]))}</style><rect y="${-HEAD}" width="${width}" height="${wholeHeight}" fill="${LIGHT.paper}"/><text class="strong" x="10" y="${18 - HEAD}">${title}</text>`;
  const sized = `width="${width}" height="${wholeHeight}" viewBox="0 ${-HEAD} ${width} ${wholeHeight}"`;
  const [tag = "", ...content] = chart.markup.replace(frame, () => sized).split(/(?<=^<svg [^>]*>)/);
  return `${tag}${dress.markup}${content.join("")}\n`;
}
