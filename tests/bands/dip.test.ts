/** Which dip a wire is cut for. ρ is invented sample by sample. */
import { describe, expect, test } from "vitest";
import { dipNear } from "../../packages/core/src/bands/dip.js";
import { dipBesideFindings } from "../../packages/core/src/bands/dip-hints.js";
import { analysed, bandOf, resonanceSweep, summaryFor } from "../support/judged.js";
import { numbersIn, wordsOf } from "../support/messages.js";
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

  test("rises by six times the noise", () => {
    const analysis = withDips([[7.1e6, 0.02]], () => 0.5);
    const inNoise = (noise: number | null) => dipNear({ ...analysis, curve: { ...analysis.curve, noise } }, 7.1e6).dip;
    expect(inNoise(null)).not.toBeNull();
    expect(inNoise(0.0032)).not.toBeNull();
    expect(inNoise(0.0035)).toBeNull();
  });

  test("rises before the curve falls below it, on both sides", () => {
    // Down to 0.05 at 8.5 MHz and up again: a ripple of 0.006 on the way lies below all that was before.
    const valley = (frequency: number) => 0.05 + (0.75 * Math.abs(frequency - 8.5e6)) / 3.5e6;
    const ripple = (depth: number) => (frequency: number) =>
      valley(frequency) - depth * Math.max(0, 1 - Math.abs(frequency - 6.6e6) / 40_000);
    expect(foundIn([], 6.0e6, ripple(0.015))).toBeNull();
    expect(foundIn([], 6.0e6, ripple(0.03))).toBe(6.6);
    const mirrored = (frequency: number) => ripple(0.015)(15e6 - frequency);
    expect(foundIn([], 9.0e6, mirrored)).toBeNull();
  });

  test("may rise up to the first and the last sample", () => {
    // 0.042 deep and 400 kHz wide: 0.0105 higher at the end of the sweep, 100 kHz away, and 0.0067 a sample before.
    expect(foundIn([[5.1e6, 0.042]], 5.3e6, () => 0.5)).toBe(5.1);
    expect(foundIn([[9.9e6, 0.042]], 9.7e6, () => 0.5)).toBe(9.9);
    expect(foundIn([[5.1e6, 0.038]], 5.3e6, () => 0.5)).toBeNull();
    expect(foundIn([[9.9e6, 0.038]], 9.7e6, () => 0.5)).toBeNull();
  });

  describe("is none that a lone reading may be", () => {
    /** A dip down to 0.5 at 7.1 MHz, and a reading left out of the curve. */
    const withLone = (atHz: number, rho: number) => {
      const analysis = withDips([[7.1e6, 0.4]]);
      const index = AXIS.indexOf(atHz);
      const reflectionMagnitude = analysis.curve.sweep.reflectionMagnitude.map((value, i) =>
        i === index ? rho : value,
      );
      const sweep = { ...analysis.curve.sweep, reflectionMagnitude };
      return dipNear(
        { ...analysis, curve: { ...analysis.curve, sweep, spikes: [index] } as typeof analysis.curve },
        7.1e6,
      );
    };

    test("near and lower than the dip", () => {
      expect(withLone(7.6e6, 0.4)).toEqual({ dip: null, loneHz: 7.6e6 });
      expect(withLone(7.6e6, 0.6)).toMatchObject({ loneHz: null, dip: { frequencyHz: expect.closeTo(7.1e6, -2) } });
      expect(withLone(7.6e6, 1)).toMatchObject({ loneHz: null });
      expect(withLone(8.6e6, 0.1)).toMatchObject({ loneHz: null, dip: { frequencyHz: expect.closeTo(7.1e6, -2) } });
    });
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
    const sweep = resonanceSweep({ resonanceHz, ohms, q }, evenly(5.5e6, 9e6, 10_000));
    return dipBesideFindings([analysed(sweep)], [summaryFor(sweep, band)]).map(({ code, severity }) => [
      code,
      severity,
    ]);
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

  test("tells where the dip is and by how much the wire is off, in words that turn with the sign", () => {
    const message = (resonanceHz: number) => {
      const sweep = resonanceSweep({ resonanceHz, ohms: 60, q: 15 }, evenly(5.5e6, 9e6, 10_000));
      return dipBesideFindings([analysed(sweep)], [summaryFor(sweep, band)])[0]?.message ?? "";
    };
    // 7.1 MHz is the middle; the band has a number in its name.
    expect(numbersIn(message(7.1e6 * 0.95))).toEqual([40, 6.745, 5]);
    expect(numbersIn(message(7.1e6 * 1.05))).toEqual([40, 7.455, 5]);
    expect(wordsOf(message(7.1e6 * 0.95))).not.toBe(wordsOf(message(7.1e6 * 1.05)));
  });

  test("is not given where the band has a dip of its own, or the edge is lower than one", () => {
    const codes = (analysis: ReturnType<typeof analysed>) =>
      dipBesideFindings([analysis], [summaryFor(analysis.curve.sweep, band)]).map(({ code }) => code);
    expect(
      codes(
        withDips([
          [6.75e6, 0.8],
          [7.1e6, 0.5],
        ]),
      ),
    ).toEqual([]);
    expect(codes(withDips([[6.75e6, 0.8]]))).toEqual(["dip-outside-band"]);
    const falling = (frequency: number) => 0.9 - (0.8 * (frequency - 5e6)) / 5e6;
    const within = withDips([[7.08e6, 0.15]], falling);
    expect(codes(within)).toEqual([]);
    const elsewhere = analysed(sweepOfMagnitudes(evenly(14e6, 15e6, 10_000), Array(101).fill(0.5)));
    expect(codes(elsewhere)).toEqual([]);
  });

  test("is not given where all of the band is within the limit anyway", () => {
    expect(hints(6.95e6, 2)).toEqual([]);
  });
});
