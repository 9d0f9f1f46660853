/**
 * Whether the intervals that check states hold the truth, on families of antennas, kinds of sweep and steps. All antennas are invented;
 * the truth comes from their models without the library.
 */
import { type BandPlan, check, type Interval, planById, readSweeps, type Sweep, vectorSweep } from "@feedpoint/core";
import { seededNormal, seededUniform } from "./seeded-noise.js";
import { BANDS, type Band } from "./strange-antennas/draws.js";
import type { Family } from "./strange-antennas/families.js";
import { present } from "./sweeps.js";

export const STEPS = ["25 kHz", "50 kHz", "100 kHz", "300 kHz"] as const;
export const SWEPT_AS = ["vector", "scalar"] as const;
export const QUANTITIES = ["best SWR", "best at", "worst SWR", "low edge", "high edge", "within"] as const;

export interface IntervalScore {
  readonly family: string;
  readonly kind: (typeof SWEPT_AS)[number];
  readonly step: (typeof STEPS)[number];
  readonly quantity: (typeof QUANTITIES)[number];
  readonly holds: boolean;
}

const LOW_HZ = 1e6;
const HIGH_HZ = 30.5e6;
/** ρ at the limit of 2:1. */
const LIMIT = 1 / 3;
/** Noise of a sweep, in each part of Γ, before anything is printed. */
const NOISE = { vector: 0.002, scalar: 0.001 } as const;
/** Bands without an SWR below 10 need no interval. */
const HOPELESS = 9 / 11;

const planOfBands: BandPlan = {
  ...present(planById("itu-common"), "the common plan"),
  bands: BANDS.map(({ band, lowHz, highHz }) => ({
    band,
    lowHz,
    highHz,
    segments: [{ lowHz, highHz, use: "allocation", confirmed: true, sources: [] }],
  })),
};

/** What becomes of each interval of each band of wide sweeps that no finding warns of the step. */
export function intervalScores(
  families: readonly Family[],
  seeds: readonly number[],
  kind: IntervalScore["kind"],
  step: IntervalScore["step"],
): readonly IntervalScore[] {
  const stepHz = 1000 * Number.parseInt(step, 10);
  return families.flatMap((family) =>
    seeds.flatMap((seed) => {
      const response = family.draw(seededUniform(seed));
      const rho = (hz: number) => {
        const { re, im } = response(hz);
        return Math.hypot(re, im);
      };
      const { bands, findings } = check(sweepOf(response, kind, stepHz, seed), { plan: planOfBands });
      const warned = new Set(
        findings.flatMap(({ code, band }) =>
          code === "step-too-coarse" || code === "dip-on-few-samples" ? [band] : [],
        ),
      );
      return bands.flatMap(({ band, uncertainty }) => {
        const place = present(
          BANDS.find((each) => each.band === band),
          band,
        );
        if (uncertainty === null || warned.has(band)) return [];
        const truth = truthOf(rho, place);
        if (truth.best > HOPELESS) return [];
        const held: readonly [IntervalScore["quantity"], Interval | null, number | null][] = [
          ["best SWR", uncertainty.bestMagnitude, truth.best],
          ["best at", truth.isDip ? uncertainty.bestHz : null, truth.bestHz],
          ["worst SWR", uncertainty.worstMagnitude, truth.worst],
          ["low edge", uncertainty.lowEdgeHz, nearTo(place, truth.lowEdgeHz)],
          ["high edge", uncertainty.highEdgeHz, nearTo(place, truth.highEdgeHz)],
          ["within", truth.isPartly ? uncertainty.withinHz : null, truth.withinHz],
        ];
        return held.flatMap(([quantity, interval, value]) =>
          interval === null || value === null
            ? []
            : [{ family: family.name, kind, step, quantity, holds: value >= interval.low && value <= interval.high }],
        );
      });
    }),
  );
}

/** An edge far from a band is that of another one as well, and counts once. */
const NEAR = 0.05;

