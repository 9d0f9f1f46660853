import { type Need, rankFor } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { graded } from "../support/graded.js";
import { fc } from "../support/property.js";

const NEEDS: readonly Need[] = ["none", "built-in-tuner", "wide-range-tuner", "beyond-tuner"];
const order = (sweeps: readonly ReturnType<typeof graded>[]) =>
  rankFor(sweeps, "40m").map(({ rank, graded: { sweep } }) => [rank, sweep.file]);

describe("a ranking", () => {
  test("goes by need, then share, then loss, then SWR", () => {
    const sweeps = [
      graded("low swr", { need: "built-in-tuner", withinLimitFraction: 0.9, bestSwr: 1 }),
      graded("higher swr", { withinLimitFraction: 1, lossBoundDb: 0.5, bestSwr: 1.4 }),
      graded("lossy", { withinLimitFraction: 1, lossBoundDb: 2, bestSwr: 1 }),
      graded("lower swr", { withinLimitFraction: 1, lossBoundDb: 0.5, bestSwr: 1.3 }),
      graded("less of the band", { withinLimitFraction: 0.9, bestSwr: 1 }),
    ];
    expect(order(sweeps)).toEqual([
      [1, "lower swr"],
      [2, "higher swr"],
      [3, "lossy"],
      [4, "less of the band"],
      [5, "low swr"],
    ]);
  });

  test("puts who swept less of the band behind all who swept the whole of it", () => {
    const sweeps = [
      graded("swept less", { sweptFraction: 0.9, withinLimitFraction: 0.9 }),
      graded("swept whole", { need: "built-in-tuner", withinLimitFraction: 0.96 }),
    ];
    expect(order(sweeps)).toEqual([
      [1, "swept whole"],
      [2, "swept less"],
    ]);
  });

  test("puts a loss that is not known behind all that are, and goes by SWR among those", () => {
    const sweeps = [
      graded("not known, low swr", { bestSwr: 1 }),
      graded("not known, higher swr", { bestSwr: 1.1 }),
      graded("lossy", { lossBoundDb: 3, bestSwr: 1.2 }),
      graded("hardly lossy", { lossBoundDb: 0.2, bestSwr: 1.5 }),
      graded("less of the band, loss known", { withinLimitFraction: 0.9, lossBoundDb: 0.2 }),
    ];
    expect(order(sweeps)).toEqual([
      [1, "hardly lossy"],
      [2, "lossy"],
      [3, "not known, low swr"],
      [4, "not known, higher swr"],
      [5, "less of the band, loss known"],
    ]);
  });

  test("gives equal deployments one rank, those with an infinite SWR among them, and the next the place it has", () => {
    const open = { need: "beyond-tuner", withinLimitFraction: 0, bestSwr: Number.POSITIVE_INFINITY } as const;
    expect(order([graded("a", open), graded("b", open), graded("c"), graded("d")])).toEqual([
      [1, "c"],
      [1, "d"],
      [3, "a"],
      [3, "b"],
    ]);
  });

  test("leaves out what was not swept enough to be graded", () => {
    expect(rankFor([graded("a", { grade: null })], "40m")).toEqual([]);
    expect(rankFor([graded("a")], "80m")).toEqual([]);
  });

  test("is a total preorder: whatever the order of the sweeps, each has the same rank", () => {
    const sweep = fc.record({
      need: fc.constantFrom(...NEEDS),
      withinLimitFraction: fc.constantFrom(0, 0.004, 0.5, 0.996, 1),
      lossBoundDb: fc.constantFrom(null, 0.2, 0.3, 1),
      bestSwr: fc.constantFrom(null, 1.1, 2, Number.POSITIVE_INFINITY),
    });
    fc.assert(
      fc.property(fc.array(sweep, { maxLength: 12 }), fc.infiniteStream(fc.nat()), (made, keys) => {
        const sweeps = made.map((details, i) => graded(String(i), details));
        const shuffled = sweeps
          .map((each) => ({ each, key: keys.next().value }))
          .sort((a, b) => a.key - b.key)
          .map(({ each }) => each);
        const ranks = order(sweeps).map(([rank]) => rank);
        expect(new Map(order(shuffled).map(([rank, file]) => [file, rank]))).toEqual(
          new Map(order(sweeps).map(([rank, file]) => [file, rank])),
        );
        // One more than the number of those before it.
        expect(ranks).toEqual(ranks.map((rank) => 1 + ranks.indexOf(rank as number)));
      }),
    );
  });
});
