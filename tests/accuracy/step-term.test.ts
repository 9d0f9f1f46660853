/**
 * What the step of a sweep may hide is part of its intervals: with next to no noise, on families of invented antennas that are held
 * out, they hold with it and do not without.
 */
import { describe, expect, test } from "vitest";
import { curveOf } from "../../packages/core/src/curve/curve.js";
import { extremesOver } from "../../packages/core/src/curve/pieces.js";
import { traceOf } from "../../packages/core/src/curve/trace.js";
import {
  bandUncertainty,
  type Grounds,
  groundsOf,
} from "../../packages/core/src/curve/uncertainty/band-uncertainty.js";
import { scalarSweep, vectorSweep } from "../../packages/core/src/sweep/sweep.js";
import { seededNormal, seededUniform } from "../support/seeded-noise.js";
import type { Response } from "../support/strange-antennas/circuit.js";
import { BANDS } from "../support/strange-antennas/draws.js";
import { antennaFamilies } from "../support/strange-antennas/families.js";
import { present } from "../support/sweeps.js";

const NOISE = 1e-5;
const STEP_HZ = 3e5;
const LOW_HZ = 1e6;
const SAMPLES = 98;
/** Bands without an SWR below 6 need no interval. */
const HOPELESS = 5 / 7;
const LIMIT = 1 / 3;
const NOTHING_ELSE = { instrument: null, scatter: 0 };

function groundsFor(response: Response, kind: string, seed: number): Grounds {
  const normal = seededNormal(seed * 6007);
  const startHz = LOW_HZ + STEP_HZ * seededUniform(seed + 400)();
  const frequencyHz = Float64Array.from({ length: SAMPLES }, (_, i) => startHz + i * STEP_HZ);
  const real = frequencyHz.map((hz) => response(hz).re + NOISE * normal());
  const imaginary = frequencyHz.map((hz) => response(hz).im + NOISE * normal());
  const details = { label: "invented", referenceOhms: 50 };
  const sweep =
    kind === "vector"
      ? vectorSweep(details, { frequencyHz, reflectionReal: real, reflectionImaginary: imaginary })
      : scalarSweep(details, {
          frequencyHz,
          reflectionMagnitude: real.map((re, i) => Math.hypot(re, imaginary[i] ?? 0)),
        });
  return present(groundsOf(traceOf(curveOf(sweep))), "grounds");
}

/** The share of best and worst ρ over all bands that their intervals hold. */
function shareHeld(kind: string, change: (grounds: Grounds) => Grounds): number {
  const held = antennaFamilies("held-out").flatMap((family) =>
    [41, 42, 43].flatMap((seed) => {
      const response = family.draw(seededUniform(seed));
      const grounds = change(groundsFor(response, kind, seed));
      return BANDS.flatMap(({ lowHz, highHz }) => {
        const truth = Array.from({ length: Math.round((highHz - lowHz) / 1000) + 1 }, (_, i) => {
          const { re, im } = response(lowHz + 1000 * i);
          return Math.hypot(re, im);
        });
        const [least, greatest] = [Math.min(...truth), Math.max(...truth)];
        const pieces = [{ lowHz, highHz }];
        const bestHz = extremesOver(grounds.trace, pieces)?.best.frequencyHz;
        if (least > HOPELESS || bestHz === undefined) return [];
        const told = bandUncertainty(grounds, pieces, LIMIT, bestHz, null, NOTHING_ELSE);
        if (told === null) return [];
        const { bestMagnitude: best, worstMagnitude: worst } = told;
        return [best.low <= least && least <= best.high, worst.low <= greatest && greatest <= worst.high];
      });
    }),
  );
  expect(held.length).toBeGreaterThan(200);
  return held.filter((holds) => holds).length / held.length;
}

const withoutStep = (grounds: Grounds): Grounds => ({
  ...grounds,
  viewsBetween: (low, high) => ({ ...grounds.viewsBetween(low, high), thinned: [] }),
});

describe.each(["vector", "scalar"])("intervals of a %s sweep in coarse steps", (kind) => {
  test("hold with the term for the step, and not without", () => {
    expect(shareHeld(kind, (grounds) => grounds)).toBeGreaterThanOrEqual(0.92);
    expect(shareHeld(kind, withoutStep)).toBeLessThan(0.9);
  });
});
