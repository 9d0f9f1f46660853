/** What a comparison leaves open is said: steps too long for a dip, loss that narrow sweeps do not show, a sweep held against itself. */
import { type DiffResult, diff, lossBound, planById, scalarSweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { evenly, type Pair, present, reflectionOf, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const plan = present(planById("itu-r1"), "a plan");
const options = { plan, bands: ["40m"] };
const codesOf = ({ findings }: DiffResult) => findings.map(({ code }) => code);

/** A series resonance, 60 Ω unless said, behind loss one way. */
const loads = (axis: readonly number[], { q = 12, lossDb = 0, at = 7_100_000, ohms = 60 } = {}): Pair[] =>
  axis.map((hz) => {
    const [re, im] = reflectionOf([ohms, q * 60 * (hz / at - at / hz)]);
    const share = 10 ** (-lossDb / 10);
    return [re * share, im * share];
  });
const size = ([re, im]: Pair) => Math.hypot(re, im);

describe("a better SWR in a narrow sweep", () => {
  const narrow = evenly(6_950_000, 7_250_000, 2000);
  const scalar = (lossDb: number, axis = narrow) => sweepOfMagnitudes(axis, loads(axis, { lossDb, q: 30 }).map(size));

  test("that nothing explains may be loss, which is said; one that is explained may not", () => {
    // A little less Q and another resistance: neither loss nor a longer wire.
    const sweep = (ohms: number, q: number) => sweepOfMagnitudes(narrow, loads(narrow, { ohms, q }).map(size));
    const result = diff(sweep(105, 10), sweep(60, 14), options);
    expect(result.bands.map(({ verdict }) => verdict)).toEqual(["improved"]);
    expect(result.causes.filter(({ confidence }) => confidence === "likely")).toEqual([]);
    expect(codesOf(result)).toContain("loss-not-told");
    expect(codesOf(diff(scalar(0), scalar(1.5), options))).not.toContain("loss-not-told");
  });

  test("is certain where all before is beyond the scale", () => {
    const beyond = scalarSweep(
      {
        label: "before",
        source: { file: "before", format: "computed", description: "", comments: [] },
        referenceOhms: 50,
      },
      { frequencyHz: Float64Array.from(narrow), reflectionMagnitude: new Float64Array(narrow.length).fill(0.5) },
      0.5,
    );
    const result = diff(
      beyond,
      sweepOfMagnitudes(
        narrow,
        narrow.map(() => 0.38),
      ),
      options,
    );
    expect(result.bands.map(({ verdict, why }) => [verdict, why.includes("≥3.00")])).toEqual([["improved", true]]);
    expect(result.causes.map(({ code }) => code)).not.toContain("interference");
    const back = diff(
      sweepOfMagnitudes(
        narrow,
        narrow.map(() => 0.45),
      ),
      beyond,
      options,
    );
    expect(back.bands.map(({ verdict }) => verdict)).toEqual(["worse"]);
  });

  test("of a wide sweep shows the loss itself", () => {
    const wide = evenly(3_000_000, 15_000_000, 20_000);
    const result = diff(scalar(0, wide), scalar(1.5, wide), options);
    expect(result.bands.map(({ verdict }) => verdict)).not.toContain("improved");
    expect(codesOf(result)).not.toContain("loss-not-told");
  });
});

describe("a dip that one of the sweeps steps over", () => {
  const sweep = (stepHz: number) => {
    const axis = evenly(3_000_000, 15_000_000, stepHz);
    return sweepOfMagnitudes(axis, loads(axis, { q: 120, at: 7_130_000 }).map(size));
  };

  test("is no sure change of the antenna, and the step is named", () => {
    const result = diff(sweep(150_000), sweep(10_000), options);
    expect(result.bands.map(({ verdict }) => verdict)).not.toEqual(["unchanged"]);
    const doubts = result.findings.filter(({ message }) => message.startsWith("Before: "));
    expect(doubts.map(({ code }) => code)).toContain("step-too-coarse");
    expect(
      result.causes.filter(({ code, confidence }) => code === "antenna-changed" && confidence === "likely"),
    ).toEqual([]);
    expect(result.headline).not.toContain("antenna itself");
  });
});

test("a sweep on both sides is named", () => {
  const axis = evenly(6_000_000, 8_000_000, 10_000);
  const sweep = sweepOfReflections(axis, loads(axis));
  expect(codesOf(diff(sweep, sweep, options))).toContain("same-sweep");
  expect(codesOf(diff(sweep, sweepOfReflections(axis, loads(axis, { q: 13 })), options))).not.toContain("same-sweep");
});

describe("the bound of the loss", () => {
  const axis = evenly(3_000_000, 30_000_000, 50_000);
  const lossy = loads(axis, { lossDb: 2 });

  test("is not set by a sample that stands alone", () => {
    const spiked = lossy.map((pair, i): Pair => (i === 300 ? [0.1, -0.99] : pair));
    const bound = (reflections: readonly Pair[]) =>
      present(lossBound(sweepOfReflections(axis, reflections)), "a bound");
    expect(bound(spiked).lossDb).toBeCloseTo(bound(lossy).lossDb, 3);
    expect(bound(lossy).lossDb).toBeGreaterThan(1.9);
  });

  test("is not told by stretches on the bands alone, unless it is small", () => {
    const isOnBand = (hz: number) => (hz > 6.9e6 && hz < 7.3e6) || (hz > 20.9e6 && hz < 21.5e6);
    const dips = axis.map(
      (hz): Pair => reflectionOf([60, 12 * 60 * Math.sin((Math.PI * (hz - 7_100_000)) / 14_000_000)]),
    );
    const kept = axis.flatMap((hz, i) => (isOnBand(hz) ? [{ hz, pair: dips[i] as Pair }] : []));
    const sweep = sweepOfReflections(
      kept.map(({ hz }) => hz),
      kept.map(({ pair }) => pair),
    );
    expect(lossBound(sweep)).toBeNull();
    expect(lossBound(sweepOfReflections(axis, dips))?.lossDb).toBeLessThan(0.1);
  });
});
