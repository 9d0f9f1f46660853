/** How far a dip is taken to follow a change of the wire: common practice, and NEC-2 models of end-fed half waves. */
import { expect, test } from "vitest";
import { followingOf } from "../../packages/core/src/facts/fixed-parts.js";

test.each([
  ["a half wave for 40m", 20.1, 7e6],
  ["two half waves, asked about the upper band", 20.1, 14e6],
  ["a half wave for 80m", 40.5, 3.5e6],
])("a counterpoise has next to no part in a wire of half waves: %s", (_, wireLengthM, frequencyHz) => {
  expect(followingOf("counterpoise", wireLengthM, frequencyHz).usual).toBeGreaterThan(0.9);
});

test.each([
  ["a quarter wave", "counterpoise", 10.1, 7e6],
  ["length not stated", "counterpoise", null, 7e6],
  ["radials, which are no short end", "radials", 20.1, 7e6],
] as const)("and has its usual part else: %s", (_, fixed, wireLengthM, frequencyHz) => {
  expect(followingOf(fixed, wireLengthM, frequencyHz)).toEqual(followingOf(fixed, null, frequencyHz));
});
