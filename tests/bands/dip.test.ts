/** Which dip a wire is cut for. ρ is invented sample by sample. */
import { describe, expect, test } from "vitest";
import { dipNear } from "../../packages/core/src/bands/dip.js";
import { dipBesideFindings } from "../../packages/core/src/bands/dip-hints.js";
import { summariseBand } from "../../packages/core/src/bands/summary.js";
import { analysed, bandOf, resonanceSweep } from "../support/judged.js";
import { evenly, type Pair, sweepOfMagnitudes } from "../support/sweeps.js";

const AXIS = evenly(5e6, 10e6, 20_000);
/** ρ of 0.9, or of a slope, with parabolas of a depth taken out at some frequencies, each 400 kHz wide. */
function withDips(dips: readonly Pair[], level: (frequencyHz: number) => number = () => 0.9) {
  const depth = (frequency: number) =>
    dips.reduce((sum, [atHz, deep]) => sum + deep * Math.max(0, 1 - ((frequency - atHz) / 200_000) ** 2), 0);
  return analysed(
    sweepOfMagnitudes(
      AXIS,
      AXIS.map((frequency) => level(frequency) - depth(frequency)),
    ),
  );
}
const foundIn = (dips: readonly Pair[], wantedHz: number, level?: (frequencyHz: number) => number) => {
  const { dip } = dipNear(withDips(dips, level), wantedHz);
  return dip === null ? null : Math.round(dip.frequencyHz / 10_000) / 100;
};

describe("the dip", () => {
  test("is the deepest one near, whichever comes first", () => {
    expect(
      foundIn(
        [
          [6.8e6, 0.5],
          [7.4e6, 0.7],
        ],
        7.1e6,
      ),
    ).toBe(7.4);
    expect(
      foundIn(
        [
          [6.8e6, 0.7],
          [7.4e6, 0.5],
        ],
        7.1e6,
      ),
    ).toBe(6.8);
  });

  test("is none further than 20 % from where it is wanted", () => {
    expect(foundIn([[8.5e6, 0.6]], 7.1e6)).toBe(8.5);
    expect(foundIn([[8.54e6, 0.6]], 7.1e6)).toBeNull();
    expect(foundIn([[5.7e6, 0.6]], 7.1e6)).toBe(5.7);
    expect(foundIn([[5.66e6, 0.6]], 7.1e6)).toBeNull();
    expect(
      foundIn(
        [
          [6.8e6, 0.4],
          [9e6, 0.8],
        ],
        7.1e6,
      ),
    ).toBe(6.8);
  });

  test("is none that stays above 10:1, ρ of 0.818", () => {
    expect(foundIn([[7.1e6, 0.09]], 7.1e6)).toBe(7.1);
    expect(foundIn([[7.1e6, 0.075]], 7.1e6)).toBeNull();
  });

  test("is no ripple on a slope, deeper though the ripple's bottom may lie", () => {
    // From 0.8 down to 0.05: the ripple of 0.015 lies far below the dip of 0.3, but rises out of nothing.
    const slope = (frequency: number) => 0.8 - (0.75 * (frequency - 5e6)) / 5e6;
    const ripple = (frequency: number) =>
      slope(frequency) - 0.015 * Math.max(0, 1 - Math.abs(frequency - 8.0e6) / 60_000);
    expect(foundIn([], 7.1e6, ripple)).toBeNull();
    expect(foundIn([[7.1e6, 0.3]], 7.1e6, ripple)).toBe(7.11);
  });

  test("rises by a hundredth on both sides at the least", () => {
    const level = () => 0.5;
    expect(foundIn([[7.1e6, 0.012]], 7.1e6, level)).toBe(7.1);
    expect(foundIn([[7.1e6, 0.008]], 7.1e6, level)).toBeNull();
    const leftOnly = (frequency: number) => (frequency < 7.1e6 ? 0.5 + (7.1e6 - frequency) / 1e7 : 0.5);
    expect(foundIn([], 7.1e6, leftOnly)).toBeNull();
  });

  test("is none where the sweep ends", () => {
    const falling = (frequency: number) => 0.9 - (frequency - 5e6) / 10e6;
    expect(foundIn([], 9.5e6, falling)).toBeNull();
    expect(foundIn([], 5.5e6, (frequency) => falling(15e6 - frequency))).toBeNull();
  });
});

describe("a hint of a dip beside a band", () => {
  const band = bandOf([7.0e6, 7.2e6]);
  const hints = (resonanceHz: number, q = 15, ohms = 60) => {
    const analysis = analysed(resonanceSweep({ resonanceHz, ohms, q }, evenly(5.5e6, 9e6, 10_000)));
    return dipBesideFindings(analysis, [summariseBand(analysis, band)]).map(({ code, severity }) => [code, severity]);
  };

  test.each([
    ["within the band", 7.1e6, []],
    ["just below it", 6.9e6, [["dip-outside-band", "info"]]],
    ["just above it", 7.3e6, [["dip-outside-band", "info"]]],
    ["7.9 % below its middle", 7.1e6 * 0.921, [["dip-outside-band", "info"]]],
    ["8.1 % below", 7.1e6 * 0.919, []],
    ["7.9 % above", 7.1e6 * 1.079, [["dip-outside-band", "info"]]],
    ["8.1 % above", 7.1e6 * 1.081, []],
  ] as const)("%s", (_, resonanceHz, expected) => {
    expect(hints(resonanceHz)).toEqual(expected);
  });

  test("is not given where all of the band is within the limit anyway", () => {
    expect(hints(6.95e6, 2)).toEqual([]);
  });
});
