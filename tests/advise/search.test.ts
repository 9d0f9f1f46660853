/**
 * The search against trying everything: of each of twenty antennas (one of each invented family) the worst wanted band is served as
 * well as by the best of all candidates, looked at one by one on the fine grid. With `FEEDPOINT_ALL_PARTS=1` from all the usual parts,
 * which takes minutes; else from few, so that every candidate is looked at here as well.
 */
import { deploymentOf, feedlineFrom, planById, type StatedParts, wishesOf } from "@feedpoint/core";
import { expect, test } from "vitest";
import { knownOf } from "../../packages/core/src/bands/known.js";
import { termsOf } from "../../packages/core/src/jobs/advise/advise-options.js";
import { antennaOf } from "../../packages/core/src/jobs/advise/antenna.js";
import { bestCandidates, roomFor } from "../../packages/core/src/jobs/advise/best-candidates.js";
import { candidatesIn } from "../../packages/core/src/jobs/advise/candidates.js";
import { compareScores, type Score } from "../../packages/core/src/jobs/advise/score.js";
import { FOLLOWS_ALL, scoreIn, viewOf } from "../../packages/core/src/jobs/advise/view.js";
import { gridOf } from "../../packages/core/src/jobs/advise/wish-grid.js";
import { seededUniform } from "../support/seeded-noise.js";
import { antennaFamilies } from "../support/strange-antennas/families.js";
import { evenly, type Pair, present, sweepOfReflections } from "../support/sweeps.js";

const plan = present(planById("itu-r1"), "itu-r1");
const FAMILIES = [...antennaFamilies("tuned"), ...antennaFamilies("held-out")];
const FEW: StatedParts = {
  lines: [
    { kind: "rg-213", lengthM: 8 },
    { kind: "rg-6", lengthM: 8 },
  ],
  transformers: [{ ratio: 4 }, { ratio: 49 }],
  coils: [2.2e-7, 6.8e-7, 2.2e-6, 6.8e-6],
  capacitors: [3.3e-11, 1e-10, 3.3e-10, 1e-9],
  manualTuner: true,
};
const HAND = process.env.FEEDPOINT_ALL_PARTS === "1" ? {} : { parts: FEW };
const WANTED = [["40m"], ["40m", "20m"], ["80m", "40m", "20m"], ["20m", "15m", "10m"]];
const FREQUENCIES = evenly(3.2e6, 30.4e6, 5e4);

const better = (a: Score | null, b: Score) => a === null || compareScores(b, a) > 0;

test.each(FAMILIES.map((family, i) => ({ name: family.name, family, i })))("$name", ({ family, i }) => {
  const response = family.draw(seededUniform(700 + i));
  const reflections = FREQUENCIES.map((hz): Pair => {
    const { re, im } = response(hz);
    return [re, im];
  });
  const wishes = wishesOf({ plan, bands: WANTED[i % WANTED.length] ?? [] });
  const known = knownOf(deploymentOf([sweepOfReflections(FREQUENCIES, reflections)]), { plan });
  const feedline = i % 2 === 0 ? feedlineFrom({ kind: "rg-213", lengthM: 8 }) : null;
  const antenna = antennaOf(known.parts, feedline);
  const terms = termsOf({}, known.limits, 0.75);
  const view = viewOf(antenna, gridOf(wishes, 41), terms, FOLLOWS_ALL);
  let best: Score | null = null;
  for (const candidate of candidatesIn(roomFor(antenna, wishes, HAND))) {
    const score = scoreIn(view, candidate);
    if (better(best, score)) best = score;
  }
  const found = bestCandidates(antenna, wishes, terms, FOLLOWS_ALL, HAND).map(({ score }) => score);
  expect(Math.max(...found.map(({ worst }) => worst))).toBeGreaterThanOrEqual((best?.worst ?? 1) - 0.01);
  const alike = found.filter(({ worst }) => worst >= (best?.worst ?? 1) - 0.01);
  expect(Math.max(...alike.map(({ mean }) => mean))).toBeGreaterThanOrEqual((best?.mean ?? 1) - 0.01);
});
