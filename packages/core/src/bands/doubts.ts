import type { Curve } from "../curve/curve.js";
import type { UsableBand } from "../facts/band-plan/band-plan.js";
import { takesSignal } from "../facts/band-plan/privileges.js";
import type { Feedline } from "../facts/feedline/feedline.js";
import type { Limits } from "../facts/limits.js";
import { type Finding, finding } from "../sweep/finding.js";
import { swrFromReflectionMagnitude } from "../sweep/reflection.js";
import type { Sweep } from "../sweep/sweep.js";
import type { BandResult } from "./band-result.js";
import { HIDING_LOSS_DB, lossBoundOf } from "./loss-bound.js";
import type { Point } from "./point.js";
import type { Scope } from "./scope.js";

/** Verdicts that the noise, the step or the analyser's own error may have turned. */
export function doubtFindings(results: readonly BandResult[], { swr: limit }: Limits): readonly Finding[] {
  const unsure = results.filter(
    ({ verdict, worst, best }) =>
      (verdict === "pass" && mayBeBeyond(worst, limit)) ||
      (verdict === "fail" && mayBeWithin(best, limit)) ||
      (verdict === "partial" && (mayBeBeyond(best, limit) || mayBeWithin(worst, limit))),
  );
  return unsure.map(({ band, verdict, worst, best }) => {
    const isWorst = verdict === "pass" || (verdict === "partial" && mayBeWithin(worst, limit));
    const { swrLow = 1, swrHigh = 1 } = (isWorst ? worst : best) ?? {};
    const message = `On ${band} the ${isWorst ? "worst" : "best"} SWR may be ${swrText(swrLow)} to ${swrText(swrHigh)}, so that "${verdict}" at ${limit}:1 is not sure.`;
    return finding("caution", "verdict-unsure", message, { band });
  });
}

const mayBeBeyond = (point: Point | null, limit: number): boolean => (point?.swrHigh ?? 0) > limit;
const mayBeWithin = (point: Point | null, limit: number): boolean =>
  point !== null && point.swr > limit && (point.swrLow ?? Number.POSITIVE_INFINITY) < limit;

const swrText = (swr: number) => (swr === Number.POSITIVE_INFINITY ? "∞" : swr.toFixed(2));

/** Modes that were named and may not be sent on a band that others keep in the table. */
export function modeFindings(
  bands: readonly { readonly band: UsableBand; readonly result: BandResult }[],
  { licenceClass = null, modes = [] }: Pick<Scope, "licenceClass" | "modes">,
): readonly Finding[] {
  return modes.flatMap((mode) => {
    const closed = bands
      .filter(({ result }) => result.best !== null)
      .filter(({ band }) => !band.segments.some((segment) => takesSignal(segment, licenceClass, mode)))
      .map(({ band }) => band.band);
    if (closed.length === 0) return [];
    const message = `${mode.name} may not be sent on ${closed.join(", ")}; what is told there is for the other modes.`;
    return [finding("caution", "mode-not-permitted", message)];
  });
}

/** What the power told leaves out. */
export function powerFindings(results: readonly BandResult[], feedline: Feedline | null): readonly Finding[] {
  const told = results.filter(({ power }) => power.some(({ watts }) => watts !== null));
  const unlimited = told
    .filter(({ power }) => power.every(({ licenceLimits }) => licenceLimits.length === 0))
    .map(({ band }) => band);
  const stressed = results.some(({ feedline: line }) => line?.stress != null);
  return [
    ...(unlimited.length === 0
      ? []
      : [
          finding(
            "caution",
            "power-limit-unknown",
            `The plan does not say what power your licence allows on ${unlimited.join(", ")}; what is told there is what the equipment gives.`,
          ),
        ]),
    ...(stressed && feedline !== null && feedline.ratedVolts === null && feedline.ratedAmperes === null
      ? [
          finding(
            "caution",
            "feedline-rating-unknown",
            "Voltage and current on the line are told, but not what it bears: state ratedVolts and ratedAmperes, or see its data sheet.",
          ),
        ]
      : []),
  ];
}

/** What radios are made for; Ω (common practice, no source) */
const RADIO_OHMS = 50;

export function referenceFindings({ referenceOhms }: Sweep): readonly Finding[] {
  if (referenceOhms === RADIO_OHMS) return [];
  const message = `SWR here is against ${referenceOhms} Ω; a radio made for ${RADIO_OHMS} Ω sees another SWR. Say --system-ohms ${RADIO_OHMS} to judge for that.`;
  return [finding("problem", "reference-not-50", message)];
}

/** What the sweep itself says about loss on the way to the antenna. */
export function lossFindings(curve: Curve): readonly Finding[] {
  const bound = lossBoundOf(curve);
  if (bound === null) return [];
  const text = `Between analyser and antenna at most ${bound.lossDb.toFixed(1)} dB is lost one way near ${(bound.frequencyHz / 1e6).toFixed(1)} MHz (half of the return loss there; more at higher frequencies).`;
  if (bound.lossDb <= HIDING_LOSS_DB) return [finding("info", "loss-bound", text)];
  return [
    finding(
      "caution",
      "low-swr-may-be-loss",
      `Nowhere in this sweep is the SWR above ${swrFromReflectionMagnitude(bound.reflectionMagnitude).toFixed(1)}: that may be loss (a long, old or wet feedline, a poor joint), not a good antenna. ${text}`,
    ),
  ];
}
