import type { ForTonight } from "@feedpoint/core";
import type { GradeReport } from "../grading/report.js";
import { percent } from "../present/units.js";

/** What comes first of many sweeps: which to take for what is wanted, and loss that passes for a better antenna. */
export function seasonHeadline({ tonight, findings }: Pick<GradeReport, "tonight" | "findings">): readonly string[] {
  const losses = findings.filter(({ code }) => code === "loss-rising").map(({ message }) => message);
  return [...(tonight.length === 0 ? [] : [tonightText(tonight)]), ...losses];
}

const WITH: Readonly<Record<ForTonight["standing"], string>> = {
  ready: "without a tuner",
  "own-tuner": "with your tuner",
  "another-tuner": "with a tuner that you did not state",
  "in-part": "in part",
  "out-of-reach": "out of reach",
  "not-known": "not known",
};

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
  return `For ${wanted} take ${best.graded.sweep.label}: ${best.worst} ${WITH[best.standing]}, ${arrives}.${doubt}`;
}
