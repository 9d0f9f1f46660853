import { feedlineFindings } from "../../bands/band-feedline.js";
import { lossFindings, referenceFindings } from "../../bands/doubts.js";
import { knownOf } from "../../bands/known.js";
import type { UsableShares } from "../../bands/reach.js";
import { spikeFindings } from "../../bands/sampling.js";
import { planFindings, planInfo } from "../../bands/scope.js";
import type { Wish } from "../../bands/wish.js";
import { cautionsFor } from "../../facts/cautions.js";
import { fixedFindings, followingOf, toldOfFixed } from "../../facts/fixed-parts.js";
import { reflectionMagnitudeFromSwr } from "../../reflection/swr.js";
import { asDeployment, type Deployment, deploymentInfo } from "../../sweep/deployment.js";
import { finding } from "../../sweep/finding.js";
import type { Sweep } from "../../sweep/sweep.js";
import { advisedParts, frequenciesOf, magnitudesOf, outcomesOf, type WishOutcome } from "./advice.js";
import { whatToDo } from "./advice-words.js";
import { ADVICE_CAUTIONS, adviseFindings, BALANCED_CAUTION, endFindings, hasBalanced } from "./advise-findings.js";
import { type AdviseOptions, checkAdviseOptions, LEAST_ARRIVING, powerOf, termsOf } from "./advise-options.js";
import type { AdviseResult, AdviseVerdict, WishNow } from "./advise-result.js";
import { antennaOf } from "./antenna.js";
import { isBearable } from "./bearable.js";
import { bestCandidates } from "./best-candidates.js";
import { AS_IS, type Candidate } from "./candidate.js";
import { type Doubts, doubtsOf, outlookOf } from "./certainty.js";
import { type Choice, type Chosen, choose } from "./choose.js";
import { experimentWorthDoing } from "./experiment.js";
import { matchLimit } from "./match-limit.js";
import { openQuestions } from "./open-questions.js";
import type { Terms } from "./shares.js";
import { unsureEnds } from "./unsure-ends.js";
import { type Follows, type View, viewOf } from "./view.js";
import { bandOf, type Wanted, wantedOf } from "./wanted.js";
import { gridOf } from "./wish-grid.js";

/** Frequencies of a wish for what is told. */
const POINTS = 81;
/** Where so much of every wish is within reach without a tuner nothing needs to be done. */
const GOOD_ENOUGH = 0.995;
const NO_CHOICE: Choice = { chosen: [], tooHot: 0 };

/**
 * What to try next, so that more of what is wanted comes within reach and the power still arrives: a longer or shorter wire, another
 * line, a transformer, a coil or a capacitor, a stub, a network, alone and together with the wire. Only what is better by more than
 * what is not sure is told; beside it what no network can do, and which measurement would settle most of what is open.
 *
 * A change of the wire is foretold by scaling frequency as {@link trim} does; parts by carrying voltage and current through them
 * (D. M. Pozar, Microwave Engineering, 4th ed., section 4.4, the number from memory). Coils and capacitors come in the values of the
 * E12 series, lengths in whole centimetres.
 *
 * @param given a sweep such as {@link readSweeps} gives, or several as {@link deploymentOf} joins them
 * @throws TypeError for an argument that is not what it must be, which it names
 * @throws RangeError for a band or a licence class that the plan does not know
 * @example
 * ```ts
 * import { advise, planById, readSweeps } from "@feedpoint/core";
 *
 * const [sweep] = readSweeps(`Frequency (MHz),SWR
 * 6.4,3.6
 * 6.6,2.4
 * 6.8,1.4
 * 7.0,1.9
 * 7.2,3.0
 * 7.4,4.1
 * 7.6,5.2
 * `);
 * advise(sweep, { plan: planById("itu-r1"), bands: ["40m"] }).advice[0]?.kind; // → "wire"
 * ```
 */
