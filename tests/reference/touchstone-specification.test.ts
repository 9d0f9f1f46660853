/**
 * The examples of the Touchstone specification, and one load written in every form that it allows.
 *
 * Source: IBIS Open Forum, Touchstone File Format Specification, Rev 1.1, 2.0 and 2.1. The values were computed with numpy
 * from the printed magnitudes and angles; those in S were also read from the same files with scikit-rf 2.0.0, to 5e-11.
 *
 * Tolerance: half of the last of the digits given here (12 after the point).
 */
import { changeReference, readSweeps, sampleImpedance, sampleReflection, type VectorSweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import type { Pair } from "../support/sweeps.js";
import * as examples from "./touchstone-examples.js";

function read(text: string, port = 1): VectorSweep {
  const sweeps = readSweeps(new TextEncoder().encode(text), { fileName: "example", port });
  const [sweep] = sweeps;
  if (sweeps.length !== 1 || sweep?.kind !== "vector") throw new Error("not one vector sweep");
  return sweep;
}

const TOLERANCE = 0.5e-12 + 1e-15;

function expectReflections(sweep: VectorSweep, expected: readonly Pair[]): void {
  expect(sweep.frequencyHz).toHaveLength(expected.length);
  expected.forEach(([real, imaginary], i) => {
    const actual = sampleReflection(sweep, i);
    expect(Math.abs(actual.real - real), `real part at ${i}: ${actual.real}`).toBeLessThanOrEqual(TOLERANCE);
    expect(Math.abs(actual.imaginary - imaginary), `imaginary part at ${i}`).toBeLessThanOrEqual(TOLERANCE);
  });
}

/** Printed to twelve significant digits, so half of the last one is at most 5e-12 of the value. */
function expectImpedances(sweep: VectorSweep, expected: readonly Pair[]): void {
  expected.forEach(([resistance, reactance], i) => {
    const actual = sampleImpedance(sweep, i);
    const size = Math.hypot(resistance, reactance);
    expect(Math.abs(actual.real - resistance), `resistance at ${i}: ${actual.real}`).toBeLessThanOrEqual(1e-11 * size);
    expect(Math.abs(actual.imaginary - reactance), `reactance at ${i}`).toBeLessThanOrEqual(1e-11 * size);
  });
}

const NOISE_EXAMPLE: readonly Pair[] = [
  [0.853854343984, -0.41645258945],
  [-0.485410196625, -0.352671151375],
];

describe("one port", () => {
  test("S in magnitude and angle, MHz", () => {
    const sweep = read(examples.ONE_PORT_S);
    expect([...sweep.frequencyHz]).toEqual([2e6]);
    expect(sweep.referenceOhms).toBe(50);
    expectReflections(sweep, [[0.874020294861, -0.187948195447]]);
    expectImpedances(sweep, [[196.076170605, -367.119228899]]);
  });

  const impedances: readonly Pair[] = [
    [74.0691307318, -5.1794181755],
    [55.631031274, -22.476395605],
    [37.4943370724, -37.4943370724],
    [14.0841468836, -26.4884277858],
    [0.013089304828, -0.749885771367],
  ];
  const at50: readonly Pair[] = [
    [0.195399952853, -0.033589016733],
    [0.0943145223003, -0.192713683138],
    [0.0343944072887, -0.413795255597],
    [-0.332750002589, -0.550876525893],
    [-0.999027156051, -0.0299729939049],
  ];

  test("Z of a keyword-free file is normalised to its R of 75 ohm", () => {
    const sweep = read(examples.ONE_PORT_Z_NORMALISED);
    expect([...sweep.frequencyHz]).toEqual([1e8, 2e8, 3e8, 4e8, 5e8]);
    expect(sweep.referenceOhms).toBe(75);
    expectReflections(sweep, [
      [-0.00503125341362, -0.0349198866011],
      [-0.115255537778, -0.191891041686],
      [-0.200084571129, -0.399987915804],
      [-0.547025556594, -0.459995141359],
      [-0.99945119831, -0.0199879783389],
    ]);
    expectImpedances(sweep, impedances);
  });

  test("Z of a version 2 file is in ohms, and [Reference] 20 touches only the reflection", () => {
    const sweep = read(examples.ONE_PORT_Z_OHMS);
    expect(sweep.referenceOhms).toBe(20);
    expectReflections(sweep, [
      [0.57606599136, -0.0233416795976],
      [0.514036303333, -0.144421041363],
      [0.511872964473, -0.318326995947],
      [0.268331628595, -0.568614637335],
      [-0.995889729643, -0.0747855209499],
    ]);
    expectImpedances(sweep, impedances);
  });

  test.each([examples.ONE_PORT_Z_NORMALISED, examples.ONE_PORT_Z_OHMS])("both agree at 50 ohm", (text) => {
    const sweep = read(text);
    at50.forEach(([real, imaginary], i) => {
      const actual = changeReference(sampleReflection(sweep, i), sweep.referenceOhms, 50);
      expect(Math.abs(actual.real - real)).toBeLessThanOrEqual(TOLERANCE);
      expect(Math.abs(actual.imaginary - imaginary)).toBeLessThanOrEqual(TOLERANCE);
    });
  });
});

describe("two ports", () => {
  test.each([
    ["keyword-free", examples.TWO_PORT_H],
    ["version 2, its number inside the brackets", examples.TWO_PORT_H_VERSION_2],
  ])("H parameters, kHz, R 1, %s", (_, text) => {
    const sweep = read(text);
    expect([...sweep.frequencyHz]).toEqual([2000]);
    expect(sweep.referenceOhms).toBe(1);
    expectReflections(sweep, [[-0.0199759434239, -0.183972665917]]);
  });

  test("S in real and imaginary part, GHz", () => {
    const sweep = read(examples.TWO_PORT_S);
    expect([...sweep.frequencyHz]).toEqual([1e9, 2e9, 1e10]);
    expectReflections(sweep, [
      [0.3926, -0.1211],
      [0.3517, -0.3054],
      [0.3419, 0.3336],
    ]);
    expectImpedances(sweep, [
      [108.342035324, -31.5693455346],
      [76.2359631129, -59.467010851],
      [70.8888047654, 61.2802085849],
    ]);
  });

  test.each([
    ["keyword-free, all defaults", examples.NOISE_KEYWORD_FREE, 50],
    ["version 2, 21_12, [Reference] 50 25", examples.NOISE_VERSION_2, 25],
    ["version 2, 12_21: S11 and S22 stay where they are", examples.NOISE_ORDER_12_21, 25],
  ])("noise parameters are not network data: %s", (_, text, secondReferenceOhms) => {
    const sweep = read(text);
    expect([...sweep.frequencyHz]).toEqual([2e9, 2.2e10]);
    expect(sweep.referenceOhms).toBe(50);
    expectReflections(sweep, NOISE_EXAMPLE);
    expectImpedances(sweep, [
      [25.0267835313, -213.794231943],
      [13.7290715718, -15.1307733705],
    ]);
    const second = read(text, 2);
    expect(second.referenceOhms).toBe(secondReferenceOhms);
    expectReflections(second, [
      [0.640395179342, -0.159668451096],
      [0.0488072159387, -0.557869030931],
    ]);
  });
});

describe("four ports", () => {
  test("S at three frequencies, four pairs to a line", () => {
    const sweep = read(examples.FOUR_PORT_S);
    expect([...sweep.frequencyHz]).toEqual([5e9, 6e9, 7e9]);
    expectReflections(sweep, [
      [-0.568124407982, 0.192962838535],
      [-0.495464624294, 0.281806327241],
      [-0.363826524345, 0.342972681395],
    ]);
    expectImpedances(sweep, [
      [12.8192349238, 7.73011237106],
      [14.5757723807, 12.1687005816],
      [18.9618699927, 17.3424090551],
    ]);
  });

  test.each([
    ["[Matrix Format] Full, [Reference] on one line", examples.FOUR_PORT_FULL],
    ["[Matrix Format] Lower, [Reference] over two lines", examples.FOUR_PORT_LOWER],
  ])("%s", (_, text) => {
    const sweep = read(text);
    expect([...sweep.frequencyHz]).toEqual([5e9]);
    expectReflections(sweep, [[-0.568124407982, 0.192962838535]]);
    expect([1, 2, 3, 4].map((port) => read(text, port).referenceOhms)).toEqual([50, 75, 0.01, 0.01]);
  });
});
