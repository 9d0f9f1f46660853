import {
  type AdviseResult,
  advise,
  feedlineFrom,
  modeOf,
  planById,
  readSweeps,
  type StatedParts,
  type Sweep,
  sectionAt,
  sweepAtAnalyser,
  throughLine,
  type VectorSweep,
  wishAtActivity,
  wishBetween,
  wishInMode,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { seededUniform } from "../support/seeded-noise.js";
import { antennaFamilies } from "../support/strange-antennas/families.js";
import { evenly, type Pair, present, reflectionOf, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const plan = present(planById("itu-r1"), "itu-r1");
const wide = evenly(6e6, 16e6, 2e4);

/** A series resonance in front of the analyser, its reflection multiplied by what a pad of some dB does. */
function resonance(centreHz: number, ohms: number, q: number, padDb = 0): Sweep {
  const pad = 10 ** (-padDb / 10);
  const reflections = wide.map((hz): Pair => {
    const [real, imaginary] = reflectionOf([ohms, ohms * q * (hz / centreHz - centreHz / hz)]);
    return [pad * real, pad * imaginary];
  });
  return sweepOfReflections(wide, reflections);
}

const kinds = ({ advice }: AdviseResult) => advice.map(({ kind }) => kind);
const codes = ({ findings }: AdviseResult) => findings.map(({ code }) => code);

describe("advise", () => {
  test("leaves a perfect antenna alone", () => {
    const flat = sweepOfReflections(
      wide,
      wide.map((): Pair => [0.01, 0.01]),
    );
    const result = advise(flat, { plan, bands: ["40m", "20m"] });
    expect(result.verdict).toBe("leave-it");
    expect(result.advice).toEqual([]);
    expect(result.wishes.map(({ now }) => now?.withoutTuner)).toEqual([1, 1]);
  });

  test("advises the least work first where everything helps as much", () => {
    const result = advise(resonance(6.85e6, 50, 12), { plan, bands: ["40m"] });
    expect(result.verdict).toBe("try");
    expect(kinds(result)[0]).toBe("wire");
    const [wire] = result.advice;
    // The dip lies 3.6 % below the middle of the band.
    expect(wire?.lengthChange).toBeGreaterThan(-0.045);
    expect(wire?.lengthChange).toBeLessThan(-0.02);
    expect(wire?.outcomes[0]?.reached).toBe(1);
    expect(new Set(kinds(result)).size).toBe(kinds(result).length);
  });

  test("tells a change in metres where the length is known", () => {
    const result = advise(resonance(6.85e6, 50, 12), {
      plan,
      bands: ["40m"],
      equipment: { antenna: { wireLengthM: 20 } },
      parts: {},
    });
    const [wire] = result.advice;
    expect(wire?.lengthChangeM).toBeCloseTo(20 * (wire?.lengthChange ?? 0), 9);
    expect(wire?.what).toMatch(/^Shorten the wire by \d+ cm in all \([\d.]+ %\)$/);
  });

  test("does not take loss for a match: a line that wastes the power is never advised, nor counted", () => {
    // Matched by nothing but 40 m of thin cable: as it is, less than a third arrives.
    const feedline = feedlineFrom({ kind: "rg-174", lengthM: 40 });
    const lossy = resonance(14.9e6, 60, 12, 40 * 0.16);
    const result = advise(lossy, { plan, bands: ["20m"], feedline });
    expect(result.wishes[0]?.now?.reached).toBe(0);
    for (const { outcomes } of result.advice)
      for (const { reached, arrives } of outcomes) expect(reached === 0 || (arrives ?? 0) > 0).toBe(true);
    expect(
      result.advice.every(({ parts }) =>
        parts.every(({ part }) => part.kind !== "line" || part.feedline.title !== feedline.title),
      ),
    ).toBe(true);
  });

  test("of a lossy part less counts the more has to arrive", () => {
    // 50 Ω less 200 Ω: a coil that takes that out has 20 Ω of its own at a Q of 10, and lets 71 % through.
    const sweep = sweepOfReflections(
      wide,
      wide.map((hz) => reflectionOf([50, -200 * (7.1e6 / hz)])),
    );
    const reached = [0.6, 0.75].map((leastArriving) => {
      const { advice } = advise(sweep, {
        plan,
        bands: ["40m"],
        isAtAntenna: true,
        leastArriving,
        parts: { coils: [4.5e-6], coilQ: 10 },
        equipment: { radio: { powerW: 50 } },
      });
      return advice.some(({ kind, lengthChange }) => kind === "element" && lengthChange === 0);
    });
    expect(reached).toEqual([true, false]);
  });

  test("a part that would get too hot is no advice, and that is said", () => {
    const sweep = sweepOfReflections(
      wide,
      wide.map((hz) => reflectionOf([50, -200 * (7.1e6 / hz)])),
    );
    const at = (powerW: number) =>
      advise(sweep, {
        plan,
        bands: ["40m"],
        isAtAntenna: true,
        leastArriving: 0.6,
        parts: { coils: [4.5e-6], coilQ: 10 },
        equipment: { radio: { powerW } },
      });
    // The coil turns 29 % of the power into heat.
    expect(at(60).findings.map(({ code }) => code)).not.toContain("advice-too-hot");
    const hot = at(100);
    expect(hot.advice.filter(({ parts }) => parts.length > 0)).toEqual([]);
    expect(hot.findings.map(({ code }) => code)).toContain("advice-too-hot");
  });

  test("bare wires go into a coaxial line only where they are at hand, with what they need", () => {
    const sweep = sweepOfReflections(
      wide,
      wide.map((hz) => reflectionOf([12, 40 * (hz / 7.1e6 - 7.1e6 / hz) * 10])),
    );
    const feedline = feedlineFrom({ kind: "rg-213", lengthM: 10 });
    const usual = advise(sweep, { plan, bands: ["40m"], feedline });
    const stated = advise(sweep, { plan, bands: ["40m"], feedline, parts: { lines: [{ kind: "window-400" }] } });
    const kinds = ({ advice }: typeof usual) =>
      advice.flatMap(({ parts }) => parts.flatMap(({ part }) => ("feedline" in part ? [part.feedline.lossIs] : [])));
    expect(kinds(usual)).not.toContain("at-least");
    expect(kinds(stated)).toContain("at-least");
    expect(stated.cautions.join()).toContain("balun");
    expect(usual.cautions.join()).not.toContain("balun");
  });

  test("what it says arrives is what voltage and current at both ends of the line say", () => {
    const poor = feedlineFrom({ kind: "rg-174", lengthM: 15 });
    const antenna = resonance(14.2e6, 60, 8);
    const seen = sweepAtAnalyser(antenna as VectorSweep, poor, 50);
    const result = advise(seen, { plan, bands: ["20m"], feedline: poor, parts: { lines: [{ kind: "rg-213" }] } });
    const replaced = present(
      result.advice.find(({ kind, lengthChange }) => kind === "line" && lengthChange === 0),
      "another line",
    );
    const part = replaced.parts[0]?.part;
    if (part?.kind !== "line") throw new Error("no line");
    const shares = evenly(14.0e6, 14.35e6, 5e3).map((hz) => {
      const load = { real: 60, imaginary: 60 * 8 * (hz / 14.2e6 - 14.2e6 / hz) };
      const ohms = { real: part.feedline.characteristicOhms, imaginary: 0 };
      return 10 ** (-throughLine(load, ohms, sectionAt(part.feedline, hz)).totalLossDb / 10);
    });
    expect(replaced.outcomes[0]?.reached).toBe(1);
    expect(replaced.outcomes[0]?.arrives).toBeCloseTo(Math.min(...shares), 3);
    expect(result.wishes[0]?.now?.arrives).toBeLessThan(0.75);
  });

  test("a coil does what the formula of the reactance says", () => {
    // A short antenna: 50 Ω less 200 Ω at 7.1 MHz; 4.5 µH take that out.
    const sweep = sweepOfReflections(
      wide,
      wide.map((hz) => reflectionOf([50, -200 * (7.1e6 / hz)])),
    );
    const result = advise(sweep, { plan, bands: ["40m"], isAtAntenna: true, parts: { coils: [4.5e-6] } });
    const coil = result.advice.find(({ kind, lengthChange }) => kind === "element" && lengthChange === 0);
    const [part] = coil?.parts ?? [];
    expect(part?.part).toMatchObject({ kind: "coil", placing: "series" });
    // 100 W into 50 Ω: 1.41 A through 201 Ω.
    expect(part?.stress.amperes).toBeCloseTo(1.41, 1);
    expect(part?.stress.volts).toBeGreaterThan(270);
    expect(part?.stress.volts).toBeLessThan(300);
    // 1 Ω of loss at Q 200.
    expect(part?.stress.heatW).toBeCloseTo(2, 0);
    expect(result.ends).toBe("antenna");
  });

  test("works at both ends of a line that is known, and says so where none is", () => {
    const sweep = resonance(6.7e6, 25, 15);
    const through = advise(sweep, { plan, bands: ["40m"], feedline: feedlineFrom({ kind: "rg-213", lengthM: 10 }) });
    expect(through.ends).toBe("antenna-and-radio");
    expect(codes(through)).not.toContain("advice-at-analyser");
    const without = advise(sweep, { plan, bands: ["40m"] });
    expect(without.ends).toBe("analyser");
    expect(codes(without)).toContain("advice-at-analyser");
    expect(without.experiment?.code).toBe("line-alone");
  });

  test("an SWR alone tells of the wire and of lines that lose less, and why", () => {
    const magnitudes = wide.map((hz) => Math.hypot(...reflectionOf([50, 50 * 12 * (hz / 6.85e6 - 6.85e6 / hz)])));
    const result = advise(sweepOfMagnitudes(wide, magnitudes), { plan, bands: ["40m"] });
    expect(new Set(kinds(result))).toEqual(new Set(["wire"]));
    expect(codes(result)).toContain("advice-without-phase");
    expect(result.experiment?.code).toBe("with-phase");
    expect(result.wishes[0]?.limit).toBeNull();
  });

  test("readings by hand get nothing but what to measure", () => {
    const [readings] = readSweeps("40m 2.5\n20m 1.5-3\n");
    const result = advise(present(readings, "readings"), { plan, bands: ["40m", "20m"] });
    expect(result.verdict).toBe("measure-first");
    expect(result.advice).toEqual([]);
    expect(result.experiment?.code).toBe("sweep-bands");
    expect(result.wishes.map(({ notForetold }) => notForetold)).toEqual(["only-readings", "only-readings"]);
    expect(codes(result)).toContain("wish-not-foretold");
  });

  test("a band that was not swept does not spoil the others", () => {
    const result = advise(resonance(6.85e6, 50, 12), { plan, bands: ["40m", "80m"] });
    expect(result.wishes.map(({ notForetold }) => notForetold)).toEqual([null, "not-swept"].toReversed());
    expect(kinds(result)[0]).toBe("wire");
  });

  test("tells what no lossless network can do, for one resonance only", () => {
    const narrow = advise(resonance(7.1e6, 50, 150), { plan, bands: ["40m"] });
    const limit = present(narrow.wishes[0]?.limit, "limit");
    expect(limit.isOneResonance).toBe(true);
    expect(limit.q).toBeGreaterThan(140);
    expect(limit.q).toBeLessThan(160);
    // π / (150 ln 3) of 7.1 MHz are 135 kHz of 200.
    expect(limit.greatestShare).toBeCloseTo(0.677, 1);
    for (const { outcomes } of narrow.advice)
      expect(outcomes[0]?.withoutTuner).toBeLessThanOrEqual((limit.greatestShare ?? 0) + 0.02);
    const two = sweepOfReflections(
      wide,
      wide.map((hz) => {
        const [first, second] = [7.02e6, 7.18e6].map((f) => 3000 * (hz / f - f / hz));
        return reflectionOf([50, 1 / (1 / (first ?? 1) + 1 / (second ?? 1))]);
      }),
    );
    expect(advise(two, { plan, bands: ["40m"] }).wishes[0]?.limit).toMatchObject({
      isOneResonance: false,
      leastSwr: null,
    });
  });

  test("the worst wish counts first; weights move the rest", () => {
    const sweep = resonance(7.4e6, 50, 10);
    const { advice, wishes } = advise(sweep, { plan, bands: ["40m", "30m"], parts: {} });
    expect(wishes.map(({ title }) => title)).toEqual(["40m", "30m"]);
    expect(advice[0]?.kind).toBe("wire");
  });

  test("wants a mode, an activity or a range as well as a band", () => {
    const scope = { plan, licenceClass: null };
    const cw = present(wishInMode(scope, "40m", modeOf("cw")), "40m CW");
    const ft8 = present(wishAtActivity(scope, "40m", "FT8"), "40m FT8");
    const range = present(wishBetween(scope, 7.0e6, 7.05e6), "range");
    const result = advise(resonance(6.85e6, 50, 12), { plan, wishes: [cw, ft8, range] });
    expect(result.wishes.map(({ title }) => title)).toEqual(["40m CW", "40m FT8", "7.000-7.050"]);
    expect(ft8.dialsHz).toEqual([7074000]);
    expect(wishBetween(scope, 7.1e6, 9e6)).toBeNull();
    expect(wishAtActivity(scope, "40m", "nothing")).toBeNull();
  });

  test("refuses what makes no sense, by name", () => {
    const sweep = resonance(7.1e6, 50, 10);
    expect(() => advise(sweep, { plan, leastArriving: 1.2 })).toThrow("leastArriving must be a share above 0, below 1");
    expect(() => advise(sweep, { plan, fixed: "legs" as "nothing" })).toThrow("fixed must be one of");
    expect(() => advise(sweep, { plan, wishes: [{ weight: 0 }] as never })).toThrow("wishes[0].weight");
  });
});

describe("of twenty strange antennas", () => {
  const families = [...antennaFamilies("tuned"), ...antennaFamilies("held-out")];
  const frequencies = evenly(3.2e6, 30.4e6, 5e4);
  const COILS = [2.2e-7, 6.8e-7, 2.2e-6, 6.8e-6];
  const CAPACITORS = [3.3e-11, 1e-10, 3.3e-10, 1e-9];

  test.each(families.map((family, i) => ({ name: family.name, family, i })))(
    "$name: nothing advised is worse than things as they are",
    ({ family, i }) => {
      const response = family.draw(seededUniform(50 + i));
      const reflections = frequencies.map((hz): Pair => {
        const { re, im } = response(hz);
        return [re, im];
      });
      const parts: StatedParts = {
        lines: [{ kind: "rg-213" }, { kind: "rg-6" }],
        transformers: [{ ratio: 9 }],
        coils: COILS,
        capacitors: CAPACITORS,
        manualTuner: true,
      };
      const result = advise(sweepOfReflections(frequencies, reflections), { plan, bands: ["40m", "20m"], parts });
      const now = result.wishes.flatMap((wish) => wish.now ?? []);
      const worstNow = Math.min(...now.map(({ reached }) => reached));
      for (const { outcomes, parts: advised } of result.advice) {
        expect(Math.min(...outcomes.map(({ reached }) => reached))).toBeGreaterThanOrEqual(worstNow - 0.01);
        for (const {
          reached,
          reachedBetween: { low, high },
          arrives,
        } of outcomes) {
          expect(low).toBeLessThanOrEqual(reached);
          expect(high).toBeGreaterThanOrEqual(reached);
          if (arrives !== null) expect(arrives).toBeLessThanOrEqual(1 + 1e-9);
        }
        for (const { stress } of advised)
          for (const value of Object.values(stress)) expect(Number.isFinite(value)).toBe(true);
      }
    },
  );
});
