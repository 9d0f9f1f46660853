import { html, type Markup, trusted } from "@feedpoint/answers/text/markup";
import type { Listed, Question, ReadAs, Together, Unread } from "../protocol.js";
import { WORDS } from "../words.js";
import { questionForm } from "./question-form.js";
import type { State } from "./state.js";

const LIST = WORDS.list;

/** What to begin with: files, typed readings, a sample. */
export function beginning({ listing, sources }: State): Markup {
  const isEmpty = sources.length === 0 && listing === null;
  return html`${isEmpty ? html`<h1>${WORDS.question}</h1><p>${WORDS.welcome}</p>` : null}<p class="buttons">
<label class="button main">${WORDS.open}<input type="file" multiple class="unseen" data-change="open-files"></label>
<label class="button folders">${WORDS.openFolder}<input type="file" multiple webkitdirectory class="unseen" data-change="open-files"></label>
<button type="button" data-do="type">${WORDS.type}</button>
${isEmpty ? html`<button type="button" data-do="sample">${WORDS.sample}</button>` : null}</p>${
    isEmpty ? html`<p class="note">${WORDS.dropHere} ${WORDS.sampleNote}</p>` : null
  }`;
}

/** Lines as an attribute holds them. */
const lines = (all: readonly string[]): Markup =>
  html`${all.flatMap((line, i) => (i === 0 ? [line] : [trusted("&#10;"), line]))}`;

/** Bands that a tap adds a line for. */
const BANDS = ["160m", "80m", "60m", "40m", "30m", "20m", "17m", "15m", "12m", "10m", "6m"];

export function typing({ isTyping }: State, today: string): Markup {
  const { typed } = WORDS;
  if (!isTyping) return html``;
  return html`<form class="card" data-submit="typed"><h2>${typed.title}</h2><p id="typed-help">${typed.help}</p>
<p class="chips">${BANDS.map((band) => html`<button type="button" data-do="add-band" data-band="${band}" aria-label="${typed.insert(band)}">${band}</button>`)}</p>
<p class="field"><textarea id="typed-text" name="text" rows="8" autocapitalize="off" autocomplete="off" spellcheck="false" aria-label="${typed.title}" aria-describedby="typed-help" placeholder="${lines(typed.placeholder)}"></textarea></p>
<div class="pair"><p class="field"><label for="typed-name">${typed.name}</label><input id="typed-name" name="name" autocomplete="off" placeholder="${typed.namePlaceholder}"></p>
<p class="field"><label for="typed-date">${typed.date}</label><input id="typed-date" name="date" type="date" value="${today}"></p></div>
<p class="buttons"><button class="main">${typed.read}</button><button type="button" data-do="close-typing">${typed.close}</button></p></form>`;
}

/** What was read and what was not, with what can be done with it. */
export function list(state: State): Markup {
  const { listing, sources, refused } = state;
  if (listing === null && refused.length === 0) return html``;
  const { deployments = [], unread = [], logColumns = null, reports = 0 } = listing ?? {};
  const count = deployments.length;
  return html`${
    count === 0
      ? null
      : html`<h2>${LIST.title}</h2><p class="note">${LIST.legend}</p><ol class="deployments">${deployments.map((each, at) => row(each, at, state))}</ol>${
          count < 2 ? null : several(count, state)
        }${sources.length < 2 ? null : together(state)}${logColumns === null ? null : html`<p class="note">${LIST.log}</p>`}<p class="buttons"><button type="button" data-do="clear">${LIST.clear}</button></p>`
  }${reports === 0 ? null : html`<p class="buttons"><button type="button" data-do="heard">${LIST.heard(reports)}</button></p>`}${unread.length + refused.length === 0 ? null : notRead(unread, refused)}`;
}

/** Two need not be ticked. */
function several(count: number, { ticked }: State): Markup {
  const compare =
    count === 2
      ? html`<button type="button" data-do="compare">${LIST.compareBoth}</button>`
      : html`<button type="button" data-do="compare"${ticked.length === 2 ? null : html` disabled`}>${LIST.compare}</button>`;
  return html`<p class="buttons"><button type="button" class="main" data-do="grade">${LIST.grade(count)}</button>${compare}</p>${count === 2 ? null : html`<p class="note">${LIST.compareHelp}</p>`}`;
}

function row(
  { label, date, grades, isDoubtful, sources }: Listed,
  at: number,
  { ticked, shown: look, listing }: State,
): Markup {
  const isShown = look !== null && "deployment" in look && look.deployment === at;
  const isTicked = (listing?.deployments.length ?? 0) > 2;
  return html`<li${isShown ? html` class="shown"` : null}>${
    !isTicked
      ? null
      : html`<label class="tick"><input type="checkbox" id="tick-${at}" data-change="tick" data-at="${at}" aria-label="${LIST.tick(label)}"${ticked.includes(at) ? html` checked` : null}></label>`
  }<button type="button" id="open-${at}" class="row" data-do="check" data-at="${at}"${isShown ? html` aria-current="true"` : null}><b>${label}</b>${
    date === null || label.includes(date) ? null : html` <span class="date">${date}</span>`
  }<span class="grades">${grades === "" ? LIST.nothingSwept : grades}${isDoubtful ? html`; ${LIST.doubtful}` : null}</span></button><button type="button" class="small" data-do="remove" data-sources="${sources.join(" ")}" aria-label="${LIST.remove(label)}">✕</button></li>`;
}

function together({ together: chosen }: State): Markup {
  const choices = Object.entries(LIST.togetherChoices) as readonly (readonly [Together, string])[];
  return html`<p class="field"><label for="together">${LIST.together}</label><select id="together" data-change="together">${choices.map(
    ([value, words]) => html`<option value="${value}"${value === chosen ? html` selected` : null}>${words}</option>`,
  )}</select></p>`;
}

function notRead(unread: readonly Unread[], refused: readonly string[]): Markup {
  return html`<h2>${WORDS.unread.title}</h2><ul class="unread">${refused.map((reason) => html`<li>${reason}</li>`)}${unread.map(
    ({ source, reason, questions, proposed }) =>
      html`<li><p>${reason}</p>${questions.length === 0 ? null : questionForm(source, questions, proposed)}<p class="buttons"><button type="button" data-do="remove" data-sources="${source}">${WORDS.unread.drop}</button></p></li>`,
  )}</ul>`;
}

const ALL_QUESTIONS: readonly Question[] = ["unit", "columns", "reference", "decimal", "delimiter", "sign", "port"];

/** What may be said of the files behind an answer. */
export function howItWasRead({ listing, sources, shown: look }: State): Markup {
  if (look?.what !== "check") return html``;
  const own = listing?.deployments[look.deployment]?.sources ?? [];
  const files = sources.filter(({ id }) => own.includes(id));
  return html`<details class="how"><summary>${WORDS.questions.how}</summary><p>${WORDS.questions.howHelp}</p>${files.map(
    ({ id, path, readAs }: { readonly id: number; readonly path: string; readonly readAs: ReadAs }) =>
      html`${files.length === 1 ? null : html`<h3>${path}</h3>`}${questionForm(id, ALL_QUESTIONS, readAs)}`,
  )}</details>`;
}
