import { type CauseCode, deploymentOf, diff, planById, type Sweep, scalarSweep, vectorSweep } from "@feedpoint/core";
import {
  ANTENNA_FAMILIES,
  applicable,
  CHANGES,
  type ChangeName,
  type FamilyName,
  makePair,
  type SweptPart,
  type ViewRange,
} from "./strange-pairs/pairs.js";
import { present } from "./sweeps.js";

const plan = present(planById("itu-r1"), "itu-r1");

export const RANGES: readonly ViewRange[] = ["wide", "fifteen", "band", "joined"];

/** Families that the thresholds of diff were chosen by, and those held out: every other one. */
export const familiesOf = (half: "tuned" | "held-out"): readonly FamilyName[] =>
  ANTENNA_FAMILIES.filter((_, i) => (i % 2 === 0) === (half === "tuned"));

/** What may be told as likely of each change; of those not named here only the antenna. */
const MAY_BE_LIKELY: Readonly<Partial<Record<ChangeName, readonly CauseCode[]>>> = {
  nothing: [],
  "another-sweep": ["resonance-moved"],
  "another-calibration": [],
  "line-longer": ["line-length-changed"],
  "line-shorter": ["line-length-changed"],
  "line-75-added": ["line-length-changed"],
  "lossy-line": ["loss-added"],
  "dielectric-loss": ["loss-added"],
  "fixed-loss": ["loss-added"],
  "reference-changed": ["reference-changed"],
  "wire-longer": ["resonance-moved", "antenna-changed"],
  "wire-shorter": ["resonance-moved", "antenna-changed"],
  "wire-and-line": ["resonance-moved", "line-length-changed", "antenna-changed"],
  "water-on-wire": ["resonance-moved", "antenna-changed", "loss-added"],
  "resistance-parallel": ["loss-added", "antenna-changed"],
  "choke-feed": ["loss-added", "antenna-changed"],
  "resistance-series-plug": ["resistance-added", "loss-added", "antenna-changed"],
  "resistance-series-feed": ["resistance-added", "loss-added", "antenna-changed"],
  "coil-series-plug": ["coil-added", "antenna-changed"],
  "capacitor-series-plug": ["capacitor-added", "antenna-changed"],
  "capacitor-across-plug": ["capacitor-added", "antenna-changed"],
};

/** The same without phase: of a longer line its loss is all that shows. */
const MAY_BE_LIKELY_WITHOUT_PHASE: typeof MAY_BE_LIKELY = {
  ...MAY_BE_LIKELY,
  "line-longer": ["loss-added"],
  "line-shorter": ["loss-removed"],
};

/** Changes that add loss, in the line; with those that add a resistance. */
export const LINE_LOSSES: ReadonlySet<ChangeName> = new Set<ChangeName>([
  "lossy-line",
  "dielectric-loss",
  "fixed-loss",
]);
export const LOSSES: ReadonlySet<ChangeName> = new Set<ChangeName>([
  ...LINE_LOSSES,
  "resistance-series-plug",
  "resistance-series-feed",
]);

type StrangeOutcome = "right" | "wrong" | "possible" | "nothing";

export interface StrangeScore {
  readonly change: ChangeName;
  readonly family: FamilyName;
  readonly seed: number;
  readonly range: ViewRange;
  /** right: what is likely may be so; wrong: something likely is not; else nothing is likely, and something possible or not */
  readonly outcome: StrangeOutcome;
  readonly likely: readonly CauseCode[];
  /** Called better on some band; and without a word of loss */
  readonly isImproved: boolean;
  readonly isSilent: boolean;
}

/** Runs diff on one pair of each family and change that fit together, for each seed; of these every so many. */
export function strangeScores(
  families: readonly FamilyName[],
  range: ViewRange,
  seeds: readonly number[],
  { every = 1, asSweep = sweepOfPart }: { readonly every?: number; readonly asSweep?: (part: SweptPart) => Sweep } = {},
): readonly StrangeScore[] {
  const cases = families.flatMap((family) =>
    CHANGES.filter((change) => applicable(family, change)).flatMap((change) =>
      seeds.map((seed) => ({ family, change, seed: seed + 31 * CHANGES.indexOf(change) })),
    ),
  );
  return cases
    .filter((_, i) => i % every === 0)
    .map(({ family, change, seed }) => {
      const { before, after } = makePair(seed, { family, change, range });
      const { bands, causes, findings } = diff(deploymentOf(before.map(asSweep)), deploymentOf(after.map(asSweep)), {
        plan,
      });
      const likely = causes.filter(({ confidence }) => confidence === "likely").map(({ code }) => code);
      const told = likely.filter((code) => code !== "interference");
      const isImproved = bands.some(({ verdict }) => verdict === "improved");
      const mentions = [...causes, ...findings].some(({ code }) => /loss|resistance/.test(code));
      return {
        change,
        family,
        seed,
        range,
        likely,
        isImproved,
        isSilent: isImproved && !mentions,
        outcome: outcomeOf(
          asSweep === scalarOfPart ? MAY_BE_LIKELY_WITHOUT_PHASE : MAY_BE_LIKELY,
          change,
          told,
          causes.length,
        ),
      };
    });
}

function outcomeOf(
  mayBeLikely: typeof MAY_BE_LIKELY,
  change: ChangeName,
  likely: readonly CauseCode[],
  causes: number,
): StrangeOutcome {
  const allowed = mayBeLikely[change] ?? ["antenna-changed"];
  if (likely.some((code) => !allowed.includes(code))) return "wrong";
  if (likely.length > 0) return "right";
  return causes > 0 ? "possible" : "nothing";
}

/** A part of a pair as a sweep. */
export const sweepOfPart = ({ label, frequencyHz, real, imaginary }: SweptPart) =>
  vectorSweep(
    { label, referenceOhms: 50 },
    {
      frequencyHz: Float64Array.from(frequencyHz),
      reflectionReal: Float64Array.from(real),
      reflectionImaginary: Float64Array.from(imaginary),
    },
  );

/** The same without phase, as an SWR printed with two decimals. */
export const scalarOfPart = ({ label, frequencyHz, real, imaginary }: SweptPart) =>
  scalarSweep(
    { label, referenceOhms: 50 },
    {
      frequencyHz: Float64Array.from(frequencyHz),
      reflectionMagnitude: Float64Array.from(real, (value, i) => asPrinted(Math.hypot(value, imaginary[i] ?? 0))),
    },
  );

function asPrinted(rho: number): number {
  const swr = Number(((1 + Math.min(rho, 0.999)) / (1 - Math.min(rho, 0.999))).toFixed(2));
  return (swr - 1) / (swr + 1);
}
