/**
 * Whether a cause that diff calls likely is so, on antennas and changes that its thresholds were not chosen by: 14 families of antenna
 * of which every other one is held out, 25 changes, four ranges of sweep (see support/strange-pairs/; all are invented). Here one pair
 * in eleven of two ranges; `pnpm accuracy` prints them all by kind and range.
 */
import { describe, expect, test } from "vitest";
import { familiesOf, LINE_LOSSES, type StrangeScore, strangeScores } from "../support/strange-scores.js";

/** The ranges that tell least and most. */
const TRIED = ["band", "joined"] as const;
const scores = new Map(
  TRIED.map((range) => [range, strangeScores(familiesOf("held-out"), range, [9000], { every: 11 })]),
);
const named = (of: readonly StrangeScore[]) =>
  of.map(({ change, family, seed, likely }) => `${change} ${family} ${seed}: ${likely.join(", ")}`).join("; ");

describe.each([...scores])("of %s sweeps", (range, of) => {
  const are = (outcome: StrangeScore["outcome"]) => of.filter((score) => score.outcome === outcome);

  test("hardly a likely cause is wrong", () => {
    expect(of.length).toBeGreaterThan(10);
    expect(are("wrong").length, named(are("wrong"))).toBeLessThanOrEqual(1);
  });

  test("no added loss is called better", () => {
    const lossy = of.filter(({ change }) => LINE_LOSSES.has(change));
    expect(lossy.length).toBeGreaterThan(0);
    expect(named(lossy.filter(({ isImproved }) => isImproved))).toBe("");
  });

  test("added line, loss and reference are named where the sweep is not of one band", () => {
    if (range === "band") return;
    const known = of.filter(
      ({ change }) => LINE_LOSSES.has(change) || change.startsWith("line-") || change === "reference-changed",
    );
    const missed = known.filter(({ outcome }) => outcome !== "right");
    expect(missed.length, named(missed)).toBeLessThanOrEqual(1);
  });
});
