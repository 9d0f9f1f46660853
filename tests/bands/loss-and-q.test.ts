/** The loss that a sweep allows, and Q from its impedance, both from closed form. Sweeps are invented. */
import { curveOf, lossBound } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { bandwidthFromQ, impedanceQ } from "../../packages/core/src/bands/impedance-q.js";
import type { VectorCurve } from "../../packages/core/src/curve/curve.js";
import { rampSweep } from "../support/invented-plan.js";
import { limitEdges, resonanceSweep } from "../support/judged.js";
import { evenly, present, sweepOfMagnitudes } from "../support/sweeps.js";

describe("the loss that a sweep allows", () => {
  const flat = (rho: number, lastHz: number, points: number) => rampSweep([3e6, lastHz], [rho, rho], points);

  test("is half of the least return loss, where that is", () => {
    const bound = present(lossBound(rampSweep([3e6, 6e6], [0.2, 0.5])), "a bound");
    expect(bound).toMatchObject({ frequencyHz: 6e6 });
    expect(bound.reflectionMagnitude).toBeCloseTo(0.5, 9);
    expect(bound.lossDb).toBeCloseTo(10 * Math.log10(2), 9);
    expect(lossBound(rampSweep([3e6, 6e6], [0.5, 0.2]))?.frequencyHz).toBe(3e6);
  });

  test("is none where more comes back than went out", () => {
    expect(lossBound(flat(1.01, 6e6, 20))?.lossDb).toBe(0);
  });

  test("is told of an octave or more, of ten points or more, and not of single readings", () => {
    expect(lossBound(flat(0.9, 5.99e6, 20))).toBeNull();
    expect(lossBound(flat(0.9, 6e6, 9))).toBeNull();
    expect(lossBound(flat(0.9, 6e6, 10))).not.toBeNull();
    expect(lossBound({ ...flat(0.9, 6e6, 20), continuity: "spots" })).toBeNull();
  });

  test("is not told of well matched stretches that make no octave together", () => {
    const axis = [...evenly(3e6, 4e6, 20_000), ...evenly(7e6, 8e6, 20_000)];
    const stretches = (rho: number) =>
      lossBound(
        sweepOfMagnitudes(
          axis,
          axis.map(() => rho),
        ),
      );
    expect(stretches(0.7)).toBeNull();
    expect(stretches(0.85)).not.toBeNull();
    const wider = [...evenly(3e6, 5e6, 20_000), ...evenly(7e6, 9e6, 20_000)];
    expect(
      lossBound(
        sweepOfMagnitudes(
          wider,
          wider.map(() => 0.7),
        ),
      ),
    ).not.toBeNull();
  });
});

describe("Q", () => {
  test("of a series resonance from its impedance, beside the resonance as well", () => {
    const curve = curveOf(resonanceSweep({ resonanceHz: 7.1e6, ohms: 60, q: 20 })) as VectorCurve;
    expect(impedanceQ(curve, 7.1e6)).toBeCloseTo(20, 2);
    // f / (2 R) (X' + |X| / f) with X = Q R (f/f0 - f0/f): Q f/f0 above it, Q f0/f below.
    expect(impedanceQ(curve, 7.3e6)).toBeCloseTo((20 * 7.3) / 7.1, 2);
    expect(impedanceQ(curve, 6.9e6)).toBeCloseTo((20 * 7.1) / 6.9, 2);
    expect(impedanceQ(curve, 6.5e6)).toBeNull();
    expect(impedanceQ(curve, 7.8e6)).toBeNull();
  });

  test("of what gives power back is none", () => {
    const curve = curveOf(resonanceSweep({ resonanceHz: 7.1e6, ohms: -20, q: 20 })) as VectorCurve;
    expect(impedanceQ(curve, 7.1e6)).toBeNull();
  });

  test.each([
    [20, 50, 2],
    [10, 80, 2],
    [15, 30, 3],
  ])("of %d at %d Ω makes the bandwidth at %d:1 that the closed form has", (q, ohms, limitSwr) => {
    const [lowHz, highHz] = limitEdges({ resonanceHz: 7.1e6, ohms, q }, limitSwr);
    expect(bandwidthFromQ(q, ohms, 50, limitSwr, 7.1e6)).toBeCloseTo(highHz - lowHz, 3);
  });

  test("makes no bandwidth where the limit is never met", () => {
    expect(bandwidthFromQ(20, 100, 50, 2, 7.1e6)).toBeNull();
    expect(bandwidthFromQ(20, 99.9, 50, 2, 7.1e6)).not.toBeNull();
  });
});
