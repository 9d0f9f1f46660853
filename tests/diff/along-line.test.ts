/** Loss that is spread along a line and mismatches it, found again; the line is a chain of many short pieces. Invented. */
import { describe, expect, test } from "vitest";
import { fitLossAlongLine } from "../../packages/core/src/jobs/diff/along-line-fit.js";
import type { CommonSamples } from "../../packages/core/src/jobs/diff/common-samples.js";
import { fitLine, withBestLaw } from "../../packages/core/src/jobs/diff/line-fit.js";
import { add, complex, multiply } from "../../packages/core/src/numbers/complex.js";
import { admittanceFromImpedance, impedanceFromReflection } from "../../packages/core/src/reflection/impedance.js";
import { evenly, type Pair, reflectionOf } from "../support/sweeps.js";

const AXIS = evenly(2e6, 30e6, 100_000);
const PIECES = 400;
const OHMS = 50;

interface LossyLine {
  readonly antenna: (frequencyHz: number) => Pair;
  readonly delayS: number;
  /** Matched loss at 10 MHz, one way, nepers: of the conductors, and of the dielectric */
  readonly conductors?: number;
  readonly dielectric?: number;
}

/** Γ through the line, piece by piece: a bit of way, a bit of resistance in series, a bit of conductance across. */
function through({ antenna, delayS, conductors = 0, dielectric = 0 }: LossyLine, hz: number): Pair {
  const series = (2 * OHMS * conductors * Math.sqrt(hz / 10e6)) / PIECES;
  const across = ((2 / OHMS) * dielectric * (hz / 10e6)) / PIECES;
  const angle = (-4 * Math.PI * hz * delayS) / PIECES;
  const [real, imaginary] = reflectionOf(antenna(hz));
  let reflection = complex(real, imaginary);
  for (let piece = 0; piece < PIECES; piece++) {
    const there = multiply(reflection, complex(Math.cos(angle), Math.sin(angle)));
    const withSeries = add(impedanceFromReflection(there, OHMS), complex(series, series));
    const all = admittanceFromImpedance(add(admittanceFromImpedance(withSeries), complex(across, 0)));
    const [re, im] = reflectionOf([all.real, all.imaginary]);
    reflection = complex(re, im);
  }
  return [reflection.real, reflection.imaginary];
}

function samplesOf(line: LossyLine): CommonSamples {
  const before = AXIS.map((hz) => through({ antenna: line.antenna, delayS: line.delayS }, hz));
  const after = AXIS.map((hz) => through(line, hz));
  const part = (of: readonly Pair[], k: 0 | 1) => Float64Array.from(of, (pair) => pair[k]);
  return {
    frequencyHz: Float64Array.from(AXIS),
    beforeReal: part(before, 0),
    beforeImaginary: part(before, 1),
    afterReal: part(after, 0),
    afterImaginary: part(after, 1),
  };
}

const resonant = (hz: number): Pair => [60, 300 * (hz / 7.1e6 - 7.1e6 / hz)];
const matched = (hz: number): Pair => [55, 5 * (hz / 10e6)];

describe.each([
  ["in the conductors of a short line", { antenna: resonant, delayS: 20e-9, conductors: 0.06 }, "root"],
  ["in the dielectric of a short line", { antenna: resonant, delayS: 22e-9, dielectric: 0.05 }, "proportional"],
  ["in front of a matched antenna", { antenna: matched, delayS: 60e-9, conductors: 0.1 }, "root"],
] as const)("loss %s", (_, line, law) => {
  const samples = samplesOf(line);
  const found = fitLossAlongLine(samples);
  const db = ("conductors" in line ? line.conductors : line.dielectric) * 8.686;

  test("is told by its law and size", () => {
    expect(found.loss.map((part) => part.law)).toEqual([law]);
    expect(found.loss[0]?.at10MHzDb).toBeCloseTo(db, 2);
    expect(found.residual).toBeLessThan(0.001);
  });

  test("leaves more where the mismatch is not thought of", () => {
    expect(withBestLaw(samples, fitLine(samples), 0).residual).toBeGreaterThan(4 * found.residual);
  });
});

test("loss that went away is less than none", () => {
  const { beforeReal, beforeImaginary, afterReal, afterImaginary, frequencyHz } = samplesOf({
    antenna: resonant,
    delayS: 20e-9,
    conductors: 0.06,
  });
  const dried = fitLossAlongLine({
    frequencyHz,
    beforeReal: afterReal,
    beforeImaginary: afterImaginary,
    afterReal: beforeReal,
    afterImaginary: beforeImaginary,
  });
  // Roughly, for the line that is left is taken for one without loss.
  expect((dried.loss[0]?.at10MHzDb ?? 0) / (-0.06 * 8.686)).toBeCloseTo(1, 0.5);
});