const nearTo = ({ lowHz, highHz }: Band, hz: number | null): number | null =>
  hz !== null && hz > lowHz * (1 - NEAR) && hz < highHz * (1 + NEAR) ? hz : null;

function sweepOf(
  response: ReturnType<Family["draw"]>,
  kind: IntervalScore["kind"],
  stepHz: number,
  seed: number,
): Sweep {
  const normal = seededNormal(seed * 7919 + stepHz / 1000);
  const count = Math.floor((HIGH_HZ - LOW_HZ) / stepHz) + 1;
  const frequencyHz = Float64Array.from({ length: count }, (_, i) => LOW_HZ + i * stepHz);
  const details = { label: "invented", referenceOhms: 50 };
  const real = frequencyHz.map((hz) => response(hz).re + NOISE[kind] * normal());
  const imaginary = frequencyHz.map((hz) => response(hz).im + NOISE[kind] * normal());
  if (kind === "vector")
    return vectorSweep(details, { frequencyHz, reflectionReal: real, reflectionImaginary: imaginary });
  const rows = real.map((value, i) => Math.hypot(value, imaginary[i] ?? 0));
  const text = Array.from(rows, (rho, i) => `${frequencyHz[i]},${printedSwr(rho)}\n`).join("");
  return readSweeps(`Frequency (Hz),SWR\n${text}`, { fileName: "invented.csv" })[0];
}

/** An SWR as it is printed with two decimals, which ends at 999. */
const printedSwr = (rho: number): string => Math.min(999, rho < 1 ? (1 + rho) / (1 - rho) : 999).toFixed(2);

const FINE_HZ = 500;

/** Best and worst point of a band, what of it is within the limit, and the edges of the span around the best point. */
function truthOf(rho: (hz: number) => number, { lowHz, highHz }: Band) {
  const count = Math.ceil((highHz - lowHz) / FINE_HZ);
  const places = Array.from({ length: count + 1 }, (_, i) => lowHz + ((highHz - lowHz) * i) / count);
  const values = places.map(rho);
  const placeOf = (value: number) => places[values.indexOf(value)] ?? lowHz;
  const rough = placeOf(Math.min(...values));
  const bestHz = leastNear(rho, Math.max(lowHz, rough - FINE_HZ), Math.min(highHz, rough + FINE_HZ));
  const best = rho(bestHz);
  const share = (one: number, other: number) =>
    one <= LIMIT && other <= LIMIT
      ? 1
      : one > LIMIT && other > LIMIT
        ? 0
        : (LIMIT - Math.min(one, other)) / Math.abs(one - other);
  const withinHz = values
    .slice(1)
    .reduce((sum, value, i) => sum + share(values[i] ?? 1, value) * ((highHz - lowHz) / count), 0);
  return {
    best,
    bestHz,
    isDip: bestHz > lowHz + 1 && bestHz < highHz - 1,
    worst: Math.max(...values),
    withinHz,
    isPartly: withinHz > 0 && withinHz < highHz - lowHz - 1,
    lowEdgeHz: best <= LIMIT ? edgeFrom(rho, bestHz, -FINE_HZ) : null,
    highEdgeHz: best <= LIMIT ? edgeFrom(rho, bestHz, FINE_HZ) : null,
  };
}

/** By thirds, which need no more than one valley. */
function leastNear(rho: (hz: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  while (high - low > 0.1) {
    const [one, other] = [low + (high - low) / 3, high - (high - low) / 3];
    if (rho(one) <= rho(other)) high = other;
    else low = one;
  }
  return (low + high) / 2;
}

/** Where ρ leaves the limit in one direction; null beyond what is swept. */
function edgeFrom(rho: (hz: number) => number, fromHz: number, stepHz: number): number | null {
  let hz = fromHz;
  while (rho(hz + stepHz) <= LIMIT) {
    hz += stepHz;
    if (hz < LOW_HZ || hz > HIGH_HZ) return null;
  }
  const [inside, outside] = [rho(hz), rho(hz + stepHz)];
  return hz + (stepHz * (LIMIT - inside)) / (outside - inside);
}
