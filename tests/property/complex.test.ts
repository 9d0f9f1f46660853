/** Arithmetic of complex numbers: worked examples, and the laws that it must keep. */

import { expect, test } from "vitest";
import {
  add,
  type Complex,
  complex,
  divide,
  magnitude,
  multiply,
  subtract,
} from "../../packages/core/src/numbers/complex.js";
import { fc } from "../support/property.js";

const [a, b] = [complex(1, 2), complex(3, -4)];

test("worked by hand", () => {
  expect(add(a, b)).toEqual({ real: 4, imaginary: -2 });
  expect(subtract(a, b)).toEqual({ real: -2, imaginary: 6 });
  // (1 + 2j)(3 - 4j) = 3 - 4j + 6j + 8
  expect(multiply(a, b)).toEqual({ real: 11, imaginary: 2 });
  // (1 + 2j)(3 + 4j) / 25
  expect(divide(a, b)).toEqual({ real: -0.2, imaginary: 0.4 });
  expect(magnitude(b)).toBe(5);
});

test("what is added is taken away again, and what is multiplied is divided", () => {
  const value = fc.double({ min: -1e3, max: 1e3, noNaN: true });
  const number = fc.record({ real: value, imaginary: value }) as fc.Arbitrary<Complex>;
  const near = (x: Complex, y: Complex, size: number) =>
    expect(Math.hypot(x.real - y.real, x.imaginary - y.imaginary)).toBeLessThanOrEqual(1e-9 * Math.max(1, size));
  fc.assert(
    fc.property(number, number, (x, y) => {
      near(subtract(add(x, y), y), x, magnitude(x) + magnitude(y));
      if (magnitude(y) > 1e-3) near(divide(multiply(x, y), y), x, magnitude(x));
      near(multiply(x, y), multiply(y, x), 1);
    }),
    { seed: 20260501 },
  );
});
