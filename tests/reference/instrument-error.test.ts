/**
 * The instrument's error against published and computed values.
 *
 * Sources: Agilent AN 1287-3, Applying Error Correction to VNA Measurements (worked case, second-hand): return loss 20 dB,
 * directivity 35 dB, source match 30 dB reads as 18.6 to 21.7 dB. What directivity does to a perfect load: computed with
 * numpy as (1 + 10^(-D/20)) / (1 - 10^(-D/20)); its method is the error model of Agilent 8719ES User's Guide, p. 7-43.
 */
import { check, instrumentError, planById, returnLossDb, swrFromReflectionMagnitude } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { evenly, present, sweepOfReflections } from "../support/sweeps.js";

describe("a perfect load", () => {
  test.each([
    [20, 1.22222222],
    [30, 1.06531086],
    [35, 1.03620949],
    [40, 1.02020202],
    [46, 1.01007424],
  ])("may read up to SWR through directivity of %d dB: %d", (directivityDb, swr) => {
    expect(swrFromReflectionMagnitude(instrumentError(0, { directivityDb }))).toBeCloseTo(swr, 8);
  });
});

test("the worked case of AN 1287-3: 18.6 to 21.7 dB", () => {
  const error = instrumentError(0.1, { directivityDb: 35, sourceMatchDb: 30 });
  expect(returnLossDb(0.1 + error)).toBeCloseTo(18.6, 1);
  expect(returnLossDb(0.1 - error)).toBeCloseTo(21.7, 1);
});

test("tracking of 1 dB adds 12.2 % of the reflection", () => {
  expect(instrumentError(1, { directivityDb: 400, trackingDb: 1 })).toBeCloseTo(0.1220184543, 9);
});

/** True SWR behind an indicated one, by directivity alone; computed with numpy. */
describe("an indicated SWR of 1.5", () => {
  const axis = evenly(6_900_000, 7_400_000, 10_000);
  const sweep = sweepOfReflections(
    axis,
    axis.map(() => [0.2, 0]),
  );
  test.each([
    [30, 1.4049365, 1.6028882],
    [35, 1.4456372, 1.5568346],
    [40, 1.4691358, 1.5316456],
  ])("with directivity of %d dB lies between %d and %d", (directivityDb, low, high) => {
    const plan = present(planById("itu-r2"), "the plan");
    const [band] = check(sweep, { plan, bands: ["40m"], instrument: { directivityDb } }).bands;
    expect(band?.best?.swrLow).toBeCloseTo(low, 6);
    expect(band?.best?.swrHigh).toBeCloseTo(high, 6);
  });
});
