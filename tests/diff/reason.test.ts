/** The reason of a verdict: its numbers, and that its words turn with the sign. */
import { describe, expect, test } from "vitest";
import type { Side } from "../../packages/core/src/jobs/diff/sides.js";
import { rampSweep } from "../support/invented-plan.js";
import { numbersIn, wordsOf } from "../support/messages.js";
import { evenly, present, sweepOfMagnitudes } from "../support/sweeps.js";
import { BAND, compared, sureSide } from "./compared-bands.js";

describe("the reason", () => {
  const why = (first: Side, second: Side) => present(compared(first, second), "the band").why;

  test("has both SWR, before and after", () => {
    // ρ of 0.2 is 1.50, of 0.25 it is 1.67, of 0.3 it is 1.86.
    const ramp = (low: number, high: number) => sureSide(rampSweep(BAND, [low, high]));
    expect(numbersIn(why(ramp(0.2, 0.3), ramp(0.25, 0.3)))).toEqual([1.5, 1.67]);
    expect(numbersIn(why(ramp(0.2, 0.25), ramp(0.2, 0.3)))).toEqual([1.67, 1.86]);
    expect(numbersIn(why(ramp(0.2, 0.25), ramp(0.25, 0.3)))).toEqual([1.5, 1.67, 1.67, 1.86]);
    expect(why(ramp(0.5, 1), ramp(0.5, 0.9))).toContain("∞");
    expect(why(ramp(0.5, 0.9), ramp(0.5, 1))).toContain("∞");
    expect(why(ramp(0.2, 0.3), ramp(0.25, 0.3))).not.toMatch(/[∞≥]/);
  });

  test("has how much came within the limit, or left it", () => {
    const upTo = (hz: number) => {
      const axis = evenly(7.0e6, 7.2e6, 1000);
      return sureSide(
        sweepOfMagnitudes(
          axis,
          axis.map((at) => 0.25 + 0.2 * Math.min(1, Math.max(0, (at - hz) / 20_000))),
        ),
      );
    };
    const [more, less] = [why(upTo(7.08e6), upTo(7.1e6)), why(upTo(7.1e6), upTo(7.08e6))];
    expect(numbersIn(more)).toEqual([20, 2, 1]);
    expect(numbersIn(less)).toEqual([20, 2, 1]);
    expect(wordsOf(more)).not.toBe(wordsOf(less));
  });
});
