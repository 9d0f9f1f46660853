/** Readings repeated at the same frequency: their mean is used, and their spread is the noise where nothing else tells it. */
import { curveOf, readSweeps } from "@feedpoint/core";
import { expect, test } from "vitest";
import { seededNormal } from "../support/seeded-noise.js";
import { present } from "../support/sweeps.js";

const NOISE = 0.004;
const REPEATS = 4;

test("the spread of repeats is the noise of a sweep too short to tell it otherwise", () => {
  const normal = seededNormal(5);
  const rows = Array.from({ length: REPEATS }, () =>
    Array.from({ length: 7 }, (_, i) => `${7 + i * 0.05} ${0.1 * i + NOISE * normal()} ${0.2 + NOISE * normal()}`),
  );
  const interleaved = Array.from({ length: 7 }, (_, i) => rows.map((run) => run[i])).flat();
  const bytes = new TextEncoder().encode(["# MHz S RI R 50", ...interleaved].join("\n"));
  const sweep = present(readSweeps(bytes)[0], "a sweep");
  expect(sweep.frequencyHz.length).toBe(7);
  // 42 degrees of freedom leave the estimate within a third of the truth in practically every case.
  expect(sweep.repeatNoise ?? 0).toBeGreaterThan((0.67 * NOISE) / Math.sqrt(REPEATS));
  expect(sweep.repeatNoise ?? 1).toBeLessThan((1.33 * NOISE) / Math.sqrt(REPEATS));
  expect(curveOf(sweep).noise).toBe(sweep.repeatNoise);
});

test("a sweep without repeats has no such noise", () => {
  const bytes = new TextEncoder().encode("# MHz S RI R 50\n7 0.1 0\n7.1 0.2 0\n7.2 0.3 0\n");
  expect(present(readSweeps(bytes)[0], "a sweep").repeatNoise).toBeNull();
});

test.each([
  ["2.1", "caution"],
  ["2", "info"],
])("rows of one frequency are averaged, with a caution where they differ: 2 and %s", (second, severity) => {
  const sweep = present(readSweeps(`MHz,SWR\n7.0,1.5\n7.1,2\n7.1,${second}\n7.2,3\n`)[0], "a sweep");
  expect(sweep.findings.find(({ code }) => code === "frequency-repeated")?.severity).toBe(severity);
});
