import type { ForTonight, LossHistory, Ranked } from "@feedpoint/core";
import type { GradeReport } from "../judged/report.js";
import { fixed, percent, signed, swr } from "../text/units.js";
import { needWhereSwept } from "./verdicts.js";

/** What comes first of many sweeps: which to take for what is wanted, and loss that passes for a better antenna. */
export function seasonHeadline({
  tonight,
  ranking,
  findings,
}: Pick<GradeReport, "tonight" | "ranking" | "findings">): readonly string[] {
  const losses = findings.filter(({ code }) => code === "loss-rising").map(({ message }) => message);
  const [best] = ranking;
  return [
    ...(tonight.length === 0 ? [] : [tonightText(tonight)]),
    ...(best === undefined ? [] : [bestText(best)]),
    ...losses,
  ];
}

/** Loss that may make a grade, dB one way at 10 MHz (our own choice: a twentieth of the power). */
export const MADE_BY_LOSS_DB = 0.2;
const MOST_NAMED = 5;

/** Which grades loss has a part in, as a line for beside them; null where none is known to. */
export function gradesOnLoss(losses: readonly LossHistory[]): string | null {
  const lossy = losses
    .flatMap(({ sweeps }) => sweeps)
    .filter(({ at10MHzDb, marginDb }) => at10MHzDb - marginDb > MADE_BY_LOSS_DB)
    .sort((a, b) => b.at10MHzDb - a.at10MHzDb);
  if (lossy.length === 0) return null;
  const named = lossy.slice(0, MOST_NAMED).map(({ label, at10MHzDb }) => `${label} (${signed(at10MHzDb, 1)} dB)`);
  const others = lossy.length > MOST_NAMED ? ` and ${lossy.length - MOST_NAMED} more` : "";
  return `Grades that rest on loss, with how much more there is than in the sweep it is held against, one way at 10 MHz: ${named.join(", ")}${others}.`;
}

/** How a deployment serves what is wanted, behind its name. */
export const STANDINGS: Readonly<Record<ForTonight["standing"], string>> = {
  ready: "without a tuner",
  "own-tuner": "with your tuner",
  "another-tuner": "with a tuner that you did not state",
  "in-part": "in part",
  "out-of-reach": "out of reach",
  "not-known": "not known",
};

/** The first of a ranking, with what speaks for it and what may speak against. */
function bestText({ graded, band }: Ranked): string {
  const { lossBoundDb, sweep } = graded;
  const loss =
    lossBoundDb === null
      ? "what it loses is not known"
      : `at most ${fixed(lossBoundDb, 1)} dB is lost before it, by the sweep alone`;
  return `Most useful on ${band.band}: ${sweep.label}, needs ${needWhereSwept(band)} for the whole band, ${percent(band.withinLimitFraction)} of it within the limit, best SWR ${swr(band.bestSwr)}; ${loss}.`;
}

function tonightText(tonight: readonly ForTonight[]): string {
  const [best] = tonight;
  const wishes = best?.graded.wishes ?? [];
  const wanted = wishes.map(({ title }) => title).join(" and ");
  if (best === undefined || best.rank === null) return `For ${wanted}: nothing is known of any deployment.`;
  const arrivals = wishes.flatMap(({ arrives }) => arrives?.least ?? []);
  const arrives =
    arrivals.length === 0
      ? "what arrives is not known"
      : `${percent(Math.min(...arrivals))} of the power arrives at least`;
  const doubt = best.hiddenLossDb === null ? "" : " All of them may owe their SWR to loss.";
  return `For ${wanted} take ${best.graded.sweep.label}: ${best.worst} ${STANDINGS[best.standing]}, ${arrives}.${doubt}`;
}
