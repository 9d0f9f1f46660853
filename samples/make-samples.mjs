#!/usr/bin/env node
// Makes the demo sweeps from scratch: node samples/make-samples.mjs (needs nec2c on the path).
// The sweeps are committed, so neither the demo nor the tests run this.

import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { add, magnitude } from "./making/complex.mjs";
import { deploymentLog } from "./making/deployment-log.mjs";
import { CABIN, CABIN_FEEDLINE, SWEEPS, WHOLE_RANGE } from "./making/deployments.mjs";
import { feedPointImpedances } from "./making/nec.mjs";
import { normalFrom, seededUniform, wanderingJoint } from "./making/noise.mjs";
import { reflectionAtAnalyser } from "./making/station.mjs";
import { WRITERS } from "./making/write-sweep.mjs";

/** @typedef {import("./making/complex.mjs").Complex} Complex */
/** @typedef {import("./making/deployments.mjs").SweepPlan} SweepPlan */
/** @typedef {import("./making/nec.mjs").Rig} Rig */
/** @typedef {import("./making/nec.mjs").Stretch} Stretch */
/** @typedef {import("./making/write-sweep.mjs").Point} Point */

// Standard deviation of each component of the reflection coefficient.
const NOISE = 0.0007;

/** @type {Map<Rig, Complex[]>} the model run is the slow part, and some rigs are swept twice */
const impedancesByRig = new Map();

/**
 * @param {Rig} rig
 * @param {Stretch[]} stretches every sweep of one rig must use the same stretches
 * @returns {Complex[]}
 */
function modelledImpedances(rig, stretches) {
  const known = impedancesByRig.get(rig);
  const impedances = known ?? feedPointImpedances(rig, stretches);
  impedancesByRig.set(rig, impedances);
  return impedances;
}

/**
 * @param {Stretch[]} stretches
 * @returns {number[]} whole hertz
 */
function frequenciesHz(stretches) {
  return stretches.flatMap(({ startKhz, stepKhz, count }) =>
    Array.from({ length: count }, (_, index) => (startKhz + index * stepKhz) * 1000),
  );
}

/**
 * @param {SweepPlan} plan
 * @returns {Point[]}
 */
function sweep(plan) {
  const stretches = plan.stretches ?? WHOLE_RANGE;
  const feedline = plan.feedline ?? CABIN_FEEDLINE;
  const uniform = seededUniform(plan.seed);
  const normal = normalFrom(uniform);
  const nextJointOhm = plan.joint ? wanderingJoint(plan.joint, uniform) : () => 0;
  const impedances = modelledImpedances(plan.rig, stretches);

  return frequenciesHz(stretches).map((frequencyHz, index) => {
    const clean = reflectionAtAnalyser(impedances[index], nextJointOhm(), feedline, frequencyHz);
    if (!(magnitude(clean) < 1)) {
      throw new Error(`${plan.file}: the model reflects more than it receives at ${frequencyHz} Hz`);
    }
    return { frequencyHz, reflection: add(clean, { re: NOISE * normal(), im: NOISE * normal() }) };
  });
}

const folder = join(dirname(fileURLToPath(import.meta.url)), "sweeps");
mkdirSync(folder, { recursive: true });
for (const plan of SWEEPS) {
  const label = {
    date: plan.file.slice(0, "2026-01-01".length),
    mooring: `${plan.mooring} (invented)`,
    rig: plan.rigText,
    takenAt: plan.takenAt ?? CABIN,
  };
  writeFileSync(join(folder, plan.file), WRITERS[plan.format](sweep(plan), label));
  process.stdout.write(`${plan.file}\n`);
}
writeFileSync(join(folder, "deployments.csv"), deploymentLog(SWEEPS, CABIN_FEEDLINE.lengthM));
