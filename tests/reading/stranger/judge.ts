/** Reads a file and says in which class the reading falls. */
import { ReadError, readSweeps, type Sweep } from "@feedpoint/core";
import { differenceFrom } from "./compare.js";
import type { Case } from "./truth.js";

type Class =
  | "right"
  | "right with a caution"
  | "refused though clear"
  | "rightly refused"
  | "wrong in silence"
  | "wrong with a caution"
  | "one of two ways in silence";

export interface Verdict {
  made: Case;
  class: Class;
  /** What is wrong, or the refusal's message. */
  why: string;
  refusal: ReadError | null;
}

/** Cautions that every note by hand gets, whatever was read of it: they tell nothing of a loss. */
const ROUTINE = new Set<string>(["spot-readings", "spot-band", "single-point", "frequency-not-ascending"]);

function isCautioned(sweeps: readonly Sweep[], byHand: boolean): boolean {
  const findings = sweeps.flatMap((sweep) => sweep.findings);
  const routine = byHand || findings.some(({ code }) => code === "spot-readings");
  return findings.some(({ code, severity }) => severity !== "info" && !(routine && ROUTINE.has(code)));
}

/** The verdict on one file. An error that is no refusal is as bad as a wrong number. */
export function judge(made: Case): Verdict {
  try {
    const sweeps = readSweeps(made.bytes, { fileName: made.fileName });
    return { made, refusal: null, ...classOf(made, sweeps) };
  } catch (error) {
    if (!(error instanceof ReadError))
      return { made, class: "wrong in silence", why: `broke: ${error}`, refusal: null };
    const name = made.clear ? "refused though clear" : "rightly refused";
    return { made, class: name, why: error.message, refusal: error };
  }
}

function classOf({ truth, mustCaution }: Case, sweeps: readonly Sweep[]): Pick<Verdict, "class" | "why"> {
  const cautioned = isCautioned(sweeps, truth.kind === "readings");
  if (truth.kind === "refuse" && truth.cautionSuffices && cautioned) return { class: "right with a caution", why: "" };
  const { why, dropped, joined = false } = differenceFrom(truth, sweeps);
  if (why !== null) return { class: cautioned ? "wrong with a caution" : "wrong in silence", why };
  if (cautioned) return { class: "right with a caution", why: "" };
  if (truth.kind === "sweeps" && truth.doubt)
    return { class: "one of two ways in silence", why: "no word of the other" };
  if (dropped > 0) return { class: "wrong in silence", why: `${dropped} dropped without a caution` };
  if (mustCaution || joined) return { class: "wrong in silence", why: "no caution where one is due" };
  return { class: "right", why: "" };
}
