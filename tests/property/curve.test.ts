/** The curve through a sweep: it meets the samples, and does not depend on the order in which they were written. */
import {
  check,
  curveOf,
  planById,
  readSweeps,
  reflectionAt,
  reflectionMagnitudeAt,
  spansWithin,
  traceOf,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { magnitudesOf, type ResonantSweep, resonantSweep, shapelessSweep } from "../support/arbitrary-antennas.js";
import { fc } from "../support/property.js";
import { present, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const plan = present(planById("us-part97"), "us-part97");

/** What five significant digits leave open: without noise nothing may be smoothed away that a file would show. */
const TOLERANCE = 5e-6;

test("a reading by itself is what was read, total reflection too", () => {
  const readings = [0.5, 1, 1.02];
  const spots = { ...sweepOfMagnitudes([7.05e6, 7.1e6, 7.15e6], readings), continuity: "spots" as const };
  expect([...traceOf(curveOf(spots)).reflectionMagnitude]).toEqual(readings);
});

describe("without noise", () => {
  test("the curve of a vector sweep passes through its samples", () => {
    fc.assert(
      fc.property(resonantSweep, ({ frequencyHz, reflections }) => {
        const curve = curveOf(sweepOfReflections(frequencyHz, reflections));
        frequencyHz.forEach((frequency, i) => {
          const [real, imaginary] = present(reflections[i], "sample");
          const actual = present(reflectionAt(curve, frequency), "Γ");
          expect(Math.hypot(actual.real - real, actual.imaginary - imaginary)).toBeLessThan(TOLERANCE);
          expect(Math.abs(reflectionMagnitudeAt(curve, frequency) - Math.hypot(real, imaginary))).toBeLessThan(
            TOLERANCE,
          );
        });
      }),
      { numRuns: 50 },
    );
  });

  test("the curve of a scalar sweep passes through its samples", () => {
    fc.assert(
      fc.property(resonantSweep, (sweep) => {
        const magnitudes = magnitudesOf(sweep);
        const curve = curveOf(sweepOfMagnitudes(sweep.frequencyHz, magnitudes));
        sweep.frequencyHz.forEach((frequency, i) => {
          const rho = present(magnitudes[i], "sample");
          // Only ρ² is smooth at a perfect match; there ρ itself is known to the root of that.
          const error = Math.abs(reflectionMagnitudeAt(curve, frequency) ** 2 - rho ** 2);
          expect(error, `ρ ${rho}`).toBeLessThan(TOLERANCE);
        });
      }),
      { numRuns: 50 },
    );
  });
});

describe("of few samples, too few to tell noise by", () => {
  test("the curve passes through each of them, whatever they are", () => {
    fc.assert(
      fc.property(
        shapelessSweep.map(
          ({ frequencyHz, reflections }): ResonantSweep => ({
            frequencyHz: frequencyHz.slice(0, 8),
            reflections: reflections.slice(0, 8),
          }),
        ),
        ({ frequencyHz, reflections }) => {
          const curve = curveOf(sweepOfReflections(frequencyHz, reflections));
          frequencyHz.forEach((frequency, i) => {
            const [real, imaginary] = present(reflections[i], "sample");
            const actual = present(reflectionAt(curve, frequency), "Γ");
            expect(Math.hypot(actual.real - real, actual.imaginary - imaginary)).toBeLessThan(1e-9);
          });
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe("beyond what was swept", () => {
  test("the curve is unknown, and known at both ends", () => {
    fc.assert(
      fc.property(fc.oneof(resonantSweep, shapelessSweep), ({ frequencyHz, reflections }) => {
        const curve = curveOf(sweepOfReflections(frequencyHz, reflections));
        const first = present(frequencyHz[0], "first");
        const last = present(frequencyHz.at(-1), "last");
        expect(reflectionMagnitudeAt(curve, first)).not.toBeNaN();
        expect(reflectionMagnitudeAt(curve, last)).not.toBeNaN();
        for (const outside of [first - 1, last + 1, first / 2, last * 2]) {
          expect(reflectionMagnitudeAt(curve, outside)).toBeNaN();
          expect(reflectionAt(curve, outside)).toBeNull();
        }
      }),
      { numRuns: 50 },
    );
  });
});

describe("rows in reverse", () => {
  const asText = ({ frequencyHz, reflections }: ResonantSweep, isReversed: boolean) => {
    const lines = frequencyHz.map((frequency, i) => `${frequency} ${reflections[i]?.join(" ")}`);
    if (isReversed) lines.reverse();
    return new TextEncoder().encode(`# Hz S RI R 50\n${lines.join("\n")}\n`);
  };

  test("give the same bands, spans and verdicts", () => {
    fc.assert(
      fc.property(fc.oneof(resonantSweep, shapelessSweep), (sweep) => {
        const [forward] = readSweeps(asText(sweep, false));
        const [backward] = readSweeps(asText(sweep, true));
        const one = present(forward, "forward");
        const other = present(backward, "backward");
        expect(check(other, { plan }).bands).toEqual(check(one, { plan }).bands);
        expect(spansWithin(traceOf(curveOf(other)), 1 / 3)).toEqual(spansWithin(traceOf(curveOf(one)), 1 / 3));
      }),
      { numRuns: 50 },
    );
  });
});
