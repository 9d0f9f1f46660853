import {
  feedlineFrom,
  gradeSweep,
  modeOf,
  planById,
  rankForTonight,
  readSweeps,
  type Sweep,
  type SweepGrade,
  wishAtActivity,
  wishesOf,
  wishInMode,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { seededUniform } from "../support/seeded-noise.js";
import { antennaFamilies } from "../support/strange-antennas/families.js";
import { evenly, type Pair, present, reflectionOf, sweepOfReflections } from "../support/sweeps.js";

const plan = present(planById("itu-r1"), "itu-r1");
const scope = { plan, licenceClass: null };
const ft8 = present(wishAtActivity(scope, "40m", "FT8"), "FT8");
const ssb = present(wishInMode(scope, "20m", modeOf("ssb")), "SSB");
const frequencies = evenly(3e6, 30e6, 5e4);

/** Two series resonances side by side, on 40 and 20 m, each off by so much; far from both nearly all comes back. */
function dipoles(label: string, off40: number, off20: number, padDb = 0): Sweep {
  const pad = 10 ** (-padDb / 10);
  const reflections = frequencies.map((hz): Pair => {
    const [y40, y20] = [
      { f: 7.1e6 * (1 + off40), q: 10 },
      { f: 14.17e6 * (1 + off20), q: 12 },
    ].map(({ f, q }) => {
      const x = 50 * q * (hz / f - f / hz);
      return [50 / (2500 + x * x), -x / (2500 + x * x)] as const;
    }) as [Pair, Pair];
    const [g, b] = [y40[0] + y20[0], y40[1] + y20[1]];
    const [real, imaginary] = reflectionOf([g / (g * g + b * b), -b / (g * g + b * b)]);
    return [pad * real, pad * imaginary];
  });
  return { ...sweepOfReflections(frequencies, reflections), label } as Sweep;
}

const graded = (sweep: Sweep, options: Partial<Parameters<typeof gradeSweep>[1]> = {}): SweepGrade =>
  gradeSweep(sweep, { plan, bands: ["40m", "20m"], wishes: [ft8, ssb], ...options });

const order = (sweeps: readonly SweepGrade[]) => rankForTonight(sweeps).map(({ graded: each }) => each.sweep.label);

describe("which for tonight", () => {
  test("the worst of the wishes counts: what serves both comes before what serves one", () => {
    const both = graded(dipoles("both", 0, 0));
    const one = graded(dipoles("one", 0, 0.08));
    expect(order([one, both])).toEqual(["both", "one"]);
    const [first, second] = rankForTonight([one, both]);
    expect(first).toMatchObject({ rank: 1, standing: "ready", hiddenLossDb: null });
    expect(second).toMatchObject({ rank: 2, worst: "20m SSB" });
  });

  test("one's own tuner brings a deployment within reach", () => {
    const sweep = dipoles("off", 0, 0.05);
    expect(rankForTonight([graded(sweep)])[0]?.standing).toBe("another-tuner");
    const radio = { tuner: "wide-range", powerW: 100 } as const;
    const [tuned] = rankForTonight([graded(sweep, { equipment: { radio } })]);
    expect(tuned?.standing).toBe("own-tuner");
    expect(tuned?.graded.wishes[1]).toMatchObject({ watts: 100, limitedBy: "radio", reachedFraction: 1 });
  });

  test("a terminated wire, which burns its power, comes last of all that are known", () => {
    const family = present(
      [...antennaFamilies("tuned"), ...antennaFamilies("held-out")].find(({ name }) => name === "terminated-wire"),
      "terminated-wire",
    );
    for (let draw = 0; draw < 10; draw++) {
      const response = family.draw(seededUniform(draw + 1));
      const reflections = frequencies.map((hz): Pair => {
        const { re, im } = response(hz);
        return [re, im];
      });
      const terminated = { ...sweepOfReflections(frequencies, reflections), label: "terminated" } as Sweep;
      const others = [dipoles("good", 0, 0), dipoles("off", 0.01, 0.06), dipoles("far", 0.2, 0.2)];
      const ranked = rankForTonight([terminated, ...others].map((sweep) => graded(sweep)));
      expect(ranked.at(-1)?.graded.sweep.label, `draw ${draw}`).toBe("terminated");
      expect(ranked.at(-1)?.hiddenLossDb, `draw ${draw}`).toBeGreaterThan(1);
    }
  });

  test.each([1.5, 3, 6, 10])("a line of %s dB comes behind all others, however wide the sweep", (lossDb) => {
    const lossy = graded(dipoles("lossy", 0, 0, lossDb));
    const others = [dipoles("good", 0, 0), dipoles("off", 0.01, 0.03)].map((sweep) => graded(sweep));
    const last = rankForTonight([lossy, ...others]).at(-1);
    expect(last?.graded.sweep.label).toBe("lossy");
    expect(last?.hiddenLossDb).toBeGreaterThan(0.5 * lossDb);
  });

  test("a line that loses more than those of the others makes no better antenna", () => {
    const wet = graded(dipoles("wet", 0.005, 0.03, 0.9));
    const dry = graded(dipoles("dry", 0.005, 0.03, 0.2));
    expect(order([wet, dry])).toEqual(["dry", "wet"]);
    const [, last] = rankForTonight([wet, dry]);
    expect(last?.hiddenLossIs).toBe("more-than-others");
    expect(last?.hiddenLossDb).toBeCloseTo(0.7 / Math.sqrt(1), 0);
  });

  test("a longer line that the log tells of hides nothing: what arrives is told", () => {
    const [short, long] = [feedlineFrom({ kind: "rg-58", lengthM: 5 }), feedlineFrom({ kind: "rg-58", lengthM: 25 })];
    const loss = (lengthM: number) => (1.35826 * Math.sqrt(10) + 0.259) * (lengthM / 100);
    const near = graded(dipoles("near", 0, 0, loss(5)), { feedline: short });
    const far = graded(dipoles("far", 0, 0, loss(25)), { feedline: long });
    const ranked = rankForTonight([far, near]);
    expect(ranked.map(({ hiddenLossDb }) => hiddenLossDb)).toEqual([null, null]);
    expect(order([far, near])).toEqual(["near", "far"]);
    expect(near.wishes[0]?.arrives?.least).toBeGreaterThan(far.wishes[0]?.arrives?.most ?? 1);
  });

  test("what is not known is marked and comes last, not guessed", () => {
    const narrow = sweepOfReflections(
      evenly(7e6, 7.2e6, 1e4),
      evenly(7e6, 7.2e6, 1e4).map((): Pair => [0.05, 0]),
    );
    const [first, last] = rankForTonight([
      graded({ ...narrow, label: "narrow" } as Sweep),
      graded(dipoles("far", 0.2, 0.2)),
    ]);
    expect(first?.graded.sweep.label).toBe("far");
    expect(last).toMatchObject({ rank: null, standing: "not-known", why: "not-swept", worst: "20m SSB" });
  });

  test("readings by hand are ranked like others", () => {
    const [readings] = readSweeps("40m 1.4\n20m 2.5\n");
    const [ranked] = rankForTonight([
      gradeSweep(present(readings, "readings"), { plan, wishes: wishesOf({ plan, bands: ["40m", "20m"] }) }),
    ]);
    expect(ranked).toMatchObject({ rank: 1, standing: "another-tuner", worst: "20m" });
  });

  test("nothing asked for is nothing ranked", () => {
    expect(rankForTonight([gradeSweep(dipoles("any", 0, 0), { plan })])).toEqual([]);
  });
});
