import { html, type Markup } from "@feedpoint/answers/text/markup";
import type { Look } from "../protocol.js";
import { WORDS } from "../words.js";
import type { State } from "./state.js";

const ANSWER = WORDS.answer;

/** What goes on, and what came of the last thing that was asked. */
export function status({ busy, told }: State): Markup {
  if (busy !== "") return html`<p>${busy} <button type="button" data-do="stop">${ANSWER.cancel}</button></p>`;
  return told === "" ? html`` : html`<p>${told}</p>`;
}

const button = (action: string, words: string): Markup =>
  html`<button type="button" data-do="${action}" id="do-${action}">${words}</button>`;

/** What else can be asked of what is looked at. */
export function terms(state: State): Markup {
  const { shown: look, answer } = state;
  if (look === null || answer === "") return html``;
  return html`<div class="buttons">${[
    look.what === "check" ? button("advise", ANSWER.advise) : null,
    look.what === "advise" ? button("back-to-check", ANSWER.check) : null,
    ofKind(look, state),
  ]}<details class="saving"><summary class="button">${ANSWER.keepOf}</summary><p class="buttons">${saving(look)}</p></details></div>`;
}

const saving = (look: Look): readonly Markup[] => [
  button("save-report", ANSWER.report),
  button("save-csv", ANSWER.csv),
  ...(look.what === "check"
    ? [button("save-cleaned-csv", ANSWER.cleanedCsv), button("save-cleaned-touchstone", ANSWER.cleanedTouchstone)]
    : []),
  button("print", ANSWER.print),
];

function ofKind(look: Look, state: State): Markup | null {
  const { listing } = state;
  if (look.what === "diff")
    return html`${button("swap", ANSWER.swap)}<label class="tick"><input type="checkbox" id="same-plane" data-change="same-plane"${look.isSamePlane ? html` checked` : null}> ${ANSWER.samePlane}</label>`;
  if (look.what !== "grade" || listing === null) return null;
  const choice = (id: string, words: string, none: string, values: readonly string[], chosen: string) =>
    html`<p class="field"><label for="${id}">${words}</label><select id="${id}" data-change="${id}">${["", ...values].map((value) => html`<option value="${value}"${value === chosen ? html` selected` : null}>${value === "" ? none : value}</option>`)}</select></p>`;
  return html`${choice("best", ANSWER.best, ANSWER.noBand, listing.bands, state.wanted)}${
    listing.logColumns === null
      ? null
      : choice("group-by", ANSWER.groupBy, ANSWER.noColumn, listing.logColumns, look.groupBy)
  }<label class="tick"><input type="checkbox" id="over-time" data-change="over-time"${look.isOverTime ? html` checked` : null}> ${ANSWER.overTime}</label>`;
}
