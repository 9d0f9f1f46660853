import { html, type Markup, trusted } from "../markup.js";
import { chartStyles } from "./chart-styles.js";
import { LIGHT } from "./palette.js";

/** A chart as an SVG file of its own, on paper, with its colours in it. */
export function standaloneSvg(chart: Markup): string {
  const [, width = "480", height = "480"] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(chart.markup) ?? [];
  const dress = html`<style>${trusted(chartStyles((name) => LIGHT[name]))}</style><rect width="100%" height="100%" fill="${LIGHT.paper}"/>`;
  const inner = chart.markup.slice("<svg ".length);
  const endOfTag = inner.indexOf(">");
  return `<svg width="${width}" height="${height}" ${inner.slice(0, endOfTag)}>${dress.markup}${inner.slice(endOfTag + 1)}\n`;
}
