/** The invented band 40m on two sides of which all is known, for the tests of what changed on it. */
import { DEFAULT_LIMITS, DEFAULT_THRESHOLDS, type Instrument, type Sweep } from "@feedpoint/core";
import { type BandDiff, diffBand } from "../../packages/core/src/jobs/diff/band-diff.js";
import type { Cause } from "../../packages/core/src/jobs/diff/cause.js";
import { type Side, sideOf } from "../../packages/core/src/jobs/diff/sides.js";
import { asDeployment } from "../../packages/core/src/sweep/deployment.js";
import { rampSweep } from "../support/invented-plan.js";
import { bandOf, SOME_PLAN } from "../support/judged.js";
import { type Pair, present } from "../support/sweeps.js";

export const BAND: Pair = [7.0e6, 7.2e6];
export const flat = (rho: number) => rampSweep(BAND, [rho, rho]);
/** A side of which nothing is known but its sweeps: no noise, no intervals. */
export const sureSide = (...sweeps: readonly Sweep[]): Side => withNoise(0, ...sweeps);
export function withNoise(noise: number | null, ...sweeps: readonly Sweep[]): Side {
  const side = sideOf(
    sweeps.map((sweep) => asDeployment(sweep)),
    DEFAULT_LIMITS,
    SOME_PLAN,
  );
  const all = side.all.map(({ parts, overlaps, curve }) => ({
    parts: parts.map((part) => ({ ...part, grounds: () => null })),
    overlaps,
    curve: { ...present(curve, "the curve"), noise },
  }));
  return { ...side, all, middle: present(all[side.all.indexOf(side.middle)], "the middle") };
}

export interface Asked {
  readonly instrument?: Instrument;
  readonly causes?: readonly Cause[] | null;
  readonly band?: Pair;
  readonly scatter?: number | null;
}
export const compared = (
  first: Side,
  second: Side,
  { instrument, causes = [], band = BAND, scatter = null }: Asked = {},
): BandDiff | null =>
  diffBand(
    bandOf(band),
    first,
    second,
    { thresholds: DEFAULT_THRESHOLDS, instrument: instrument ?? null, limits: DEFAULT_LIMITS, scatter },
    causes,
  );
