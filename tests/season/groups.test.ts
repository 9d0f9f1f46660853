import { groupGrades, type SweepGrade } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { graded } from "../support/graded.js";
import { fc } from "../support/property.js";
import { seededNormal } from "../support/seeded-noise.js";
import { present } from "../support/sweeps.js";

const member = (counterpoise: string, withinLimitFraction: number, bestSwr: number | null = 1.5) =>
  graded(`${counterpoise}.s1p`, { log: { counterpoise }, withinLimitFraction, bestSwr });

describe("groups", () => {
  test("have the median and the interquartile range of three sweeps or more, the best group first", () => {
    const [on40] = groupGrades(
      [member("deck", 0.2), member("water", 0.9, 1.1), member("water", 0.7, 1.3), member("water", 0.8, 1.2)],
      "counterpoise",
    );
    // Quartiles lie a quarter and three quarters of the way from the first value to the last: 0.75 and 0.85 for coverage.
    expect(on40?.groups).toEqual([
      {
        value: "water",
        sweeps: 3,
        bestSwr: { median: 1.2, spread: expect.closeTo(0.1, 12) },
        coverage: { median: 0.8, spread: expect.closeTo(0.1, 12) },
        lossDb: null,
      },
      {
        value: "deck",
        sweeps: 1,
        bestSwr: { median: 1.5, spread: null },
        coverage: { median: 0.2, spread: null },
        lossDb: null,
      },
    ]);
    expect(on40?.isBeyondSpread).toBeNull();
  });

  test.each([
    ["further apart than they scatter", [0.9, 0.91, 0.92, 0.93, 0.94], [0.3, 0.32, 0.35, 0.38, 0.4], true],
    ["closer than they scatter", [0.5, 0.6, 0.7, 0.8, 0.9], [0.4, 0.5, 0.6, 0.7, 0.8], false],
    ["so few that chance alone parts them one time in ten", [0.9, 0.92, 0.94], [0.3, 0.35, 0.4], null],
  ])("that are %s", (_, first, last, isBeyond) => {
    const sweeps = [...first.map((share) => member("a", share)), ...last.map((share) => member("b", share))];
    expect(groupGrades(sweeps, "counterpoise")[0]?.isBeyondSpread).toBe(isBeyond);
  });

  test.each([
    [2, 5],
    [2, 12],
    [4, 6],
  ])("of one antenna are seldom told apart: %i groups of %i", (groups, size) => {
    const normal = seededNormal(groups * size);
    const told = Array.from({ length: 300 }, () => {
      const sweeps = Array.from({ length: groups * size }, (_, i) =>
        member(String(i % groups), Math.min(1, Math.max(0, 0.7 + 0.1 * normal())), 1.5 + 0.1 * Math.abs(normal())),
      );
      return groupGrades(sweeps, "counterpoise")[0]?.isBeyondSpread;
    });
    expect(told).not.toContain(null);
    expect(told.filter((isBeyond) => isBeyond === true).length / told.length).toBeLessThanOrEqual(0.05);
  });

  test("that are alike are seldom told apart on any of ten bands", () => {
    const normal = seededNormal(10);
    const names = Array.from({ length: 10 }, (_, i) => `band ${i}`);
    const told = Array.from({ length: 200 }, () => {
      const sweeps = Array.from({ length: 24 }, (_, i): SweepGrade => {
        const one = member(String(i % 2), 0.5);
        const [band] = one.bands;
        const bands = names.map((name) => ({
          ...present(band, "a band"),
          band: name,
          withinLimitFraction: Math.min(1, Math.max(0, 0.7 + 0.1 * normal())),
          bestSwr: 1.5 + 0.1 * Math.abs(normal()),
        }));
        return { ...one, bands };
      });
      return groupGrades(sweeps, "counterpoise").some(({ isBeyondSpread }) => isBeyondSpread);
    });
    expect(told.filter((isBeyond) => isBeyond).length / told.length).toBeLessThanOrEqual(0.05);
  });

  test("leave out sweeps without a value, without a log and of another band", () => {
    const sweeps = [member("", 1), graded("x.s1p"), member("a", 1, null), member("b", 1)];
    expect(groupGrades(sweeps, "counterpoise")[0]?.groups.map(({ value, sweeps: count }) => [value, count])).toEqual([
      ["b", 1],
    ]);
    expect(groupGrades(sweeps, "no such column")).toEqual([]);
  });

  test("with an infinite SWR stand behind those of the same coverage", () => {
    const sweeps = [member("open", 0, Number.POSITIVE_INFINITY), member("poor", 0, 9)];
    expect(groupGrades(sweeps, "counterpoise")[0]?.groups.map(({ value }) => value)).toEqual(["poor", "open"]);
  });

  test("named like parts of every object are groups like others", () => {
    const sweeps = [member("__proto__", 1), member("constructor", 0.5)];
    expect(groupGrades(sweeps, "counterpoise")[0]?.groups.map(({ value }) => value)).toEqual([
      "__proto__",
      "constructor",
    ]);
  });

  test("are the same in whatever order the sweeps come, descending in coverage, and count every sweep once", () => {
    const sweep = fc.record({
      value: fc.constantFrom("a", "b", "c"),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.uniqueArray(sweep, { minLength: 1, selector: ({ share }) => share }), (made) => {
        const sweeps = made.map(({ value, share }) => member(value, share, 1 + share));
        const { groups } = present(groupGrades(sweeps, "counterpoise")[0], "the band");
        const shares = groups.map(({ coverage }) => present(coverage, "coverage").median);
        expect(shares).toEqual(shares.toSorted((a, b) => b - a));
        expect(groups.reduce((sum, { sweeps: count }) => sum + count, 0)).toBe(sweeps.length);
        const byValue = (all: typeof groups) => new Map(all.map((group) => [group.value, group]));
        const turned = present(groupGrades(sweeps.toReversed(), "counterpoise")[0], "the band");
        expect(byValue(turned.groups)).toEqual(byValue(groups));
      }),
    );
  });
});
