/**
 * Where the dip lies after a cut, where not all is cut: a wire over radials or a counterpoise that stay as they are, by the closed form
 * of lossless lines (-Z cot kl each), whose resonance is found apart from the library. Antennas are invented.
 */
import { type FixedParts, planById, trim } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { resonanceSweep } from "../support/judged.js";
import { present } from "../support/sweeps.js";

const LIGHT = 299_792_458;
const plan = present(planById("itu-r1"), "a plan");

/** Where a wire over other wires at its foot resonates, near a quarter wave; Hz. */
function resonance(wireM: number, otherM: number, otherOverWire: number): number {
  const reactance = (hz: number) => {
    const k = (2 * Math.PI * hz) / LIGHT;
    return -1 / Math.tan(k * wireM) - otherOverWire / Math.tan(k * otherM);
  };
  let [low, high] = [5e6, 9e6];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (reactance(middle) < 0) low = middle;
    else high = middle;
  }
  return low;
}

const QUARTER_M = LIGHT / 7.0e6 / 4;

/** What is advised for a dip, to bring it to 7.1 MHz or elsewhere. */
const advised = (dipHz: number, wantedHz: number, fixed?: FixedParts) =>
  trim(resonanceSweep({ resonanceHz: dipHz, ohms: 45, q: 12 }), {
    plan,
    band: "40m",
    wantedHz,
    ...(fixed === undefined ? {} : { fixed }),
  });

describe.each([0.98, 1.02, 1.05, 1.09])("a dip wanted at %d of where it is", (ratio) => {
  test.each([
    ["nothing", 1, true],
    ["radials", 1 / 2, false],
    ["radials", 1 / 4, false],
    ["radials", 1 / 8, false],
    ["counterpoise", 1, false],
    ["counterpoise", 1 / 20, false],
  ] as const)("with %s fixed, of %d of the wire's impedance, lies where it is expected", (fixed, share, isAllCut) => {
    const dipHz = resonance(QUARTER_M, QUARTER_M, share);
    const { lengthChange, expectedHz } = advised(dipHz, ratio * dipHz, fixed);
    const factor = 1 + present(lengthChange, "change");
    const afterHz = resonance(QUARTER_M * factor, isAllCut ? QUARTER_M * factor : QUARTER_M, share);
    const { lowHz, highHz } = present(expectedHz, "a place");
    // The sweep's own dip is told to a kilohertz or two.
    expect(afterHz).toBeGreaterThan(lowHz - 2000);
    expect(afterHz).toBeLessThan(highHz + 2000);
  });

  test("where nothing is said the place is widened with the change, and four radials or more are within it", () => {
    const dipHz = resonance(QUARTER_M, QUARTER_M, 1 / 4);
    const { lengthChange, expectedHz } = advised(dipHz, ratio * dipHz);
    const afterHz = resonance(QUARTER_M * (1 + present(lengthChange, "change")), QUARTER_M, 1 / 4);
    const { lowHz, highHz } = present(expectedHz, "a place");
    expect((highHz - lowHz) / dipHz).toBeGreaterThan(0.2 * Math.abs(ratio - 1));
    expect(afterHz).toBeGreaterThan(lowHz - 3000);
    expect(afterHz).toBeLessThan(highHz + 3000);
  });
});

test("more is to be cut where radials stay as they are, by what four of them, which couple, give to the whole", () => {
  const [all, radials] = [advised(6.9e6, 7.1e6, "nothing"), advised(6.9e6, 7.1e6, "radials")];
  expect(present(radials.lengthChange, "change") / present(all.lengthChange, "change")).toBeCloseTo(1 + 4 ** -0.9, 2);
});
