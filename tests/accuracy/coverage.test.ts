/**
 * The stated 95 % intervals hold the truth about 95 times in a hundred: over 1,008 simulated sweeps of modelled antennas,
 * steps of 10 to 300 kHz, noise of 0.0005 to 0.01, vector and scalar. The truth comes from the model's fine grid without
 * the library.
 */
import { type BandPlan, type BandResult, check, type Interval, planById } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { COAX, modelled, sweepModelled } from "../support/modelled-sweeps.js";
import { bandTruth, bestFrequencyHz, readNec } from "../support/nec-truth.js";
import { present } from "../support/sweeps.js";

const SEEDS_EACH = 14;
const ANTENNAS = [
  { name: "vee-40m", line: COAX, lowHz: 7_000_000, highHz: 7_200_000 },
  { name: "dipole-20m", line: null, lowHz: 14_000_000, highHz: 14_350_000 },
  { name: "dipole-10m-wide", line: COAX, lowHz: 28_000_000, highHz: 29_700_000 },
] as const;
const STEPS_HZ = [10_000, 30_000, 100_000, 300_000];
const NOISES = [0.0005, 0.002, 0.01];

/** A plan of one band, so that only what is looked at is reckoned. */
function planOf(lowHz: number, highHz: number): BandPlan {
  const common = present(planById("itu-common"), "the common plan");
  const segment = { lowHz, highHz, use: "allocation", confirmed: true, sources: [] };
  return { ...common, bands: [{ band: "band", lowHz, highHz, segments: [segment] }] };
}

const tally = new Map<string, { hits: number; tries: number }>();

function count(what: string, interval: Interval | null | undefined, truth: number): void {
  if (!interval) return;
  const entry = tally.get(what) ?? { hits: 0, tries: 0 };
  entry.tries++;
  if (truth >= interval.low && truth <= interval.high) entry.hits++;
  tally.set(what, entry);
}

for (const { name, line, lowHz, highHz } of ANTENNAS) {
  const antenna = readNec(name);
  const model = modelled(antenna, line);
  const truth = bandTruth(model.fine, lowHz, highHz);
  const bestHz = bestFrequencyHz(antenna, line, lowHz, highHz);
  const plan = planOf(lowHz, highHz);
  for (const kind of ["vector", "scalar"] as const) {
    for (const stepHz of STEPS_HZ) {
      for (const noise of NOISES) {
        for (let seed = 1; seed <= SEEDS_EACH; seed++) {
          const sweep = sweepModelled(model, { kind, stepHz, noise, seed: seed * 7919 + stepHz / 1000 });
          const { uncertainty } = check(sweep, { plan }).bands[0] as BandResult;
          count("best SWR", uncertainty?.bestMagnitude, truth.bestRho);
          count("best frequency", uncertainty?.bestHz, bestHz);
          count("worst SWR", uncertainty?.worstMagnitude, truth.worstRho);
          count("low edge", uncertainty?.lowEdgeHz, truth.lowEdgeHz);
          count("high edge", uncertainty?.highEdgeHz, truth.highEdgeHz);
        }
      }
    }
  }
}

describe("the stated 95 % interval", () => {
  test.each(["best SWR", "best frequency", "worst SWR", "low edge", "high edge"])(
    "of the %s holds the truth 93 to 97 times in a hundred",
    (what) => {
      const { hits, tries } = present(tally.get(what), what);
      expect(tries).toBeGreaterThan(950);
      expect((100 * hits) / tries).toBeGreaterThan(93);
      expect((100 * hits) / tries).toBeLessThan(97);
    },
  );
});
