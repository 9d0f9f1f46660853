/** What happens when something is chosen: the worker is asked, and the state says what came of it. */
import type { Station } from "@feedpoint/core";
import type { Listing, Look, SaveAs, Source } from "../protocol.js";
import { WORDS } from "../words.js";
import { keepStation, type State } from "./state.js";
import { Refusal, type WorkerClient } from "./worker-client.js";

/** The one place that the state is kept in, and the worker that it is told by. */
export interface App {
  readonly worker: WorkerClient;
  readonly state: () => State;
  readonly update: (change: Partial<State>) => void;
  /** Brings an answer before the eyes of who asked for it */
  readonly showAnswer: () => void;
}

/** What holds where nothing is looked at. */
export const NOTHING_SHOWN = { look: null, shown: null, answer: "" } as const;

/** A file larger than this holds no sweep, and would fill a phone's memory; MB. */
const MOST_MB = 25;
const MEGA = 1e6;

/** Something to read, as it was chosen. */
export interface Chosen {
  readonly path: string;
  readonly content: Blob;
}

let lastId = 0;

/** Adds what was chosen to what is there, and shows what it says. */
export async function addSources(chosen: readonly Chosen[], app: App): Promise<void> {
  const { sources } = app.state();
  const small = chosen.filter(({ content }) => content.size <= MOST_MB * MEGA);
  const refused = chosen
    .filter((each) => !small.includes(each))
    .map(({ path, content }) =>
      WORDS.unread.tooLarge(path.replace(/^.*\//, ""), Math.round(content.size / MEGA), MOST_MB),
    );
  const known = new Set(sources.map(({ path }) => path));
  const fresh = small.map(
    ({ path, content }): Source => ({ id: ++lastId, path: unusedPath(path, known), content, readAs: {} }),
  );
  app.update({ sources: [...sources, ...fresh], refused, isTyping: false, told: "" });
  if (fresh.length > 0)
    await relist(
      app,
      WORDS.answer.reading,
      fresh.map(({ id }) => id),
    );
}

/** Two files of one name are told apart by a number. */
function unusedPath(path: string, known: Set<string>): string {
  let free = path;
  for (let count = 2; known.has(free); count++) free = path.replace(/(\.\w+)?$/, ` (${count})$1`);
  known.add(free);
  return free;
}

/**
 * Reads and grades what is there, then shows what is looked at.
 *
 * @param fresh sources that were just added: what they hold is shown; absent: the same is looked at, as far as it is there
 */
export async function relist(app: App, doing: string, fresh?: readonly number[]): Promise<void> {
  const { sources, together, station } = app.state();
  if (sources.length === 0) {
    app.update({ listing: null, ticked: [], ...NOTHING_SHOWN });
    return;
  }
  await busy(app, doing, async () => {
    const listing = await app.worker.ask("list", { session: { sources, together, station } });
    const own = [...listing.deployments.keys()].filter((at) =>
      listing.deployments[at]?.sources.some((id) => fresh === undefined || fresh.includes(id)),
    );
    const { look } = app.state();
    const next = fresh === undefined ? (look ?? lookAt(own, listing)) : lookAt(own, listing);
    app.update({
      listing,
      ...(fresh === undefined ? {} : { ticked: [] }),
      ...(next === null ? NOTHING_SHOWN : {}),
    });
    if (next !== null) await answer(next, app);
  });
  if (fresh !== undefined) app.showAnswer();
}

/** All are graded. */
export const ALL: Look = { what: "grade", groupBy: "", isOverTime: false };

/** One deployment is checked, two are compared, more are graded. */
function lookAt([first, second, ...others]: readonly number[], listing: Listing): Look | null {
  if (first === undefined) return listing.reports > 0 && listing.logColumns !== null ? { what: "heard" } : null;
  if (second === undefined) return { what: "check", deployment: first };
  return others.length === 0 ? comparing(first, second, listing) : ALL;
}

/** Two deployments, the one that was taken first as before; in the order of the list where the dates do not tell. */
export function comparing(one: number, other: number, { deployments }: Listing): Look {
  const dateOf = (place: number) => deployments[place]?.date ?? "";
  const [first, second] = one < other ? [one, other] : [other, one];
  const isTurned = dateOf(first) !== "" && dateOf(second) !== "" && dateOf(second) < dateOf(first);
  const [before, after] = isTurned ? [second, first] : [first, second];
  return { what: "diff", before, after, isSamePlane: false };
}

/** Shows another answer. */
export const lookAgain = (look: Look, app: App): Promise<void> =>
  busy(app, WORDS.answer.working, () => answer(look, app));

async function answer(look: Look, app: App): Promise<void> {
  app.update({ look });
  try {
    const { markup, note } = await app.worker.ask("look", { look, wanted: app.state().wanted });
    app.update({ shown: look, answer: markup, told: note });
  } catch (error) {
    app.update({ look: app.state().shown });
    throw error;
  }
}

/** Takes sources off the list. */
export async function removeSources(ids: readonly number[], app: App): Promise<void> {
  const sources = app.state().sources.filter(({ id }) => !ids.includes(id));
  app.update({ sources, refused: [], ticked: [], ...NOTHING_SHOWN, told: "" });
  await relist(app, WORDS.answer.reading);
}

/** Judges by another station, and keeps it where that was asked for. */
export async function judgeBy(station: Station, app: App): Promise<void> {
  app.update({ station, told: "" });
  keepStation(app.state());
  await relist(app, WORDS.answer.working);
}

/** Checks data for a station, as soon as it is there, and judges by it. */
export const stateStation = (data: unknown, app: App): Promise<void> =>
  busy(app, WORDS.answer.working, async () => {
    const station = await app.worker.ask("station", { data: await data });
    await judgeBy(station, app);
    if (app.state().told === "") app.update({ told: WORDS.judgedBy.used });
    app.showAnswer();
  });

/** Saves what is looked at as a file, or as several. */
export const saveAnswer = (as: SaveAs, app: App): Promise<void> =>
  busy(app, WORDS.answer.working, async () => {
    const { shown: look, wanted } = app.state();
    if (look === null) return;
    const files = await app.worker.ask("save", { look, wanted, as });
    for (const { name, type, text } of files) saveFile(name, new Blob([text], { type }));
    app.update({ told: WORDS.answer.saved(files.map(({ name }) => name).join(", ")) });
  });

export function saveFile(name: string, content: Blob): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** Stops what goes on: a worker in the middle of something can only be ended, and what it was reading is left out. */
export async function stop(app: App): Promise<void> {
  const { listing, sources } = app.state();
  app.worker.stop(WORDS.answer.cancelled);
  const read = new Set([
    ...(listing?.deployments ?? []).flatMap((each) => each.sources),
    ...(listing?.unread ?? []).map(({ source }) => source),
  ]);
  app.update({
    sources: sources.filter(({ id, path }) => read.has(id) || /deployments\.csv$/i.test(path)),
    look: null,
    answer: "",
  });
  await relist(app, WORDS.answer.reading);
  app.update({ told: WORDS.answer.cancelled });
}

let running = 0;

/** Says what goes on while it does, and why it came to nothing where it did. */
async function busy(app: App, doing: string, work: () => Promise<void>): Promise<void> {
  running++;
  app.update({ busy: doing, told: "" });
  try {
    await work();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    app.update({ told: error.message });
  } finally {
    running--;
    if (running === 0) app.update({ busy: "" });
  }
}
