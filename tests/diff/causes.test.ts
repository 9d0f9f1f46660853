/** What diff names as the cause where it is known, with and without phase; what moved; what does not count. */
import { type CauseCode, DEFAULT_THRESHOLDS, diff, planById, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { evenly, type Pair, present, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";
import { type Resonance, resonance, swept, sweptWithoutPhase } from "./resonances.js";

const plan = present(planById("itu-r1"), "itu-r1");
const QUIET = { noise: 0.001, seed: 1 };
const AGAIN = { noise: 0.001, seed: 2 };

const causesOf = (before: Sweep, after: Sweep, confidence = "likely") =>
  diff(before, after, { plan })
    .causes.filter((cause) => cause.confidence === confidence)
    .map(({ code }) => code);
const evidenceOf = (before: Sweep, after: Sweep, code: CauseCode) =>
  present(
    diff(before, after, { plan }).causes.find((cause) => cause.code === code),
    code,
  ).evidence;

describe("without phase", () => {
  const kinds = [
    ["both scalar", sweptWithoutPhase, sweptWithoutPhase],
    ["a vector sweep against a scalar one", swept, sweptWithoutPhase],
    ["a scalar sweep against a vector one", sweptWithoutPhase, swept],
  ] as const;

  describe.each(kinds)("%s:", (_, first, second) => {
    const before = first(resonance(), QUIET);
    const changed = (changes: Partial<Resonance>) => second(resonance(changes), AGAIN);

    test("nothing", () => {
      expect(causesOf(before, changed({}))).toEqual([]);
    });

    test("more loss", () => {
      expect(causesOf(before, changed({ lossAt10MHzDb: 1.5 }))).toEqual(["loss-added"]);
      expect(evidenceOf(before, changed({ lossAt10MHzDb: 1.5 }), "loss-added").lossAt10MHzDb).toBeCloseTo(1, 1);
    });

    test("less loss", () => {
      expect(causesOf(before, changed({ lossAt10MHzDb: 0 }))).toEqual(["loss-removed"]);
    });

    test("a longer wire", () => {
      expect(causesOf(before, changed({ resonanceHz: 7.1e6 * 0.97 }))).toEqual(["resonance-moved"]);
      const { frequencyScale } = evidenceOf(before, changed({ resonanceHz: 7.1e6 * 0.97 }), "resonance-moved");
      expect(frequencyScale).toBeCloseTo(0.97, 2);
    });

    test("another length of line of the same loss changes nothing", () => {
      expect(causesOf(before, changed({ delayS: 200e-9 }))).toEqual([]);
    });

    test("another resistance is only possibly the antenna", () => {
      expect(causesOf(before, changed({ ohms: 120 }))).toEqual([]);
      expect(causesOf(before, changed({ ohms: 120 }), "possible")).toContain("antenna-changed");
    });
  });
});

describe("with phase", () => {
  const before = swept(resonance(), QUIET);

  test("a soaked line that slows the wave is told as lossier, and as worse", () => {
    const after = swept(resonance({ delayS: 104e-9, lossAt10MHzDb: 2 }), AGAIN);
    expect(causesOf(before, after)).toEqual(["loss-added"]);
    expect(evidenceOf(before, after, "loss-added").lossAt10MHzDb).toBeCloseTo(1.5, 1);
    const { bands, headline } = diff(before, after, { plan });
    expect(bands.map(({ verdict }) => verdict)).toEqual(["worse"]);
    expect(headline).toMatch(/more is lost/i);
  });

  test("a longer line that loses what such lines lose is only longer", () => {
    expect(causesOf(before, swept(resonance({ delayS: 190e-9, lossAt10MHzDb: 0.9 }), AGAIN))).toEqual([
      "line-length-changed",
    ]);
  });

  test("a reference a few per cent off is no other reference", () => {
    const { frequencyHz } = before;
    const nearly = Array.from(frequencyHz, (_, i): Pair => {
      const [real, imaginary] = [before.reflectionReal[i] ?? Number.NaN, before.reflectionImaginary[i] ?? Number.NaN];
      const r = (52 - 50) / (52 + 50);
      const square = (1 - r * real) ** 2 + (r * imaginary) ** 2;
      return [
        ((real - r) * (1 - r * real) - r * imaginary ** 2) / square,
        (imaginary * (1 - r * real) + r * imaginary * (real - r)) / square,
      ];
    });
    expect(causesOf(before, sweepOfReflections(Array.from(frequencyHz), nearly))).not.toContain("reference-changed");
  });

  test("a changed antenna comes with where its dip, width and resistance went", () => {
    const evidence = evidenceOf(before, swept(resonance({ q: 8 }), AGAIN), "antenna-changed");
    for (const name of ["dipHzBefore", "dipHzAfter", "widthHzBefore", "widthHzAfter"]) {
      expect(Number.isFinite(evidence[name]), name).toBe(true);
    }
    expect(evidence.dipHzBefore).toBeCloseTo(7.1e6, -5);
    // The same resistance and less reactance beside the resonance: a wider dip.
    expect(evidence.widthHzAfter).toBeGreaterThan(evidence.widthHzBefore ?? Number.NaN);
  });

  test("samples that jump are interference and no other antenna", () => {
    const jumping = Array.from(before.frequencyHz, (_, i): Pair => {
      const jump = i % 40 === 7 ? 0.3 : 0;
      return [(before.reflectionReal[i] ?? Number.NaN) + jump, (before.reflectionImaginary[i] ?? Number.NaN) - jump];
    });
    const after = sweepOfReflections(Array.from(before.frequencyHz), jumping);
    expect(causesOf(before, after)).toEqual(["interference"]);
    expect(diff(before, after, { plan }).bands.map(({ verdict }) => verdict)).toEqual(["unchanged"]);
  });
});

describe("a wide sweep against a narrow one", () => {
  const narrow = evenly(6.9e6, 7.3e6, 4_000);
  // Steps so fine that few of a few hundred fall into the narrow one, and so coarse that few do at all.
  test.each([2_500, 60_000])("in steps of %i Hz is explained whichever comes first", (step) => {
    const wide = swept(resonance(), { ...QUIET, axis: evenly(1e6, 30e6, step) });
    const longer = swept(resonance({ resonanceHz: 7.1e6 * 0.99 }), { ...AGAIN, axis: narrow });
    expect(causesOf(wide, longer)).toEqual(["resonance-moved"]);
    expect(causesOf(longer, wide)).toEqual(["resonance-moved"]);
    expect(evidenceOf(wide, longer, "resonance-moved").frequencyScale).toBeCloseTo(0.99, 3);
    expect(evidenceOf(longer, wide, "resonance-moved").frequencyScale).toBeCloseTo(1 / 0.99, 3);
  });
});

test("an antenna is not an open line with much more loss behind more line", () => {
  const line = sweepOfReflections(
    evenly(1e6, 30e6, 100_000),
    evenly(1e6, 30e6, 100_000).map((frequency): Pair => {
      const angle = -2 * Math.PI * frequency * 130e-9;
      return [0.95 * Math.cos(angle), 0.95 * Math.sin(angle)];
    }),
  );
  const antenna = swept(resonance({ ohms: 70, q: 6 }), { ...QUIET, axis: evenly(6.8e6, 7.5e6, 10_000) });
  for (const likely of [causesOf(line, antenna), causesOf(antenna, line)])
    expect(likely.filter((code) => code !== "antenna-changed")).toEqual([]);
});

test("a thicker wire in a narrow sweep is not surely loss, though loss explains nearly all of it", () => {
  const axis = evenly(6.8e6, 7.4e6, 5_000);
  const before = swept(resonance({ q: 12 }), { ...QUIET, axis });
  const after = swept(resonance({ q: 10.7 }), { ...AGAIN, axis });
  expect(causesOf(before, after)).not.toContain("loss-added");
  // The same sweeps with loss added instead.
  expect(causesOf(before, swept(resonance({ q: 12, lossAt10MHzDb: 0.9 }), { ...AGAIN, axis }))).toEqual(["loss-added"]);
});

describe("nothing changed but", () => {
  const axis = evenly(6.5e6, 7.7e6, 10_000);
  const seeds = Array.from({ length: 20 }, (_, i) => 2 * i + 1);
  const load = (noise: number, seed: number) => swept(resonance({ ohms: 51, q: 0.01 }), { noise, seed, axis });

  test.each([0.002, 0.005])("noise of %d on a matched load", (noise) => {
    for (const seed of seeds) {
      const [one, other] = [load(noise, seed), load(noise, seed + 1)];
      expect(diff(one, other, { plan }).causes, `seed ${seed}`).toEqual([]);
      const [first, second] = [one, other].map((sweep) => sweepOfMagnitudes(axis, [...sweep.reflectionMagnitude]));
      expect(diff(first as Sweep, second as Sweep, { plan }).causes, `seed ${seed}, no phase`).toEqual([]);
    }
  });

  test("the calibration, within the error that is stated", () => {
    const before = swept(resonance(), QUIET);
    // Another directivity vector of 35 dB, 0.0178.
    const after = sweepOfReflections(
      [...before.frequencyHz],
      Array.from(
        before.frequencyHz,
        (_, i): Pair => [
          (before.reflectionReal[i] ?? Number.NaN) + 0.0178 * Math.cos(i / 9),
          (before.reflectionImaginary[i] ?? Number.NaN) + 0.0178 * Math.sin(i / 9),
        ],
      ),
    );
    expect(causesOf(before, after, "possible")).toEqual(["antenna-changed"]);
    expect(diff(before, after, { plan, instrument: { directivityDb: 35 } }).causes).toEqual([]);
  });
});

describe("what does not count", () => {
  const before = swept(resonance({ ohms: 55 }));
  const after = swept(resonance({ ohms: 65 }));

  test("is what the analyser's own error may have made", () => {
    const verdicts = (directivityDb: number | null) =>
      diff(before, after, { plan, instrument: directivityDb === null ? null : { directivityDb } }).bands.map(
        ({ verdict }) => verdict,
      );
    // ρ goes from 0.05 to 0.13, by 0.08; 40 dB of directivity are 0.01, 20 dB are 0.1.
    expect(verdicts(null)).toEqual(["worse"]);
    expect(verdicts(40)).toEqual(["worse"]);
    expect(verdicts(20)).toEqual(["unchanged"]);
  });

  test("is what lies below the threshold", () => {
    const thresholds = { ...DEFAULT_THRESHOLDS, reflectionMagnitude: 0.2, fraction: 0.5 };
    expect(diff(before, after, { plan, thresholds }).bands.map(({ verdict }) => verdict)).toEqual(["unchanged"]);
  });
});

test("width gained and lost, and edges moved, are told where the resonance moved", () => {
  const { change } = present(
    diff(swept(resonance({ resonanceHz: 6.95e6 })), swept(resonance({ resonanceHz: 7.25e6 })), { plan }).bands[0],
    "40m",
  );
  expect(change.gainedHz).toBeGreaterThan(0);
  expect(change.lostHz).toBeGreaterThan(0);
  expect(change.gainedHz - change.lostHz).toBeCloseTo(change.withinLimitWidthHz, 3);
});

describe("what a short lead, or a wire hung up again, does alike", () => {
  const DIRECT = { delayS: 0, lossAt10MHzDb: 0 };
  const before = swept(resonance(DIRECT), QUIET);

  test.each([0.9985, 1.002])(
    "a wire whose resonance moved to %d of what it was is no likely coil or capacitor",
    (scale) => {
      const after = swept(resonance({ ...DIRECT, resonanceHz: 7.1e6 * scale }), AGAIN);
      expect(causesOf(before, after)).not.toContain("coil-added");
      expect(causesOf(before, after)).not.toContain("capacitor-added");
    },
  );
});

test("over a narrow band a wire with a change of the line is never likely: together they follow any slope", () => {
  const axis = evenly(6.9e6, 7.3e6, 4_000);
  const antenna = { q: 12, ohms: 50, delayS: 300e-9 };
  const before = swept(resonance(antenna), { noise: 0.002, seed: 1, axis });
  const after = swept(resonance({ ...antenna, resonanceHz: 7.1e6 * 0.96 }), { noise: 0.002, seed: 2, axis });
  expect(causesOf(before, after).length).toBeLessThan(2);
});
