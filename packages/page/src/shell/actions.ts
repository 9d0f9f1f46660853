/** What each button, field and form of the page does, by the name that it carries in data-do, data-change or data-submit. */
import { stationFrom } from "../form/station-form.js";
import type { Look, ReadAs, Together } from "../protocol.js";
import { WORDS } from "../words.js";
import { chosenFiles, typedText } from "./chosen.js";
import {
  ALL,
  type App,
  addSources,
  comparing,
  judgeBy,
  lookAgain,
  NOTHING_SHOWN,
  relist,
  removeSources,
  saveAnswer,
  saveFile,
  stateStation,
  stop,
} from "./flows.js";
import { sample } from "./sample.js";
import { keepStation } from "./state.js";
import { Refusal } from "./worker-client.js";

type Act<Kind extends HTMLElement = HTMLElement> = (element: Kind, app: App) => unknown;

const at = ({ dataset }: HTMLElement): number => Number(dataset.at);
const numbersIn = (text = ""): readonly number[] =>
  text
    .split(" ")
    .filter((each) => each !== "")
    .map(Number);

/** Looks at the same in another way. */
const lookWith = (change: (look: Look) => Look, app: App) => {
  const { look } = app.state();
  return look === null ? undefined : lookAgain(change(look), app);
};

/** Looks at the same for something else that is wanted. */
function want({ value }: HTMLInputElement, app: App) {
  app.update({ wanted: value });
  return lookWith((look) => look, app);
}

const show = async (look: Look, app: App) => {
  const began = document.activeElement;
  await lookAgain(look, app);
  // Whoever has gone on to something else meanwhile is left there.
  if (document.activeElement === began || document.activeElement === document.body) app.showAnswer();
};

export const CLICKS: Readonly<Record<string, Act>> = {
  type: (_, app) => {
    app.update({ isTyping: true });
    document.getElementById("typed-text")?.focus();
  },
  "close-typing": (_, app) => app.update({ isTyping: false }),
  "add-band": ({ dataset }) => addBand(dataset.band ?? ""),
  "add-role": ({ dataset }) => addRole(dataset.field ?? "", dataset.role ?? ""),
  sample: (_, app) => addSources(sample(), app),
  check: (button, app) => show({ what: "check", deployment: at(button) }, app),
  grade: (_, app) => show(ALL, app),
  compare: (_, app) => compare(app),
  heard: (_, app) => show({ what: "heard" }, app),
  remove: ({ dataset }, app) => removeSources(numbersIn(dataset.sources), app),
  clear: (_, app) =>
    removeSources(
      app.state().sources.map(({ id }) => id),
      app,
    ),
  stop: (_, app) => stop(app),
  advise: (_, app) => {
    const { look } = app.state();
    return look?.what === "check" ? show({ what: "advise", deployment: look.deployment }, app) : undefined;
  },
  "back-to-check": (_, app) => {
    const { look } = app.state();
    return look?.what === "advise" ? show({ what: "check", deployment: look.deployment }, app) : undefined;
  },
  swap: (_, app) =>
    lookWith((look) => (look.what === "diff" ? { ...look, before: look.after, after: look.before } : look), app),
  "save-report": (_, app) => saveAnswer("report", app),
  "save-csv": (_, app) => saveAnswer("csv", app),
  "save-cleaned-csv": (_, app) => saveAnswer("cleaned-csv", app),
  "save-cleaned-touchstone": (_, app) => saveAnswer("cleaned-touchstone", app),
  "save-station": (_, app) =>
    saveFile(
      "station.json",
      new Blob([`${JSON.stringify(app.state().station, null, 2)}\n`], { type: "application/json" }),
    ),
  "forget-station": (_, app) => judgeBy({}, app),
  print: () => print(),
};

