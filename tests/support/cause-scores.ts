import { type CauseCode, diff, planById } from "@feedpoint/core";
import { axisOf, type CausePair, causePairs, sweepOfView } from "./cause-pairs.js";
import { present } from "./sweeps.js";

const plan = present(planById("itu-common"), "itu-common");

/** What diff makes of a pair in which the cause is known. */
export interface CauseScore {
  readonly pair: CausePair;
  readonly reported: readonly CauseCode[];
  /** Errors of what was found, where the truth has it: m (electrical), dB at 10 MHz, share of the scale */
  readonly lengthErrorM: number | null;
  readonly lossErrorDb: number | null;
  readonly scaleError: number | null;
  readonly isImproved: boolean;
}

/** Runs diff on every so many pairs, with noise of a standard deviation in each part of Γ. */
export function causeScores(noise: number, seeds: readonly number[], every = 1): readonly CauseScore[] {
  const pairs = causePairs().filter((_, i) => i % every === 0);
  return pairs.flatMap((pair) => seeds.map((seed) => scoreOf(pair, noise, seed)));
}

function scoreOf(pair: CausePair, noise: number, seed: number): CauseScore {
  const axis = axisOf(pair.before.antenna);
  const { causes, bands } = diff(
    sweepOfView(pair.before, axis, noise, 7 * seed),
    sweepOfView(pair.after, axis, noise, 7 * seed + 3),
    { plan, bands: ["80m", "40m", "20m"] },
  );
  const likely = causes.filter(({ confidence }) => confidence === "likely");
  const found = Object.assign({}, ...likely.map(({ evidence }) => evidence)) as Record<string, number>;
  const error = (value: number | undefined, truth: number | undefined) =>
    value === undefined || truth === undefined ? null : Math.abs(value - truth);
  const { addedM, addedDbAt10MHz, scale } = pair.truth;
  return {
    pair,
    reported: likely.map(({ code }) => code),
    lengthErrorM: error(found.electricalLengthM, addedM),
    lossErrorDb: error(found.lossAt10MHzDb, addedDbAt10MHz),
    scaleError: scale === undefined ? null : error((found.frequencyScale ?? Number.NaN) / scale, 1),
    isImproved: bands.some(({ verdict }) => verdict === "improved"),
  };
}

/** Whether all that is to be told was reported, and nothing that did not change. */
export const isRight = ({ pair, reported }: CauseScore): boolean =>
  pair.causes.every((code) => reported.includes(code)) &&
  reported.every((code) => pair.causes.includes(code) || (pair.besides ?? []).includes(code));
