/** Sweeps taken at different places on the line: never compared as antennas, unless the line's change is taken out. */
import { diff, planById } from "@feedpoint/core";
import { expect, test } from "vitest";
import { type Pair, present, reflectionOf, sweepOfReflections } from "../support/sweeps.js";
import { resonance, swept } from "./resonances.js";

const plan = present(planById("itu-r1"), "itu-r1");
const before = swept(resonance(), { noise: 0.001, seed: 1 });
/** 9 m of solid-dielectric line more: 18 m there and back at 0.66 times the speed of light. */
const LONGER = { delayS: 100e-9 + 18 / (0.66 * 299_792_458), lossAt10MHzDb: 0.9 };

const verdicts = (after: typeof before, isSamePlane: boolean) =>
  diff(before, after, { plan, isSamePlane }).bands.map(({ verdict }) => verdict);

test("a longer line alone is not comparable, and unchanged once it is taken out", () => {
  const after = swept(resonance(LONGER), { noise: 0.001, seed: 2 });
  expect(verdicts(after, false)).toEqual(["not-comparable"]);
  expect(verdicts(after, true)).toEqual(["unchanged"]);
  const { causes, findings } = diff(before, after, { plan, isSamePlane: true });
  expect(causes).toEqual([]);
  expect(findings.find(({ code }) => code === "same-plane")?.message).toMatch(
    /taken through 13\.[67] m \(electrical\) more line/,
  );
});

test("a longer line of another impedance is taken out as well", () => {
  const measured = diff(before, throughTelevisionLine(), { plan });
  expect(measured.causes.map(({ code }) => code)).toEqual(["line-length-changed"]);
  expect(measured.causes[0]?.message).toMatch(/more line of 75 Ω/);
  expect(verdicts(throughTelevisionLine(), true)).toEqual(["unchanged"]);
});

test("a longer line and another antenna: both are told, and with the line taken out the antennas are compared", () => {
  const after = swept(resonance({ ...LONGER, ohms: 100 }), { noise: 0.001, seed: 2 });
  const measured = diff(before, after, { plan });
  expect(measured.causes.map(({ code }) => code)).toEqual(["line-length-changed", "antenna-changed"]);
  expect(verdicts(after, false)).toEqual(["not-comparable"]);
  expect(verdicts(after, true)).toEqual(["worse"]);
});

test("a longer line and a shorter wire: with the line taken out the moved resonance is told and judged", () => {
  const after = swept(resonance({ ...LONGER, resonanceHz: 7.1e6 * 1.03 }), { noise: 0.001, seed: 2 });
  expect(verdicts(after, false)).toEqual(["not-comparable"]);
  const { causes, bands } = diff(before, after, { plan, isSamePlane: true });
  expect(causes.map(({ code }) => code)).toEqual(["resonance-moved"]);
  expect(causes[0]?.evidence.frequencyScale).toBeCloseTo(1.03, 3);
  expect(bands.map(({ verdict }) => verdict)).toEqual(["worse"]);
});

test("nothing is taken out where the line is the same", () => {
  const after = swept(resonance({ resonanceHz: 7.1e6 * 1.03 }), { noise: 0.001, seed: 2 });
  const { findings } = diff(before, after, { plan, isSamePlane: true });
  expect(findings.map(({ code }) => code)).not.toContain("same-plane");
});

/** The same sweep at the near end of 6 m of lossless line of 75 Ω, with a velocity factor of 0.82. */
function throughTelevisionLine() {
  const frequencies = Array.from(before.frequencyHz);
  const reflections = frequencies.map((frequency, i): Pair => {
    const [real, imaginary] = [before.reflectionReal[i] ?? Number.NaN, before.reflectionImaginary[i] ?? Number.NaN];
    const [r, x] = times(50, quotient([1 + real, imaginary], [1 - real, -imaginary]));
    const tangent = Math.tan((2 * Math.PI * frequency * 6) / (0.82 * 299_792_458));
    // Z0 (Z + j Z0 tan) / (Z0 + j Z tan), the impedance at the near end of a line.
    return reflectionOf(times(75, quotient([r, x + 75 * tangent], [75 - x * tangent, r * tangent])));
  });
  return sweepOfReflections(frequencies, reflections);
}

function times(factor: number, [real, imaginary]: Pair): Pair {
  return [factor * real, factor * imaginary];
}

function quotient([a, b]: Pair, [c, d]: Pair): Pair {
  const square = c * c + d * d;
  return [(a * c + b * d) / square, (b * c - a * d) / square];
}