export const CHANGES: Readonly<Record<string, Act<HTMLInputElement>>> = {
  "open-files": async (input, app) => {
    const files = chosenFiles(input.files ?? []);
    input.value = "";
    await addSources(files, app);
  },
  tick: (box, app) => {
    const others = app.state().ticked.filter((each) => each !== at(box));
    // A third tick takes the place of the first.
    app.update({ ticked: (box.checked ? [...others, at(box)] : others).slice(-2) });
  },
  together: ({ value }, app) => {
    app.update({ together: value as Together, ...NOTHING_SHOWN });
    return relist(app, WORDS.answer.reading);
  },
  plan: ({ value }, app) => {
    const { licence: _, ...station } = app.state().station;
    return judgeBy({ ...station, licence: { plan: value } }, app);
  },
  class: ({ value }, app) => {
    const { station } = app.state();
    const { class: _, ...licence } = station.licence ?? {};
    return judgeBy({ ...station, licence: { ...licence, ...(value === "" ? {} : { class: value }) } }, app);
  },
  wanted: want,
  keep: ({ checked }, app) => {
    app.update({ isKept: checked, told: checked ? WORDS.judgedBy.kept : WORDS.judgedBy.forgotten });
    keepStation(app.state());
  },
  "load-station": async (input, app) => {
    const [file] = input.files ?? [];
    if (file !== undefined) await stateStation(file.text().then(parsed), app);
    input.value = "";
  },
  "same-plane": ({ checked }, app) =>
    lookWith((look) => (look.what === "diff" ? { ...look, isSamePlane: checked } : look), app),
  best: want,
  "group-by": ({ value }, app) => lookWith((look) => (look.what === "grade" ? { ...look, groupBy: value } : look), app),
  "over-time": ({ checked }, app) =>
    lookWith((look) => (look.what === "grade" ? { ...look, isOverTime: checked } : look), app),
};

export const SUBMITS: Readonly<Record<string, Act<HTMLFormElement>>> = {
  typed: (form, app) => {
    const typed = typedText((name) => fieldOf(form, name));
    return typed === null ? undefined : addSources([typed], app);
  },
  "read-as": (form, app) => {
    const id = Number(form.dataset.source);
    const readAs = Object.fromEntries(
      [...new FormData(form).entries()].filter((entry): entry is [string, string] => typeof entry[1] === "string"),
    ) as ReadAs;
    app.update({ sources: app.state().sources.map((each) => (each.id === id ? { ...each, readAs } : each)) });
    return relist(app, WORDS.answer.reading, [id]);
  },
  station: async (form, app) => {
    const stated = app.state().station as Readonly<Record<string, unknown>>;
    await stateStation(
      stationFrom(stated, (name) => fieldOf(form, name)),
      app,
    );
    markWrong(form, app);
  },
};

/** Says beside the fields, and by their labels, what the check of a station named by its keys. */
function markWrong(form: HTMLFormElement, app: App): void {
  const { told } = app.state();
  const fields = [...form.elements].filter(
    (each) => each instanceof HTMLInputElement || each instanceof HTMLTextAreaElement,
  );
  const wrong = fields.filter(({ name }) => name !== "" && told.includes(`${name}:`));
  for (const field of fields) field.toggleAttribute("aria-invalid", false);
  for (const field of wrong) field.setAttribute("aria-invalid", "true");
  if (wrong.length === 0) return;
  const inWords = wrong.reduce((text, { name }) => text.replaceAll(`${name}:`, `${WORDS.fields[name] ?? name}:`), told);
  app.update({ told: inWords });
  wrong[0]?.focus();
}

const fieldOf = (form: HTMLFormElement, name: string): string => {
  const value = new FormData(form).get(name);
  return typeof value === "string" ? value : "";
};

/** @throws Refusal for what is no JSON */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new Refusal(WORDS.judgedBy.noStation);
  }
}

function compare(app: App): unknown {
  const { ticked, listing } = app.state();
  if (listing === null) return undefined;
  const [one, other] = listing.deployments.length === 2 ? [0, 1] : ticked;
  return one === undefined || other === undefined ? undefined : show(comparing(one, other, listing), app);
}

/** A line of its own for a band, and the cursor behind it. */
function addBand(band: string): void {
  const area = document.getElementById("typed-text");
  if (!(area instanceof HTMLTextAreaElement)) return;
  const before = area.value === "" || area.value.endsWith("\n") ? area.value : `${area.value}\n`;
  area.value = `${before}${band} `;
  area.focus();
}

function addRole(field: string, role: string): void {
  const input = document.getElementById(field);
  if (input instanceof HTMLInputElement) input.value = input.value === "" ? role : `${input.value},${role}`;
}