export function advise(given: Sweep | Deployment, options: AdviseOptions): AdviseResult {
  const deployment = asDeployment(given);
  checkAdviseOptions(options);
  const { feedline = null, isAtAntenna = false, equipment = {}, leastArriving = LEAST_ARRIVING } = options;
  const { fixed = equipment.antenna?.fixed } = options;
  const known = knownOf(deployment, options);
  const { limits } = known;
  const antenna = antennaOf(known.parts, feedline);
  const wanted = wantedOf(options, known, antenna);
  const foretold = wanted.filter(({ notForetold }) => notForetold === null);
  const wishes = foretold.map(({ wish }) => wish);
  const terms = termsOf(equipment, limits, leastArriving, antenna.parts[0]?.analysis.curve.sweep.referenceOhms);
  const wireLengthM = equipment.antenna?.wireLengthM ?? null;
  const lowestHz = Math.min(...wishes.map((wish) => bandOf(wish).lowHz));
  const followingAt = followingOf(fixed, wireLengthM, lowestHz);
  const follows: Follows = (frequencyHz) => followingAt(frequencyHz).usual;
  const tell = viewOf(antenna, gridOf(wishes, POINTS), terms, follows);
  const errors = foretold.map(({ error }) => error);
  const isLineKnown = antenna.feedline !== null || isAtAntenna;
  const doubts = doubtsOf(antenna, wishes, errors, terms, followingAt, isLineKnown);
  const unsure = unsureEnds(tell);
  const now = wishesNow(wanted, wishes, tell, doubts, antenna.hasPhase ? limits.swr : null, unsure);
  const told = now.flatMap((wish) => wish.now ?? []);
  const isGood = told.length > 0 && told.every(({ withoutTuner }) => withoutTuner >= GOOD_ENOUGH);
  // What comes back through a line that nobody told of may be that line's own end, open or shorted.
  const isAntennaSeen = isLineKnown || seesAntenna(tell, limits.wideRangeTunerSwr);
  const ends = antenna.feedline !== null ? "antenna-and-radio" : isAtAntenna ? "antenna" : "analyser";
  const { powerW, isPowerStated } = powerOf(equipment);
  const staysCool = (candidate: Candidate) => advisedParts(tell, candidate, powerW).every(isBearable);
  const { chosen, tooHot } =
    isGood || wishes.length === 0 || !isAntennaSeen
      ? NO_CHOICE
      : choose(bestCandidates(antenna, wishes, terms, follows, options), doubts, staysCool);
  const advice = chosen.map(({ candidate, outlook }) => ({
    kind: candidate.kind,
    what: whatToDo(candidate, tell, ends, wireLengthM),
    lengthChange: candidate.lengthChange,
    lengthChangeM: wireLengthM === null ? null : wireLengthM * candidate.lengthChange,
    parts: advisedParts(tell, candidate, powerW),
    outcomes: outcomesOf(tell, candidate, outlook.reached),
  }));
  const curves = antenna.parts.map(({ analysis }) => analysis.curve);
  return {
    schema: "feedpoint/try@1",
    sweep: deploymentInfo(deployment),
    plan: planInfo(options),
    limits,
    feedline,
    ends,
    ...toldOfFixed(fixed),
    wireLengthM,
    powerW,
    isPowerStated,
    leastArriving,
    verdict: verdictOf(wishes, isGood, isAntennaSeen, chosen),
    wishes: now,
    advice,
    experiment: experimentWorthDoing(openQuestions(antenna, known, now, wishes, terms, isLineKnown)),
    curves: curvesOf(tell, chosen),
    findings: [
      ...planFindings(options, wishes.map(bandOf)),
      ...curves.flatMap(spikeFindings),
      ...lossFindings(curves).filter(({ severity }) => severity !== "info"),
      ...(feedline === null ? [] : feedlineFindings(deployment.parts, feedline, [])),
      ...referenceFindings(deployment.parts, equipment.radio?.ohms),
      ...(advice.some(({ lengthChange }) => lengthChange !== 0) ? fixedFindings(fixed, wireLengthM) : []),
      ...adviseFindings(now, equipment, { ends, powerW, isPowerStated, advice }, antenna.hasPhase),
      ...(tooHot === 0 ? [] : [finding("info", "advice-too-hot", { count: tooHot, powerW })]),
      ...endFindings(wishes, unsure, antenna.feedline),
    ],
    cautions: [
      ...ADVICE_CAUTIONS,
      ...(hasBalanced(advice) ? [BALANCED_CAUTION] : []),
      ...cautionsFor({ hasHighVoltage: true }),
    ],
  };
}

/** Each wish with what it is like as it is. */
function wishesNow(
  wanted: readonly Wanted[],
  wishes: readonly Wish[],
  tell: View,
  doubts: Doubts,
  limitSwr: number | null,
  unsure: ReadonlySet<number>,
): readonly WishNow[] {
  const outcomes = wishes.length === 0 ? [] : outcomesOf(tell, AS_IS, outlookOf(doubts, AS_IS).reached);
  return wanted.map(({ wish, notForetold, noted }) => {
    const { title, band, pieces, weight, mode } = wish;
    const place = wishes.indexOf(wish);
    return {
      title,
      band,
      pieces,
      weight,
      mode: mode?.name ?? null,
      notForetold,
      now: outcomes[place] ?? (noted && notedOutcome(noted, tell.terms)),
      limit: place < 0 || limitSwr === null || unsure.has(place) ? null : matchLimit(tell, place, limitSwr),
    };
  });
}

/** Whether anything within what is wanted is matched well enough to be an antenna. */
function seesAntenna(tell: View, greatestSwr: number): boolean {
  const greatest = reflectionMagnitudeFromSwr(greatestSwr);
  return tell.grid.wishes.some((_, wish) => magnitudesOf(tell, AS_IS, wish).some((rho) => rho < greatest));
}

/** What readings by hand tell of a wish: nothing of what arrives. */
function notedOutcome(noted: UsableShares, { tunedMagnitude, magnitude }: Terms): WishOutcome {
  const reached =
    tunedMagnitude > magnitude ? Math.max(noted.withoutTuner, noted.withBuiltInTuner) : noted.withoutTuner;
  return { reached, reachedBetween: { low: reached, high: reached }, withoutTuner: noted.withoutTuner, arrives: null };
}

function verdictOf(
  wishes: readonly Wish[],
  isGood: boolean,
  isAntennaSeen: boolean,
  chosen: readonly Chosen[],
): AdviseVerdict {
  if (isGood) return "leave-it";
  if (wishes.length === 0 || !isAntennaSeen) return "measure-first";
  return chosen.length > 0 ? "try" : "nothing-better";
}

/** ρ over each wish, as it is and with the first advice. */
function curvesOf(tell: View, [first]: readonly Chosen[]): AdviseResult["curves"] {
  return tell.grid.wishes.map(({ title }, wish) => ({
    title,
    frequencyHz: [...frequenciesOf(tell, wish)],
    before: magnitudesOf(tell, AS_IS, wish),
    after: first === undefined ? [] : magnitudesOf(tell, first.candidate, wish),
  }));
}
