import { html, type Markup } from "@feedpoint/answers/text/markup";
import { stationForm } from "../form/station-form.js";
import { WORDS } from "../words.js";
import type { State } from "./state.js";

const JUDGED = WORDS.judgedBy;
/** The plan by which is judged where none was chosen. */
const USUAL_PLAN = "itu-common";

/** By what is judged: plan, class, what is wanted. */
export function judgedBy({ choices, station, wanted, isKept }: State): Markup {
  const planId = station.licence?.plan ?? USUAL_PLAN;
  const plan = choices.plans.find(({ id }) => id === planId);
  const help = station.licence?.plan === undefined ? html`<small id="plan-help">${JUDGED.planHelp}</small>` : null;
  const option = (value: string, words: string, chosen: string) =>
    html`<option value="${value}"${value === chosen ? html` selected` : null}>${words}</option>`;
  return html`<h2>${JUDGED.title}</h2>
<p class="field"><label for="plan">${JUDGED.plan}</label><select id="plan" data-change="plan"${help === null ? null : html` aria-describedby="plan-help"`}>${choices.plans.map(({ id, title }) => option(id, title, planId))}</select>${help}</p>
${
  plan === undefined || plan.classes.length === 0
    ? null
    : html`<p class="field"><label for="class">${JUDGED.class}</label><select id="class" data-change="class">${option("", JUDGED.anyClass, station.licence?.class ?? "")}${plan.classes.map((name) => option(name, name, station.licence?.class ?? ""))}</select></p>`
}
<p class="field"><label for="wanted">${JUDGED.wanted}</label><input id="wanted" data-change="wanted" value="${wanted}" autocomplete="off" autocapitalize="off" spellcheck="false" enterkeyhint="go" list="activities" aria-describedby="wanted-help"><small id="wanted-help">${JUDGED.wantedHelp}</small><datalist id="activities">${choices.activities.map((name) => html`<option value="${name}">`)}</datalist></p>
<p><label class="tick"><input type="checkbox" id="keep" data-change="keep"${isKept ? html` checked` : null}> ${JUDGED.keep}</label></p>`;
}

/** The station in a form of its own, folded away until it is wanted. */
export function stationCard({ station }: State): Markup {
  return html`<details class="station"><summary>${JUDGED.station}</summary><p>${JUDGED.stationHelp}</p><form data-submit="station">${stationForm(station as Readonly<Record<string, unknown>>)}<p class="buttons"><button class="main">${JUDGED.apply}</button><button type="button" data-do="save-station">${JUDGED.save}</button><label class="button">${JUDGED.load}<input type="file" accept=".json,application/json" class="unseen" data-change="load-station"></label><button type="button" data-do="forget-station">${JUDGED.forget}</button></p></form></details>`;
}
