import { type Cause, type CauseCode, isLikely } from "./cause.js";

export type DiffVerdict = "improved" | "worse" | "unchanged" | "mixed" | "not-comparable";

/** Something that an operator would notice, and whether it got better. */
export interface Sign {
  readonly isBetter: boolean;
  readonly text: string;
}

export interface Judged {
  readonly verdict: DiffVerdict;
  readonly why: string;
}

/** The verdict of what was measured: best and worst point of a band, and how much of it is within the limit. */
export function verdictOf(points: readonly (Sign | null)[], fraction: Sign | null): Judged {
  const signs = [...points, fraction].filter((sign) => sign !== null);
  if (signs.length === 0)
    return { verdict: "unchanged", why: "no difference beyond noise and what matters in practice" };
  const better = signs.filter(({ isBetter }) => isBetter).length;
  const verdict = better === signs.length ? "improved" : better === 0 ? "worse" : "mixed";
  return { verdict, why: signs.map(({ text }) => text).join("; ") };
}

/** What the causes make of a measured verdict: a lower SWR through loss is not better, another place is not comparable. */
export function explained(measured: Judged, causes: readonly Cause[]): Judged {
  const likely = (code: CauseCode) => causes.some((cause) => cause.code === code && isLikely(cause));
  if (likely("line-length-changed")) {
    const why = "taken at another place on the line";
    return { verdict: "not-comparable", why: likely("loss-added") ? `${why}, and more is lost on the way` : why };
  }
  if (likely("reference-changed")) return { verdict: "not-comparable", why: "another reference impedance" };
  if (measured.verdict === "unchanged") return measured;
  // Where nothing but the loss changed, that is the verdict; where the antenna did too, the two cannot be weighed.
  const isOnlyLoss = !likely("resonance-moved") && !likely("antenna-changed");
  const names = (code: CauseCode) => causes.some((cause) => cause.code === code);
  if (names("loss-added")) {
    if (likely("loss-added") && isOnlyLoss) return { verdict: "worse", why: `more loss on the way; ${measured.why}` };
    if (measured.verdict === "improved")
      return { verdict: "mixed", why: `lower SWR, but perhaps only by loss; ${measured.why}` };
  }
  if (names("loss-removed")) {
    if (likely("loss-removed") && isOnlyLoss)
      return { verdict: "improved", why: `less loss on the way; ${measured.why}` };
    if (measured.verdict === "worse")
      return { verdict: "mixed", why: `higher SWR, but perhaps only because less is lost; ${measured.why}` };
  }
  return measured;
}
