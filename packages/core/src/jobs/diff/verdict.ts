import { type Cause, type CauseCode, isLikely } from "./cause.js";

/**
 * What a change means for the operator. improved, worse: all that changed did so in that sense; mixed: it did so in both;
 * unchanged: nothing beyond noise and what matters; not-comparable: the two were not taken on the same terms.
 */
export type DiffVerdict = "improved" | "worse" | "unchanged" | "mixed" | "not-comparable";

/** Something that an operator would notice, and whether it got better. */
interface Sign {
  readonly isBetter: boolean;
  /** No more than the assumed scatter of sweeps taken anew may make */
  readonly isPerhaps: boolean;
  readonly text: string;
}

/** A change that the scatter of repeats may have made, or hidden. */
export const HIDDEN = "hidden";
/** What came of one number: a sign, none, or that the repeats do not tell. */
export type Seen = Sign | typeof HIDDEN | null;

export interface ReasonedVerdict {
  readonly verdict: DiffVerdict;
  readonly why: string;
  /** Unchanged only because the sweeps of one side differ so much among themselves that nothing can be told */
  readonly isHidden: boolean;
  /** Changed by no more than the assumed scatter of sweeps taken anew may make */
  readonly isPerhaps: boolean;
}

const HIDDEN_BY_REPEATS: ReasonedVerdict = {
  verdict: "unchanged",
  why: "nothing can be told: the sweeps of one side differ among themselves by more than counts as a change",
  isHidden: true,
  isPerhaps: false,
};
const UNCHANGED: ReasonedVerdict = {
  verdict: "unchanged",
  why: "no difference beyond noise and what matters in practice",
  isHidden: false,
  isPerhaps: false,
};

/** The verdict of what was measured: best and worst point of a band, and how much of it is within the limit. */
export function verdictOf(points: readonly Seen[], fraction: Seen): ReasonedVerdict {
  const all = [...points, fraction];
  const signs = all.filter((seen) => seen !== null && seen !== HIDDEN);
  if (signs.length === 0) return all.includes(HIDDEN) ? HIDDEN_BY_REPEATS : UNCHANGED;
  const better = signs.filter(({ isBetter }) => isBetter).length;
  const verdict = better === signs.length ? "improved" : better === 0 ? "worse" : "mixed";
  const isPerhaps = signs.every((sign) => sign.isPerhaps);
  return { verdict, why: signs.map(({ text }) => text).join("; "), isHidden: false, isPerhaps };
}

/** Causes that turn power into heat. */
const LOSSIER: readonly { readonly code: CauseCode; readonly words: string }[] = [
  { code: "loss-added", words: "more loss on the way" },
  { code: "resistance-added", words: "a resistance in series takes power" },
];

/** What the causes make of a measured verdict: a lower SWR through loss is not better, another place is not comparable. */
export function explained(measured: ReasonedVerdict, causes: readonly Cause[]): ReasonedVerdict {
  const likely = (code: CauseCode) => causes.some((cause) => cause.code === code && isLikely(cause));
  if (likely("line-length-changed")) {
    const why = "taken at another place on the line";
    return reason("not-comparable", likely("loss-added") ? `${why}, and more is lost on the way` : why);
  }
  if (likely("reference-changed")) return reason("not-comparable", "another reference impedance");
  if (measured.verdict === "unchanged") return measured;
  // Where nothing but the loss changed, that is the verdict; where the antenna did too, the two cannot be weighed.
  const isOnlyLoss = !likely("resonance-moved") && !likely("antenna-changed");
  const names = (code: CauseCode) => causes.some((cause) => cause.code === code);
  const lossier = LOSSIER.find(({ code }) => likely(code)) ?? LOSSIER.find(({ code }) => names(code));
  if (lossier) {
    if (likely(lossier.code) && isOnlyLoss) return reason("worse", `${lossier.words}; ${measured.why}`);
    if (measured.verdict === "improved")
      return { ...measured, verdict: "mixed", why: `lower SWR, but perhaps only by loss; ${measured.why}` };
  }
  if (names("loss-removed")) {
    if (likely("loss-removed") && isOnlyLoss) return reason("improved", `less loss on the way; ${measured.why}`);
    if (measured.verdict === "worse")
      return {
        ...measured,
        verdict: "mixed",
        why: `higher SWR, but perhaps only because less is lost; ${measured.why}`,
      };
  }
  return measured.isPerhaps && causes.some(isBeyondScatter) ? { ...measured, isPerhaps: false } : measured;
}

/** Hanging the same wire up again moves its resonance by as much as this, % (common practice, no source). */
const REHUNG_PERCENT = 0.5;

/** Whether a moved resonance is no more than that. */
export const isAsRehung = ({ evidence }: Pick<Cause, "evidence">): boolean =>
  Math.abs(evidence.frequencyPercent ?? 0) <= REHUNG_PERCENT;

/** Whether a cause is surely something else than the same antenna put up again. */
const isBeyondScatter = (cause: Cause): boolean =>
  isLikely(cause) &&
  (cause.code === "coil-added" ||
    cause.code === "capacitor-added" ||
    (cause.code === "resonance-moved" && !isAsRehung(cause)));

const reason = (verdict: DiffVerdict, why: string): ReasonedVerdict => ({
  verdict,
  why,
  isHidden: false,
  isPerhaps: false,
});
