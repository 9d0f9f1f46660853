/** What must hold of trimming whatever the antenna; no source needed. Antennas are invented. */
import { feedlineFrom, sweepAtAnalyser, type TrimOptions, trim, type VectorSweep } from "@feedpoint/core";
import { expect, test } from "vitest";
import { type ResonantSweep, resonantSweep } from "../support/arbitrary-antennas.js";
import { inventedPlan } from "../support/invented-plan.js";
import { fc } from "../support/property.js";
import { present, sweepOfReflections } from "../support/sweeps.js";

const OPTIONS: TrimOptions = { plan: inventedPlan([{ lowHz: 6.0e6, highHz: 8.5e6 }]), band: "40m" };
const line = feedlineFrom({ kind: "rg-213", lengthM: 12 });

const sweepOf = ({ frequencyHz, reflections }: ResonantSweep, factor = 1): VectorSweep =>
  sweepOfReflections(
    frequencyHz.map((frequency) => frequency * factor),
    reflections,
  );
const factors = fc.double({ min: 0.95, max: 1.05, noNaN: true });

test("a sweep trimmed to its own dip is left as it is", () => {
  fc.assert(
    fc.property(resonantSweep, (antenna) => {
      const { dip } = trim(sweepOf(antenna), OPTIONS);
      const { lengthChange, bands } = trim(sweepOf(antenna), {
        ...OPTIONS,
        wantedHz: present(dip, "dip").frequencyHz,
        wireLengthM: 20,
      });
      expect(lengthChange).toBe(0);
      expect(bands[0]?.after).toEqual(bands[0]?.before);
    }),
  );
});

test("a wire that was stretched is trimmed back to what it was", () => {
  fc.assert(
    fc.property(resonantSweep, factors, (antenna, factor) => {
      const original = trim(sweepOf(antenna), OPTIONS);
      const wantedHz = present(original.dip, "dip").frequencyHz;
      const { lengthChange, bands } = trim(sweepOf(antenna, factor), { ...OPTIONS, wantedHz });
      // The dip is found to some hertz.
      expect(Math.abs(present(lengthChange, "change") - (factor - 1))).toBeLessThanOrEqual(2e-6);
      const before = present(original.bands[0]?.before, "before");
      const after = present(bands[0]?.after, "after");
      expect(present(after.best, "best").swr).toBeCloseTo(present(before.best, "best").swr, 6);
      expect(Math.abs(after.withinLimit.widthHz - before.withinLimit.widthHz)).toBeLessThanOrEqual(10);
    }),
  );
});

test("behind a stated feedline the prediction is what the stretched antenna would show", () => {
  fc.assert(
    fc.property(resonantSweep, factors, (antenna, factor) => {
      const seen = sweepAtAnalyser(sweepOf(antenna), line, 50);
      const dipHz = present(trim(seen, OPTIONS).dip, "dip").frequencyHz;
      const wantedHz = dipHz * factor;
      const after = present(trim(seen, { ...OPTIONS, wantedHz, feedline: line }).bands[0]?.after, "after");
      const stretched = sweepAtAnalyser(sweepOf(antenna, wantedHz / dipHz), line, 50);
      const expected = present(trim(stretched, OPTIONS).bands[0]?.before, "before");
      expect(present(after.best, "best").swr).toBeCloseTo(present(expected.best, "best").swr, 9);
      expect(Math.abs(after.withinLimit.widthHz - expected.withinLimit.widthHz)).toBeLessThanOrEqual(2);
    }),
  );
});
