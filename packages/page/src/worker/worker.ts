/** What runs beside the page: reads, judges and writes out, and answers every message with one. */
import { hintedMessage } from "@feedpoint/answers/asked/usage-error";
import { problemsOf } from "@feedpoint/answers/text/grade";
import { html } from "@feedpoint/answers/text/markup";
import { swr } from "@feedpoint/answers/text/units";
import { ACTIVITIES, dateOf, planById, planIds, type SweepGrade } from "@feedpoint/core";
import { parseStation } from "@feedpoint/core/schema";
import * as z from "zod";
import type { AnswerMessage, AskMessage, AskName, Asks, Choices, Listed, Listing, Session } from "../protocol.js";
import { gradesBy, settingsBy } from "./judging.js";
import { type ReadSources, readSources } from "./read-sources.js";
import { savedAs } from "./saved.js";
import { answerTo, type Judged } from "./views.js";

// The page permits no code made of text.
z.config({ jitless: true });

type Answering = { readonly [Name in AskName]: (ask: Asks[Name]["ask"]) => Promise<Asks[Name]["answer"]> };

let judged: Omit<Judged, "wanted"> | null = null;

const ANSWERING: Answering = {
  choices: async () => choices(),
  list: async ({ session }) => listing(session),
  look: async ({ look, wanted }) => {
    const { shown, note } = answerTo(look, judgedWith(wanted));
    return { markup: html`${shown()}`.markup, note };
  },
  save: async ({ look, wanted, as }) => savedAs(as, answerTo(look, judgedWith(wanted))),
  station: async ({ data }) => {
    const station = parseStation(data);
    // Names of plan, class and bands are checked as well, before anything is judged by them.
    await settingsBy(station);
    return station;
  },
};

function judgedWith(wanted: string): Judged {
  if (judged === null) throw new Error("Nothing was read yet.");
  return { ...judged, wanted };
}

function choices(): Choices {
  return {
    plans: planIds().flatMap((id) => {
      const plan = planById(id);
      return plan === null ? [] : [{ id, title: plan.title, classes: plan.classes ?? [] }];
    }),
    activities: [...new Set(ACTIVITIES.map(({ label }) => label))],
  };
}

async function listing(session: Session): Promise<Listing> {
  const settings = await settingsBy(session.station);
  const read = await readSources(session, settings);
  judged = { ...read, settings };
  const gradeOne = gradesBy(settings, read);
  return {
    deployments: read.deployments.map((deployment) => listed(deployment, gradeOne(deployment), session)),
    unread: read.unread,
    reports: read.reports.length,
    logColumns: read.log === null ? null : read.log.columns.filter((name) => name !== read.log?.fileColumn),
    bands: settings.bands ?? settings.plan.bands.map(({ band }) => band),
  };
}

function listed({ label, parts }: ReadSources["deployments"][number], grade: SweepGrade, { sources }: Session): Listed {
  const files = new Set(parts.map(({ source }) => source.file));
  return {
    label,
    date: dateOf(grade),
    grades: grade.bands
      .filter(({ bestSwr }) => bestSwr !== null)
      .map(({ band, grade: ofBand, bestSwr }) => `${band} ${ofBand ?? "?"} ${swr(bestSwr)}`)
      .join(", "),
    sources: sources.filter(({ path }) => files.has(path)).map(({ id }) => id),
    isDoubtful: problemsOf([grade]).length > 0,
  };
}

async function answerMessage<Name extends AskName>({ id, name, ask }: AskMessage<Name>): Promise<AnswerMessage> {
  try {
    return { id, answer: await ANSWERING[name](ask) };
  } catch (error) {
    return { id, refusal: hintedMessage(error) };
  }
}

/** One after the other: what is asked while files are read is answered by what was read. */
let before: Promise<unknown> = Promise.resolve();
addEventListener("message", ({ data }: MessageEvent<AskMessage>) => {
  before = before.then(async () => postMessage(await answerMessage(data)));
});
