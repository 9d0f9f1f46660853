/** Nothing differs from itself, and what is better one way round is worse the other. */
import { type DiffVerdict, diff, planById, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { magnitudesOf, resonantSweep, shapelessSweep } from "../support/arbitrary-antennas.js";
import { fc } from "../support/property.js";
import { present, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const plan = present(planById("us-part97"), "us-part97");

const vector = fc
  .oneof(resonantSweep, shapelessSweep)
  .map(({ frequencyHz, reflections }): Sweep => sweepOfReflections(frequencyHz, reflections));
const scalar = fc
  .oneof(resonantSweep, shapelessSweep)
  .map((sweep): Sweep => sweepOfMagnitudes(sweep.frequencyHz, magnitudesOf(sweep)));

describe("a sweep compared with itself", () => {
  test.each([
    ["vector", vector],
    ["scalar", scalar],
  ] as const)("is unchanged on every band and has no cause: %s", (_, sweeps) => {
    fc.assert(
      fc.property(sweeps, (sweep) => {
        const { bands, causes } = diff(sweep, sweep, { plan });
        expect(causes).toEqual([]);
        for (const { verdict, change } of bands) {
          expect(verdict).toBe("unchanged");
          expect(change.withinLimitFraction).toBe(0);
          expect(change.withinLimitWidthHz).toBe(0);
          // null where the SWR is infinite both times: the difference of two infinities is no number.
          expect([0, null]).toContain(change.bestSwr);
          expect([0, null]).toContain(change.worstSwr);
          expect(change.bestFrequencyHz).toBe(0);
        }
      }),
      { numRuns: 40 },
    );
  });

  test("is compared on the band that it covers", () => {
    fc.assert(
      fc.property(resonantSweep, ({ frequencyHz, reflections }) => {
        const sweep = sweepOfReflections(frequencyHz, reflections);
        expect(diff(sweep, sweep, { plan }).bands.map(({ band }) => band)).toEqual(["40m"]);
      }),
      { numRuns: 20 },
    );
  });
});

describe("two sweeps compared in both orders", () => {
  const opposite: Readonly<Record<DiffVerdict, DiffVerdict>> = {
    improved: "worse",
    worse: "improved",
    unchanged: "unchanged",
    mixed: "mixed",
    "not-comparable": "not-comparable",
  };

  test("scalar sweeps have opposite verdicts and opposite changes", () => {
    fc.assert(
      fc.property(resonantSweep, resonantSweep, (one, other) => {
        const first = sweepOfMagnitudes(one.frequencyHz, magnitudesOf(one));
        const second = sweepOfMagnitudes(other.frequencyHz, magnitudesOf(other));
        const there = diff(first, second, { plan }).bands;
        const back = diff(second, first, { plan }).bands;
        expect(back.map(({ verdict }) => verdict)).toEqual(there.map(({ verdict }) => opposite[verdict]));
        there.forEach(({ change }, i) => {
          expect(change.withinLimitFraction).toBeCloseTo(-present(back[i], "band").change.withinLimitFraction, 12);
        });
      }),
      { numRuns: 40 },
    );
  });

  test("loss is suspected both ways or neither, whatever sweep has more samples", () => {
    const flat = (count: number, magnitude: number) => {
      const frequencyHz = Array.from({ length: count }, (_, i) => 6.9e6 + (0.4e6 * i) / (count - 1));
      return sweepOfMagnitudes(
        frequencyHz,
        frequencyHz.map(() => magnitude),
      );
    };
    const losses = (one: Sweep, other: Sweep) =>
      diff(one, other, { plan }).causes.flatMap(({ code }) => (code.startsWith("loss-") ? [code] : []));
    for (const [few, many] of [
      [11, 41],
      [21, 81],
    ] as const) {
      const there = losses(flat(few, 0.9), flat(many, 0.8));
      const back = losses(flat(many, 0.8), flat(few, 0.9));
      expect(back).toEqual(there.map((code) => (code === "loss-added" ? "loss-removed" : "loss-added")));
    }
  });
});
