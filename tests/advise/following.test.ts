/**
 * How far a dip follows a change of the wire, against the closed form of two lossless lines with open ends in series (-Z cot kl each),
 * whose resonance is found here apart from the library.
 */
import { describe, expect, test } from "vitest";
import { type FixedWires, followingOf } from "../../packages/core/src/facts/fixed-parts.js";

const LIGHT = 299_792_458;
/** A wire is a little longer for a wave than by the tape. */
const END_EFFECT = 1.04;

/** Where a wire over others resonates near a frequency, Hz. @param share of the impedance of the others, of the wire's */
function resonance(wireM: number, otherM: number, share: number, nearHz: number): number {
  const reactance = (hz: number) => {
    const k = (2 * Math.PI * END_EFFECT * hz) / LIGHT;
    return -1 / Math.tan(k * wireM) - share / Math.tan(k * otherM);
  };
  let [low, high] = [0.8 * nearHz, 1.2 * nearHz];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (reactance(middle) < 0) low = middle;
    else high = middle;
  }
  return low;
}

describe("the share that a dip follows", () => {
  const counterpoise = (lengthM: number): FixedWires => ({ what: "counterpoise", count: 1, lengthM });
  test.each([
    ["a quarter wave on a quarter wave", 10.1, counterpoise(10.1), 1],
    ["a longer wire over a shorter counterpoise", 13, counterpoise(7.2), 1],
    ["three eighths over an eighth", 15.2, counterpoise(5), 1],
    ["two radials", 10.1, { what: "radials", count: 2, lengthM: 10.1 } as const, 2 ** -0.9],
    ["four short radials", 11, { what: "radials", count: 4, lengthM: 7 } as const, 4 ** -0.9],
  ])("%s", (_, wireM, fixed, share) => {
    const otherM = fixed.lengthM ?? Number.NaN;
    const dipHz = resonance(wireM, otherM, share, 7.1e6);
    const change = 0.002;
    const moved = resonance(wireM * (1 + change), otherM, share, 7.1e6) / dipHz - 1;
    expect(followingOf(fixed, wireM, dipHz)(dipHz).usual).toBeCloseTo(-moved / change, 2);
  });

  test.each([
    ["a half wave for 40m", 20.1, 7e6],
    ["two half waves, asked about the upper band", 20.1, 14e6],
    ["a half wave for 80m", 40.5, 3.5e6],
  ])("nearly all where a wire of half waves stands over a short counterpoise: %s", (_, wireLengthM, frequencyHz) => {
    expect(followingOf("counterpoise", wireLengthM, frequencyHz)(frequencyHz).usual).toBeGreaterThan(0.95);
  });

  test("where the counterpoise is not told it is what is left to half a wave", () => {
    const told = followingOf(counterpoise(7), 13.3, 7.1e6)(7.1e6);
    const left = followingOf("counterpoise", 13.3, 7.1e6)(7.1e6);
    expect(left.usual).toBeCloseTo(told.usual, 2);
    expect(left.least).toBeLessThan(told.least);
    expect(left.most).toBeGreaterThan(told.most);
  });
});
