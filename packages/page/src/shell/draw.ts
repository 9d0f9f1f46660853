import { equipCharts } from "@feedpoint/answers/browser/readout";
import { html, type Markup } from "@feedpoint/answers/text/markup";
import { WORDS } from "../words.js";
import { status, terms } from "./answer-view.js";
import { judgedBy, stationCard } from "./judged-view.js";
import { beginning, howItWasRead, list, typing } from "./sources-view.js";
import type { State } from "./state.js";

/** The parts of the page, by the id of the element that each is drawn into. */
const REGIONS: Readonly<Record<string, (state: State) => Markup>> = {
  beginning,
  typing: (state) => typing(state, today()),
  list,
  judged: judgedBy,
  station: stationCard,
  status,
  terms,
  how: howItWasRead,
};

const today = (): string => {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
};

/** What the regions are drawn into. */
export const FRAME: Markup = html`<header class="top"><p class="brand">${WORDS.title}</p><p class="tagline">${WORDS.tagline}</p></header>
<main><div class="chosen"><section id="beginning" tabindex="-1"></section><section id="typing" tabindex="-1"></section><section id="list" tabindex="-1"></section><section id="judged" tabindex="-1"></section><section id="station" tabindex="-1"></section></div>
<div class="answered"><div id="status" role="status" tabindex="-1"></div><section id="terms" tabindex="-1"></section><nav id="contents" aria-label="${WORDS.answer.contents}"></nav><section id="answer" aria-label="${WORDS.answer.title}" tabindex="-1"></section><section id="how" tabindex="-1"></section></div></main>
<footer><p>${WORDS.footer}</p></footer>`;

/** Links to the headings of an answer, folded away; a page on a phone is long. */
function contentsOf(answer: HTMLElement): Markup {
  const headings = Array.from(answer.querySelectorAll("h2"));
  if (headings.length === 0) return html``;
  const links = headings.map((heading, i) => {
    heading.id = `heading-${i}`;
    return html`<li><a href="#heading-${i}">${heading.textContent ?? ""}</a></li>`;
  });
  return html`<details><summary class="button">${WORDS.answer.contents}</summary><ul>${links}</ul></details>`;
}

const drawn = new Map<string, string>();

/** Draws what has changed, and leaves the rest alone with all that is typed in it. */
export function draw(state: State): void {
  for (const [id, region] of Object.entries(REGIONS)) put(id, region(state).markup);
  const answer = put("answer", state.answer);
  if (answer !== null) {
    equipCharts(answer);
    put("contents", contentsOf(answer).markup);
  }
  document.body.classList.toggle("answering", state.answer !== "");
  document.body.classList.toggle("busy", state.busy !== "");
}

/**
 * The element, where it has something new in it; what had the focus keeps it, or leaves it to its part of the page, and what was unfolded
 * stays so.
 */
function put(id: string, markup: string): HTMLElement | null {
  const element = document.getElementById(id);
  if (element === null || drawn.get(id) === markup) return null;
  drawn.set(id, markup);
  const focused = document.activeElement;
  const hadFocus = focused !== null && element.contains(focused);
  const held = hadFocus ? focused.id : "";
  const opened = Array.from(element.querySelectorAll("details[open] > summary"), ({ textContent }) => textContent);
  element.innerHTML = markup;
  for (const summary of element.querySelectorAll("details > summary"))
    if (opened.includes(summary.textContent)) summary.parentElement?.setAttribute("open", "");
  const again = held === "" ? null : document.getElementById(held);
  if (hadFocus) (again ?? element).focus({ preventScroll: true });
  if (again instanceof HTMLInputElement && again.type === "text")
    again.setSelectionRange(again.value.length, again.value.length);
  return element;
}
