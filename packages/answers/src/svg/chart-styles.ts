import type { ColourName } from "./palette.js";

/** What charts look like. A page gives its colours as variables; a picture on its own gives them as they are. */
export function chartStyles(colour: (name: ColourName) => string): string {
  const bands = ([0, 1, 2, 3, 4, 5] as const).map(
    (i) => `.b${i}{stroke:${colour(`band-${i}`)}}.s${i}{stroke:${colour(`band-${i}`)};fill:${colour(`band-${i}`)}}`,
  );
  return `
.chart{font:13px system-ui,sans-serif;fill:${colour("ink")}}
.chart .t{fill:${colour("muted")}}
.chart .strong{fill:${colour("ink")};font-weight:600}
.chart .grid{stroke:${colour("grid")};fill:none}
.chart .frame{stroke:${colour("frame")};fill:none}
.chart .band{fill:${colour("band")}}
.chart .limit{stroke:${colour("limit")};stroke-dasharray:7 4;fill:none}
.chart .line{fill:none;stroke-width:2.2;stroke-linejoin:round;stroke-linecap:round}
.chart .reading{stroke-width:2;fill:${colour("paper")};stroke-dasharray:none}
.chart .only,.chart .after{stroke:${colour("curve")}}
.chart .before{stroke:${colour("before")};stroke-dasharray:2 5}
.chart .rule{stroke:${colour("frame")};fill:none;opacity:.4}
.chart .faint{stroke:${colour("curve")};stroke-width:1;opacity:.45}
.chart .halo{paint-order:stroke;stroke:${colour("paper")};stroke-width:3}
.chart .dashed{stroke-dasharray:2 5}
.chart .dip{stroke-width:2;fill:${colour("paper")};stroke-dasharray:none}
.chart .edge{stroke:${colour("within")};stroke-width:1.5}
.chart .within{stroke:${colour("within")};stroke-width:6;fill:none}
.chart .within.before{stroke:${colour("before")};stroke-width:3;stroke-dasharray:none}
.chart .share{fill:${colour("within")};opacity:.38}
.chart .sign{stroke-width:1.5}
.chart .hollow{fill:${colour("paper")}}
.chart .cursor{stroke:${colour("ink")};stroke-width:1;fill:none;pointer-events:none}
.chart .spot{fill:${colour("ink")};stroke:${colour("paper")};stroke-width:1.5;pointer-events:none}
${bands.join("\n")}
`.trim();
}
