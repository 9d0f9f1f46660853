/** What must hold between Γ, ρ, SWR and Z whatever the numbers are; no source needed, all follow from the definitions. */
import {
  admittanceFromImpedance,
  changeReference,
  impedanceFromReflection,
  mismatchLossDb,
  reflectedPowerFraction,
  reflectionFromAdmittance,
  reflectionFromImpedance,
  reflectionMagnitudeFromReturnLoss,
  reflectionMagnitudeFromSwr,
  returnLossDb,
  swrFromReflectionMagnitude,
} from "@feedpoint/core";
import { expect, test } from "vitest";
import { fc } from "../support/property.js";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rho = number(0, 0.999);
/** Γ of a passive load that is not practically an open, where Z has no digits left. */
const reflection = fc
  .record({ magnitude: rho, angle: number(-Math.PI, Math.PI) })
  .map(({ magnitude, angle }) => ({ real: magnitude * Math.cos(angle), imaginary: magnitude * Math.sin(angle) }));
const impedance = fc.record({ real: number(0.01, 1e4), imaginary: number(-1e4, 1e4) });
const ohms = number(1, 1000);

const distance = (a: { real: number; imaginary: number }, b: { real: number; imaginary: number }) =>
  Math.hypot(a.real - b.real, a.imaginary - b.imaginary);

test("reflection to impedance and back is the same reflection", () => {
  fc.assert(
    fc.property(reflection, ohms, (value, reference) => {
      const back = reflectionFromImpedance(impedanceFromReflection(value, reference), reference);
      expect(distance(back, value)).toBeLessThan(1e-12);
    }),
  );
});

test("impedance to reflection and back is the same impedance, as far as 1 - Γ has digits", () => {
  fc.assert(
    fc.property(impedance, ohms, (load, reference) => {
      const back = impedanceFromReflection(reflectionFromImpedance(load, reference), reference);
      const growth = Math.hypot(load.real + reference, load.imaginary) ** 2 / (2 * reference);
      expect(distance(back, load)).toBeLessThanOrEqual(1e-14 * growth + 1e-12 * Math.hypot(load.real, load.imaginary));
    }),
  );
});

test("an impedance and its admittance reflect alike", () => {
  fc.assert(
    fc.property(impedance, ohms, (load, reference) => {
      const byAdmittance = reflectionFromAdmittance(admittanceFromImpedance(load), reference);
      expect(distance(byAdmittance, reflectionFromImpedance(load, reference))).toBeLessThan(1e-12);
    }),
  );
});

test("a passive load reflects at most everything", () => {
  fc.assert(
    fc.property(impedance, ohms, (load, reference) => {
      const { real, imaginary } = reflectionFromImpedance(load, reference);
      expect(Math.hypot(real, imaginary)).toBeLessThanOrEqual(1 + Number.EPSILON);
    }),
  );
});

test("a change of reference there and back is no change", () => {
  fc.assert(
    fc.property(reflection, ohms, ohms, (value, from, to) => {
      const back = changeReference(changeReference(value, from, to), to, from);
      // Between references far apart Γ comes near 1 and loses digits by the ratio of the two.
      const ratio = Math.max(from / to, to / from);
      expect(distance(back, value)).toBeLessThanOrEqual(1e-12 * ratio);
    }),
  );
});

test("a change of reference leaves the impedance where it is", () => {
  fc.assert(
    fc.property(impedance, ohms, ohms, (load, from, to) => {
      const changed = changeReference(reflectionFromImpedance(load, from), from, to);
      expect(distance(changed, reflectionFromImpedance(load, to))).toBeLessThan(1e-11);
    }),
  );
});

test("SWR is at least 1 and grows with the reflection, through ρ = 1 and beyond", () => {
  fc.assert(
    fc.property(number(0, 2), number(0, 2), (a, b) => {
      const [low, high] = a < b ? [a, b] : [b, a];
      expect(swrFromReflectionMagnitude(low)).toBeGreaterThanOrEqual(1);
      expect(swrFromReflectionMagnitude(high)).toBeGreaterThanOrEqual(swrFromReflectionMagnitude(low));
    }),
  );
});

test("return loss falls and mismatch loss grows with the reflection", () => {
  fc.assert(
    fc.property(number(0, 1), number(0, 1), (a, b) => {
      const [low, high] = a < b ? [a, b] : [b, a];
      expect(returnLossDb(low)).toBeGreaterThanOrEqual(returnLossDb(high));
      expect(mismatchLossDb(low)).toBeLessThanOrEqual(mismatchLossDb(high));
      expect(returnLossDb(high)).toBeGreaterThanOrEqual(0);
      expect(mismatchLossDb(low)).toBeGreaterThanOrEqual(0);
    }),
  );
});

test("SWR and return loss lead back to ρ", () => {
  fc.assert(
    fc.property(rho, (magnitude) => {
      expect(reflectionMagnitudeFromSwr(swrFromReflectionMagnitude(magnitude))).toBeCloseTo(magnitude, 12);
      expect(reflectionMagnitudeFromReturnLoss(returnLossDb(magnitude))).toBeCloseTo(magnitude, 12);
    }),
  );
});

test("what is reflected and what the mismatch leaves over make up all of the power", () => {
  fc.assert(
    fc.property(rho, (magnitude) => {
      expect(reflectedPowerFraction(magnitude) + 10 ** (-mismatchLossDb(magnitude) / 10)).toBeCloseTo(1, 12);
    }),
  );
});
