/** What was not swept is not known, and nothing unknown may count as good. */
import { check, curveOf, gradeSweep, planById, type Sweep, spansWithin, traceOf } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { fc } from "../support/property.js";
import { evenly, type Pair, present, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const plan = present(planById("us-part97"), "us-part97");

interface Patchwork {
  /** First and last frequency of each stretch, Hz */
  readonly stretches: readonly Pair[];
  readonly frequencyHz: readonly number[];
  readonly magnitudes: readonly number[];
}

/** Stretches of at least three samples in one step, with gaps of at least twenty steps between them. */
const patchwork: fc.Arbitrary<Patchwork> = fc
  .record({
    // Near 40 m as often as anywhere else, so that bands are met.
    startHz: fc.oneof(fc.integer({ min: 1_700_000, max: 20_000_000 }), fc.integer({ min: 6_900_000, max: 7_200_000 })),
    stepHz: fc.integer({ min: 1000, max: 20_000 }),
    parts: fc.array(fc.record({ samples: fc.integer({ min: 3, max: 40 }), gap: fc.integer({ min: 20, max: 400 }) }), {
      minLength: 1,
      maxLength: 6,
    }),
    magnitudes: fc.oneof(
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 240, maxLength: 240 }),
      // A sweep that is good wherever it was swept: the temptation to call all of it good is greatest.
      fc.double({ min: 0, max: 0.3, noNaN: true }).map((rho) => new Array<number>(240).fill(rho)),
    ),
  })
  .map(({ startHz, stepHz, parts, magnitudes }) => {
    let low = startHz;
    const stretches = parts.map(({ samples, gap }): Pair => {
      const stretch: Pair = [low, low + (samples - 1) * stepHz];
      low = stretch[1] + gap * stepHz;
      return stretch;
    });
    const frequencyHz = stretches.flatMap(([first, last]) => evenly(first, last, stepHz));
    return { stretches, frequencyHz, magnitudes: magnitudes.slice(0, frequencyHz.length) };
  });

const SWEEPS: Readonly<Record<"vector" | "scalar", (patches: Patchwork) => Sweep>> = {
  vector: ({ frequencyHz, magnitudes }) =>
    sweepOfReflections(
      frequencyHz,
      magnitudes.map((rho): Pair => [rho, 0]),
    ),
  scalar: ({ frequencyHz, magnitudes }) => sweepOfMagnitudes(frequencyHz, magnitudes),
};

/** How much of a span was swept, Hz: simple sums over the stretches. */
const sweptHz = (stretches: readonly Pair[], lowHz: number, highHz: number) =>
  stretches.reduce((sum, [first, last]) => sum + Math.max(0, Math.min(last, highHz) - Math.max(first, lowHz)), 0);

/** Edges are found to 0.5 Hz. */
const SLACK_HZ = 1;

describe.each(["vector", "scalar"] as const)("a %s sweep with gaps", (kind) => {
  test("has every span of low SWR within one stretch, open where the stretch ends", () => {
    fc.assert(
      fc.property(patchwork, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (patches, limit) => {
        for (const span of spansWithin(traceOf(curveOf(SWEEPS[kind](patches))), limit)) {
          const home = patches.stretches.find(([first, last]) => first <= span.lowHz && span.highHz <= last);
          const [first, last] = present(home, `a stretch around ${span.lowHz} to ${span.highHz} Hz`);
          expect(span.openLow).toBe(span.lowHz === first);
          expect(span.openHigh).toBe(span.highHz === last);
        }
      }),
      { numRuns: 150 },
    );
  });

  test("has no band, and no segment, that counts more as good than was swept of it", () => {
    fc.assert(
      fc.property(patchwork, (patches) => {
        for (const result of check(SWEEPS[kind](patches), { plan }).bands) {
          const pieces = result.segments.map(({ lowHz, highHz }) => sweptHz(patches.stretches, lowHz, highHz));
          const swept = pieces.reduce((sum, part) => sum + part, 0);
          const usable = result.segments.reduce((sum, { lowHz, highHz }) => sum + highHz - lowHz, 0);
          expect(result.sweptFraction).toBeCloseTo(swept / usable, 9);
          expect(result.withinLimit.widthHz).toBeLessThanOrEqual(swept + SLACK_HZ);
          expect(result.withinLimit.fraction).toBeLessThanOrEqual((swept + SLACK_HZ) / usable);
          if (result.verdict === "pass") expect(swept).toBeCloseTo(usable, 3);
          if (swept === 0) {
            expect(result).toMatchObject({
              verdict: "not-swept",
              best: null,
              worst: null,
              bandwidth: null,
              need: "unknown",
            });
          }
          result.segments.forEach((segment, i) => {
            const part = present(pieces[i], "piece");
            const width = segment.highHz - segment.lowHz;
            expect(segment.withinLimitFraction).toBeLessThanOrEqual((part + SLACK_HZ) / width);
            expect(segment.verdict === "not-swept").toBe(part === 0);
            if (segment.verdict === "pass") expect(part).toBeCloseTo(width, 3);
            if (part === 0) expect(segment.worstSwr).toBeNull();
          });
        }
      }),
      { numRuns: 150 },
    );
  });

  test("has no grade on a band of which less than nine tenths were swept", () => {
    fc.assert(
      fc.property(patchwork, (patches) => {
        const sweep = SWEEPS[kind](patches);
        const swept = new Map(check(sweep, { plan }).bands.map(({ band, sweptFraction }) => [band, sweptFraction]));
        for (const { band, grade } of gradeSweep(sweep, { plan }).bands) {
          if ((swept.get(band) ?? 0) < 0.9) expect(grade).toBeNull();
        }
      }),
      { numRuns: 50 },
    );
  });
});

describe("samples megahertz apart", () => {
  test("do not pass the bands that lie between them in silence", () => {
    const sweep = sweepOfReflections([1e6, 8e6, 15e6, 22e6, 29e6], new Array<Pair>(5).fill([0.1, 0]));
    const { bands, findings } = check(sweep, { plan, bands: ["40m", "30m", "20m"] });
    const warned = findings.filter(({ code }) => code === "step-too-coarse").map(({ band }) => band);
    for (const { band, verdict } of bands) {
      expect(verdict !== "pass" || warned.includes(band), `${band} passes without a sample in it`).toBe(true);
    }
  });
});
