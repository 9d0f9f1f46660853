/** The searches find what closed forms say, and the median what sorting does. */

import { describe, expect, test } from "vitest";
import { medianOf } from "../../packages/core/src/numbers/column.js";
import { leastBetween, zeroBetween } from "../../packages/core/src/numbers/search.js";
import { fc } from "../support/property.js";

describe("the least value between two places", () => {
  const place = fc.double({ min: 0.05, max: 0.95, noNaN: true });
  const shapes: Record<string, (x: number) => number> = {
    parabola: (x) => x * x,
    corner: Math.abs,
    "flat bottom": (x) => x ** 4,
    "narrow dip": (x) => -1 / (1 + (300 * x) ** 2),
    "two slopes": (x) => (x < 0 ? -5 * x : 0.2 * x),
  };
  test.each(Object.keys(shapes))("of a %s is found within the tolerance, in no more than 100 looks", (name) => {
    const shape = shapes[name] as (x: number) => number;
    fc.assert(
      fc.property(place, (wanted) => {
        let looks = 0;
        const found = leastBetween(
          (x) => {
            looks++;
            return shape(x - wanted);
          },
          0,
          1,
          1e-6,
        );
        // Of a flat bottom rounding hides where the least is.
        expect(Math.abs(found - wanted)).toBeLessThan(name === "flat bottom" ? 2e-4 : 1e-6);
        expect(looks).toBeLessThan(100);
      }),
    );
  });

  test.each([
    ["rises", 1, 0],
    ["falls", -1, 1],
  ])("of what only %s is at that end", (_, slope, end) => {
    expect(Math.abs(leastBetween((x) => slope * x, 0, 1, 1e-6) - end)).toBeLessThan(2e-6);
  });
});

describe("the zero between two places", () => {
  const place = fc.double({ min: 0.001, max: 0.999, noNaN: true });
  const shapes: Record<string, (x: number) => number> = {
    line: (x) => 3 * x,
    falling: (x) => -x,
    cube: (x) => x ** 3,
    step: (x) => (x < 0 ? -1 : 1e6),
    root: (x) => Math.sign(x) * Math.sqrt(Math.abs(x)),
    pole: (x) => (x < 0 ? -1 : 1 / x),
    "two slopes": (x) => (x < 0 ? 1e-9 * x : 1e9 * x),
  };
  test.each(Object.keys(shapes))("of a %s is found within the tolerance, in no more than 100 looks", (name) => {
    const shape = shapes[name] as (x: number) => number;
    fc.assert(
      fc.property(place, (wanted) => {
        let looks = 0;
        const found = zeroBetween(
          (x) => {
            looks++;
            return shape(x - wanted);
          },
          0,
          1,
          1e-6,
        );
        expect(Math.abs(found - wanted)).toBeLessThan(1e-6);
        expect(looks).toBeLessThan(100);
      }),
    );
  });

  test("at an end is that end", () => {
    expect(zeroBetween((x) => x, 0, 1)).toBe(0);
    expect(zeroBetween((x) => x - 1, 0, 1)).toBe(1);
  });

  test("of smooth shapes takes a dozen looks at the most", () => {
    let looks = 0;
    const found = zeroBetween(
      (x) => {
        looks++;
        return Math.exp(x) - 2;
      },
      0,
      1,
      1e-9,
    );
    expect(found).toBeCloseTo(Math.LN2, 9);
    expect(looks).toBeLessThanOrEqual(12);
  });
});

test("the median is the middle of the sorted values, or the mean of the two there", () => {
  // 0 and -0 are one number, of which either may come first.
  const size = fc.double({ min: -1e9, max: 1e9, noNaN: true }).map((value) => value + 0);
  fc.assert(
    fc.property(fc.array(size, { minLength: 1, maxLength: 1500 }), (values) => {
      const sorted = values.toSorted((a, b) => a - b);
      const [low, high] = [sorted[(sorted.length - 1) >> 1] as number, sorted[sorted.length >> 1] as number];
      expect(medianOf(Float64Array.from(values))).toBe((low + high) / 2);
    }),
  );
});
