import { html, type Markup } from "@feedpoint/answers/text/markup";
import type { Question, ReadAs } from "../protocol.js";
import { WORDS } from "../words.js";

const ASKED = WORDS.questions;

/** Answers of which one is tapped, by question; the others are typed. */
const CHOICES: Readonly<Partial<Record<Question, readonly (readonly [value: string, words: string])[]>>> = {
  unit: ["Hz", "kHz", "MHz", "GHz"].map((unit) => [unit, unit] as const),
  decimal: [
    ["point", ASKED.point],
    ["comma", ASKED.comma],
  ],
  delimiter: [
    ["comma", ASKED.comma],
    ["semicolon", ASKED.semicolon],
    ["tab", ASKED.tab],
    ["space", ASKED.space],
    ["bar", ASKED.bar],
  ],
  sign: [["yes", ASKED.yes]],
};

/** What a column may hold, for a tap; the names are those of the command's columns. */
const ROLES = [
  "frequency:Hz",
  "frequency:kHz",
  "frequency:MHz",
  "swr",
  "return-loss",
  "resistance",
  "reactance",
  "s11-db",
  "angle",
  "skip",
];

/** Asks what a file leaves open. @param said what was answered before, or what is likely */
export function questionForm(source: number, questions: readonly Question[], said: ReadAs): Markup {
  return html`<form class="questions" data-submit="read-as" data-source="${source}">${questions.map((question) =>
    CHOICES[question] === undefined ? typedAnswer(source, question, said) : tappedAnswer(source, question, said),
  )}<p class="buttons"><button class="main">${ASKED.apply}</button></p></form>`;
}

function tappedAnswer(source: number, question: Question, said: ReadAs): Markup {
  const choices = [...(CHOICES[question] ?? []), ["", ASKED.leave] as const];
  return html`<fieldset><legend>${ASKED[question as keyof typeof ASKED]}</legend>${choices.map(
    ([value, words]) =>
      html`<label class="tick"><input type="radio" name="${question}" value="${value}" id="q-${source}-${question}-${value}"${(said[question] ?? "") === value ? html` checked` : null}> ${words}</label>`,
  )}</fieldset>`;
}

function typedAnswer(source: number, question: Question, said: ReadAs): Markup {
  const id = `q-${source}-${question}`;
  const roles =
    question === "columns"
      ? html`<span class="chips">${ROLES.map((role) => html`<button type="button" data-do="add-role" data-role="${role}" data-field="${id}">${role}</button>`)}</span>`
      : null;
  return html`<p class="field"><label for="${id}">${ASKED[question as keyof typeof ASKED]}</label><input id="${id}" name="${question}" value="${said[question] ?? ""}" autocomplete="off"${question === "columns" ? null : html` inputmode="decimal"`}>${roles}</p>`;
}
