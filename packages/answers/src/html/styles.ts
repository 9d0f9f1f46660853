import { chartStyles } from "../svg/chart-styles.js";
import { type ColourName, DARK, LIGHT, type Palette } from "../svg/palette.js";

/** The style sheet of a report. */
export function pageStyles(): string {
  return [
    `:root{${variables(LIGHT)}}`,
    `@media screen and (prefers-color-scheme:dark){:root{${variables(DARK)}}}`,
    chartStyles((name) => `var(--${name})`),
    LAYOUT,
    PRINT,
  ].join("\n");
}

const variables = (palette: Palette): string =>
  (Object.keys(palette) as ColourName[]).map((name) => `--${name}:${palette[name]}`).join(";");

const LAYOUT = `
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:16px/1.5 system-ui,sans-serif}
main{max-width:1140px;margin:0 auto;padding:24px 20px 48px}
article+article{border-top:1px solid var(--grid);margin-top:40px;padding-top:24px}
h1{font-size:26px;line-height:1.25;margin:4px 0 12px;max-width:30em;text-wrap:balance}
h2{font-size:18px;margin:32px 0 8px}
h3{font-size:16px;margin:0 0 4px}
p,ul,dl{margin:8px 0;max-width:72ch}
ul{padding-left:20px}
li{margin:4px 0}
a{color:inherit}
.label{color:var(--muted);margin:0;overflow-wrap:anywhere}
.contents,.comments,.findings{overflow-wrap:anywhere}
figure{margin:0;min-width:0;break-inside:avoid}
figure h2{margin-top:24px}
figcaption{color:var(--muted);font-size:14px}
.chart{display:block;width:100%;height:auto;touch-action:pan-y}
.chart:focus-visible,.scroll:focus-visible,summary:focus-visible,a:focus-visible{outline:2px solid var(--curve);outline-offset:2px}
.narrow{display:none}
.panels{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(300px,100%),1fr));gap:28px 24px}
.tiles{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(420px,100%),1fr));gap:0 32px}
.panel dl,.facts{margin:0;font-size:14px}
.panel dl div,.facts div{display:flex;gap:8px;padding:2px 0}
.panel dt,.facts dt{flex:none;width:5.5em;color:var(--muted)}
.facts dt{width:7em}
.panel dd,.facts dd{margin:0;overflow-wrap:anywhere;min-width:0}
.verdict{font-weight:400;color:var(--muted)}
.readout{min-height:1.5em;margin:0;font-size:14px;font-variant-numeric:tabular-nums}
.readout.two{min-height:3em}
.tells .wide .readout:empty::before,.tells .narrow .readout:empty::before{content:"Point at a curve or touch it, or tab to it and use the arrow keys, to read its values.";color:var(--muted)}
.scroll{overflow-x:auto;position:relative;background:linear-gradient(to right,var(--paper) 40%,transparent) left/60px 100% no-repeat local,linear-gradient(to left,var(--paper) 40%,transparent) right/60px 100% no-repeat local,linear-gradient(to right,var(--grid),transparent) left/14px 100% no-repeat,linear-gradient(to left,var(--grid),transparent) right/14px 100% no-repeat}
.scroll .chart{min-width:720px}
table{border-collapse:collapse;font-size:14px;font-variant-numeric:tabular-nums;width:100%}
caption{position:absolute;clip-path:inset(50%);width:1px;height:1px;overflow:hidden;white-space:nowrap}
th,td{text-align:left;padding:6px 14px 6px 0;border-bottom:1px solid var(--grid);white-space:nowrap;vertical-align:top}
thead th{color:var(--muted);font-weight:400;vertical-align:bottom}
tbody th{font-weight:600}
.scroll tr>:first-child{position:sticky;left:0;background:var(--paper)}
.n,.n th,.n td{text-align:right}
.values table{width:auto}
.values td{padding:1px 20px 1px 0}
summary{cursor:pointer;padding:4px 0}
.cautions{border:1px solid var(--frame);border-radius:6px;padding:0 20px 8px;break-inside:avoid}
.cautions h2{margin-top:12px}
@media (max-width:600px){
main{padding:16px 14px 32px}
h1{font-size:21px}
.wide{display:none}
.narrow{display:block}
.long{white-space:normal;overflow-wrap:anywhere;min-width:11em}
th,td{padding-right:10px}
}
`.trim();

const PRINT = `
@page{margin:14mm}
@media print{
body{font-size:10pt}
main{max-width:none;padding:0}
article+article{break-before:page;border:0;margin:0}
article+article:last-child{break-before:auto;margin-top:16pt}
h1{font-size:15pt}
h2{font-size:12pt;margin-top:14pt}
h3{font-size:10pt}
h2,h3,h2+p{break-after:avoid}
.wide{display:block}
.narrow,.readout,.cursor,.spot,details:not([open]),.all:not(:has([open])){display:none}
.tiles{grid-template-columns:1fr 1fr}
.panels{grid-template-columns:repeat(3,1fr);gap:14pt 10pt}
figcaption{font-size:8pt}
.panel dl,.facts,table{font-size:7.5pt}
.panel dt{width:5em}
th,td{padding:2pt 6pt 2pt 0}
.scroll{overflow:visible;background:none}
.scroll .chart{min-width:0}
tr{break-inside:avoid}
}
`.trim();
