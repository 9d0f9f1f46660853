/** Nights with a known truth: how often the interval holds it, and how often a difference is told where there is none. */
import { type HeardComparison, heard } from "@feedpoint/core";
import { describe, expect, test } from "vitest";

import { campaign, type Night } from "../support/campaigns.js";
import { seededUniform } from "../support/seeded-noise.js";
import { present } from "../support/sweeps.js";

/** Other nights: HEARD_SEED=5. */
const SEED = Number(process.env.HEARD_SEED ?? 1);
const NIGHTS = 200;

const nights = Array.from({ length: NIGHTS }, (_, i) => {
  const random = seededUniform(SEED * 100_003 + i);
  const night: Night = {
    truthDb: [0, 0, 1, 3][i % 4] as number,
    receivers: 5 + Math.floor(36 * random()),
    rounds: 20 + Math.floor(40 * random()),
    patternDb: [0, 1, 2][i % 3] as number,
    fadingDb: 2 + 3 * random(),
  };
  const { reports, periods } = campaign(night, random);
  const [comparison] = heard(reports, { periods }).comparisons;
  return { night, comparison: present(comparison, "comparison") };
});

const holds = ({ night, comparison }: (typeof nights)[number]): boolean =>
  comparison.lowDb !== null &&
  comparison.highDb !== null &&
  comparison.lowDb <= night.truthDb &&
  comparison.highDb >= night.truthDb;

const told = nights.filter(({ comparison }) => comparison.lowDb !== null);

test("nearly every night tells an interval", () => {
  expect(told.length).toBeGreaterThan(0.97 * NIGHTS);
});

test("of all nights 92 to 98 of a hundred intervals hold the truth", () => {
  const share = told.filter(holds).length / told.length;
  expect(share).toBeGreaterThanOrEqual(0.92);
  expect(share).toBeLessThanOrEqual(0.98);
});

describe.each([
  ["no difference", (night: Night) => night.truthDb === 0],
  ["one of 1 dB", (night: Night) => night.truthDb === 1],
  ["one of 3 dB", (night: Night) => night.truthDb === 3],
  ["antennas of one pattern", (night: Night) => night.patternDb === 0],
  ["of unlike patterns", (night: Night) => night.patternDb === 2],
  ["few receivers", (night: Night) => night.receivers < 14],
] as const)("nights with %s", (_, isOne) => {
  test("hold it in at least 88 of a hundred", () => {
    const own = told.filter(({ night }) => isOne(night));
    expect(own.filter(holds).length / own.length).toBeGreaterThanOrEqual(0.88);
  });
});

const share = (isOne: (verdict: HeardComparison["verdict"]) => boolean, truthDb: number): number => {
  const own = nights.filter(({ night }) => night.truthDb === truthDb);
  return own.filter(({ comparison }) => isOne(comparison.verdict)).length / own.length;
};

test("where there is no difference, at most five of a hundred are told one", () => {
  expect(share((verdict) => verdict !== "cannot-tell", 0)).toBeLessThanOrEqual(0.05);
});

test("3 dB are mostly told, and never the wrong way", () => {
  expect(share((verdict) => verdict === "better", 3)).toBeGreaterThan(0.7);
  expect(share((verdict) => verdict === "worse", 3)).toBe(0);
});
