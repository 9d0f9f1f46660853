/**
 * Length and loss of a line from a sweep of it, against lines computed here from their formulas (invented lengths).
 *
 * Sources: matched loss is half the return loss with the far end shorted, Anritsu application note "Average Cable Loss Measurement" (abstract
 * read); with 2.4 dB of return loss shorted and 1.6 dB open the loss is 1.0 dB, F. Witt, QEX May/June 2005, p. 44 (opening page read).
 */
import { feedlineKindById, measureLine } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { COAX } from "../support/modelled-sweeps.js";
import { seededNormal } from "../support/seeded-noise.js";
import { evenly, type Pair, present, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const LIGHT = 299_792_458;
const AXIS = evenly(1e6, 50e6, 100_000);
const RG58 = present(feedlineKindById("rg-58"), "rg-58");

/** Γ of a 50 ohm line of RG-58 kind with a real reflection at its end. */
function reflections(lengthM: number, end: number, noise = 0, lossFactor = 1): Pair[] {
  const normal = seededNormal(5);
  return AXIS.map((frequency): Pair => {
    const lossDb = (COAX.lossDbPer100M(frequency / 1e6) * lengthM * lossFactor) / 100;
    const size = end * 10 ** (-lossDb / 10);
    const angle = (-4 * Math.PI * frequency * lengthM) / (COAX.velocityFactor * LIGHT);
    return [size * Math.cos(angle) + noise * normal(), size * Math.sin(angle) + noise * normal()];
  });
}

describe.each([
  ["open", Number.POSITIVE_INFINITY, 1],
  ["short", 0, -1],
  ["100 ohm", 100, 1 / 3],
  ["25 ohm", 25, -1 / 3],
] as const)("far end %s", (_, endOhms, end) => {
  test.each([0.5, 3, 18, 100])("a line of %d m is measured", (lengthM) => {
    const result = measureLine(sweepOfReflections(AXIS, reflections(lengthM, end)), { endOhms, kind: RG58 });
    expect(result.lengthM).toBeCloseTo(lengthM, 6);
    for (const { frequencyHz, matchedLossDb, expectedDb } of result.losses) {
      expect(matchedLossDb).toBeCloseTo((COAX.lossDbPer100M(frequencyHz / 1e6) * lengthM) / 100, 6);
      expect(matchedLossDb).toBeCloseTo(present(expectedDb, "expected"), 4);
    }
    expect(result.verdict).toBe("as-expected");
    expect(result.findings).toEqual([]);
  });
});

test("noise of 0.002 leaves the length within 1 cm and the loss within 0.02 dB", () => {
  const result = measureLine(sweepOfReflections(AXIS, reflections(18, 1, 0.002)), {
    endOhms: Number.POSITIVE_INFINITY,
    kind: RG58,
  });
  expect(Math.abs(present(result.lengthM, "length") - 18)).toBeLessThan(0.01);
  for (const { frequencyHz, matchedLossDb } of result.losses) {
    expect(Math.abs(matchedLossDb - (COAX.lossDbPer100M(frequencyHz / 1e6) * 18) / 100)).toBeLessThan(0.02);
  }
});

test("a known length gives the velocity factor", () => {
  const result = measureLine(sweepOfReflections(AXIS, reflections(18, -1)), { endOhms: 0, lengthM: 18 });
  expect(result.velocityFactor).toBeCloseTo(0.66, 9);
  expect(result.verdict).toBe("unknown");
});

test.each([
  [2, "lossy"],
  [1, "as-expected"],
  [0.4, "low-loss"],
] as const)("a line that loses %d times what its kind does is %s", (factor, verdict) => {
  const sweep = sweepOfReflections(AXIS, reflections(18, -1, 0, factor));
  expect(measureLine(sweep, { endOhms: 0, kind: RG58 }).verdict).toBe(verdict);
});

test("without phase the loss is told and the length is not", () => {
  const sweep = sweepOfMagnitudes(
    AXIS,
    reflections(18, -1).map(([real, imaginary]) => Math.hypot(real, imaginary)),
  );
  const result = measureLine(sweep, { endOhms: 0, kind: RG58, lengthM: 18 });
  expect(result.electricalLengthM).toBeNull();
  expect(result.verdict).toBe("as-expected");
});

describe("what makes the length doubtful is said:", () => {
  const codes = (every: number, lengthM: number, endOhms: number) => {
    const kept = AXIS.flatMap((_, i) => (i % every === 0 ? [i] : []));
    const all = reflections(lengthM, -1);
    const sweep = sweepOfReflections(
      kept.map((i) => present(AXIS[i], "frequency")),
      kept.map((i) => present(all[i], "reflection")),
    );
    return measureLine(sweep, { endOhms }).findings.map(({ code }) => code);
  };

  test("a phase that turns nearly half around in a step", () => {
    expect(codes(20, 22, 0)).toEqual(["step-too-coarse"]);
  });

  test("whole turns that a step hides", () => {
    expect(codes(20, 40, 0)).toEqual(["line-implausible"]);
  });

  test("an end shorted that was said to be open", () => {
    expect(codes(1, 18, Number.POSITIVE_INFINITY)).toEqual(["line-implausible"]);
    expect(codes(1, 18, 0)).toEqual([]);
  });
});

test("a matched end is refused, and gain is doubted", () => {
  const sweep = sweepOfReflections(AXIS, reflections(18, 1, 0, -1));
  expect(() => measureLine(sweep, { endOhms: 50 })).toThrow(/sends nothing back/);
  const { findings } = measureLine(sweep, { endOhms: Number.POSITIVE_INFINITY });
  expect(findings.map(({ code }) => code)).toContain("line-implausible");
});

describe("a connector with no line behind it", () => {
  /** An open end this far behind the place of calibration, or before it where negative; what comes back grows by `gain`. */
  const open = (metres: number, gain = 1) =>
    sweepOfReflections(
      AXIS,
      AXIS.map((frequency): Pair => {
        const angle = (-4 * Math.PI * frequency * metres) / LIGHT;
        return [gain * Math.cos(angle), gain * Math.sin(angle)];
      }),
    );
  const codesOf = (sweep: ReturnType<typeof open>, more = {}) =>
    measureLine(sweep, { endOhms: Number.POSITIVE_INFINITY, ...more }).findings.map(({ code }) => code);

  test("has no length, no loss for 100 m and no verdict, and that is said without a reproach", () => {
    for (const [metres, gain] of [
      [0, 1],
      [-0.005, 1.00005],
      [0.005, 0.9999],
    ] as const) {
      const result = measureLine(open(metres, gain), { endOhms: Number.POSITIVE_INFINITY, kind: RG58 });
      expect(result.electricalLengthM).toBeCloseTo(Math.max(0, metres), 6);
      expect(result.losses.map(({ dbPer100M }) => dbPer100M)).toEqual(result.losses.map(() => null));
      expect(result.verdict).toBe("unknown");
      expect(result.findings.map(({ code, severity }) => [code, severity])).toEqual([["no-line-seen", "info"]]);
    }
  });

  test("is a contradiction where a length is stated", () => {
    expect(codesOf(open(0), { lengthM: 3 })).toEqual(["line-implausible"]);
    expect(measureLine(open(0), { endOhms: Number.POSITIVE_INFINITY, lengthM: 3 }).velocityFactor).toBeNull();
  });

  test("is not what a line of a few centimetres more is", () => {
    expect(codesOf(open(0.06))).toEqual([]);
    expect(codesOf(open(-0.06))).toEqual(["line-implausible"]);
  });
});
