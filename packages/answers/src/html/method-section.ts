import type { Limits, PlanInfo } from "@feedpoint/core";
import { PALETTE_SOURCE } from "../svg/palette.js";
import { html, type Markup } from "../text/markup.js";
import { limitsLine, planLine } from "../text/units.js";
import { VERSION } from "../version.js";

/** How the report was made, and what it rests on. */
export function methodSection(plan: PlanInfo, limits: Limits): Markup {
  const edition = [plan.edition, plan.source.title, plan.source.section ?? ""].filter((part) => part !== "").join("; ");
  return html`<section><h2>How this was made</h2><ul>
<li>By feedpoint ${VERSION} from the files named above, on this computer; nothing was sent anywhere.</li>
<li>${planLine(plan)}: ${edition}.</li>
<li>${limitsLine(limits)}.</li>
<li>Between samples the reflection is interpolated, not the SWR, and noise is reduced; gaps in a sweep stay gaps.</li>
<li>SWR axes are evenly spaced in the size of the reflection, ρ = (SWR − 1) / (SWR + 1), so that infinity has its place.</li>
<li>Colours of lines and signs: ${PALETTE_SOURCE}.</li>
</ul></section>`;
}
