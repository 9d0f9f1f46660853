/** The page: starts its worker from a part of the same file, and carries out what is chosen. */
import { CHANGES, CLICKS, SUBMITS } from "./shell/actions.js";
import { chosenFiles } from "./shell/chosen.js";
import { draw, FRAME } from "./shell/draw.js";
import { type App, addSources, stateStation } from "./shell/flows.js";
import { EMPTY, keptStation, type State } from "./shell/state.js";
import { workerClient } from "./shell/worker-client.js";
import { WORDS } from "./words.js";

let state: State = EMPTY;

const app: App = {
  worker: workerClient(document.getElementById("worker")?.textContent ?? "", () =>
    app.update({ told: WORDS.answer.failed, busy: "" }),
  ),
  state: () => state,
  update: (change) => {
    state = { ...state, ...change };
    draw(state);
  },
  showAnswer: () => {
    const answer = document.getElementById("answer");
    if (state.answer === "" || answer === null) return;
    answer.focus({ preventScroll: true });
    answer.scrollIntoView({ block: "start" });
  },
};

/** The element at or above the place of an event that says in `data-…` what it does. */
const named = (event: Event, key: "do" | "change" | "submit"): HTMLElement | null =>
  event.target instanceof Element ? event.target.closest<HTMLElement>(`[data-${key}]`) : null;

document.addEventListener("click", (event) => {
  const element = named(event, "do");
  if (element !== null) CLICKS[element.dataset.do ?? ""]?.(element, app);
});
document.addEventListener("change", (event) => {
  const element = named(event, "change");
  if (element !== null) CHANGES[element.dataset.change ?? ""]?.(element as HTMLInputElement, app);
});
document.addEventListener("submit", (event) => {
  event.preventDefault();
  const element = named(event, "submit");
  if (element instanceof HTMLFormElement) SUBMITS[element.dataset.submit ?? ""]?.(element, app);
});
document.addEventListener("dragover", (event) => event.preventDefault());
document.addEventListener("drop", (event) => {
  event.preventDefault();
  addSources(chosenFiles(event.dataTransfer?.files ?? []), app);
});

async function start(): Promise<void> {
  document.body.insertAdjacentHTML("afterbegin", FRAME.markup);
  app.update({});
  app.update({ choices: await app.worker.ask("choices", {}) });
  const kept = keptStation();
  if (kept === null) return;
  app.update({ isKept: true });
  await stateStation(kept, app);
  app.update({ told: "" });
}

start();
