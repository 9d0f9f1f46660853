/** A band and sweeps of it whose numbers follow from closed forms. All are invented. */
import { DEFAULT_LIMITS, type Sweep, type UsableBand, usableBands } from "@feedpoint/core";
import { type Analysis, analyse } from "../../packages/core/src/bands/analysis.js";
import { type Answering, answeringOn, type Part, partsOf } from "../../packages/core/src/bands/parts.js";
import { type BandSummary, type Summarised, summarised } from "../../packages/core/src/bands/summary.js";
import { type SideCurve, sideCurve } from "../../packages/core/src/jobs/diff/side-curve.js";
import { asDeployment } from "../../packages/core/src/sweep/deployment.js";
import { inventedPlan } from "./invented-plan.js";
import { evenly, type Pair, present, reflectionOf, sweepOfReflections } from "./sweeps.js";

export const analysed = (sweep: Sweep): Analysis => analyse(sweep, DEFAULT_LIMITS);

/** For what asks for a plan though no band was noted by its name. */
export const SOME_PLAN = inventedPlan([{ lowHz: 7.0e6, highHz: 7.2e6 }]);

/** A sweep as all that is known of its deployment. */
export const partFor = (sweep: Sweep): Part =>
  present(partsOf(asDeployment(sweep), DEFAULT_LIMITS, SOME_PLAN)[0], "the part");

/** The same, asked about a band. */
export const answeringFor = (sweep: Sweep, band: UsableBand): readonly Answering[] =>
  answeringOn([partFor(sweep)], band.pieces);

/** What a sweep says of a band, and from where. */
const summarisedFor = (sweep: Sweep, band: UsableBand): Summarised =>
  summarised(answeringFor(sweep, band), band, DEFAULT_LIMITS);

export const summaryFor = (sweep: Sweep, band: UsableBand): BandSummary => summarisedFor(sweep, band).summary;

/** A sweep as one side of a comparison knows it. */
export const sideCurveFor = (sweep: Sweep): SideCurve => present(sideCurve([partFor(sweep)]), "the curve");

/** The band 40m with one segment for each pair of edges. */
export const bandOf = (first: Pair, ...others: readonly Pair[]): UsableBand =>
  present(usableBands(inventedPlan([segment(first), ...others.map(segment)]), null)[0], "the band");

const segment = ([lowHz, highHz]: Pair) => ({ lowHz, highHz });

/** A series resonance at the analyser. */
export interface SeriesResonance {
  readonly resonanceHz: number;
  readonly ohms: number;
  readonly q: number;
}

/** Every 10 kHz from 6.5 to 7.8 MHz unless said. */
const AXIS = evenly(6.5e6, 7.8e6, 10_000);

export const resonanceSweep = ({ resonanceHz, ohms, q }: SeriesResonance, axis: readonly number[] = AXIS) =>
  sweepOfReflections(
    axis,
    axis.map((frequency) => reflectionOf([ohms, ohms * q * (frequency / resonanceHz - resonanceHz / frequency)])),
  );

/**
 * Where a series resonance meets an SWR limit at 50 Ω, below and above. With r = R / 50 Ω the reactance there is
 * X² = (50 Ω)² (r (s + 1/s) - r² - 1), from (1 + ρ²) / (1 - ρ²) = (s + 1/s) / 2; then f/f0 - f0/f = X / (Q R).
 */
export function limitEdges({ resonanceHz, ohms, q }: SeriesResonance, limitSwr: number): Pair {
  const r = ohms / 50;
  const reactance = 50 * Math.sqrt(r * (limitSwr + 1 / limitSwr) - r * r - 1);
  const half = reactance / (q * ohms) / 2;
  const root = Math.sqrt(1 + half * half);
  return [resonanceHz * (root - half), resonanceHz * (root + half)];
}
