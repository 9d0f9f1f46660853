#!/usr/bin/env node
// Makes the demo sweeps from scratch: node samples/make-samples.mjs (needs nec2c on the path).
// The sweeps are committed, so neither the demo nor the tests run this.

import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { add, magnitude } from "./making/complex.mjs";
import { deploymentLog } from "./making/deployment-log.mjs";
import { CABIN, CABIN_FEEDLINE, SWEEPS, WHOLE_RANGE } from "./making/deployments.mjs";
import { LINE_RANGE, LINE_SWEEPS, LINE_TAKEN_AT } from "./making/lines.mjs";
import { feedPointImpedances } from "./making/nec.mjs";
import { normalFrom, seededUniform, wanderingJoint } from "./making/noise.mjs";
import { reportFiles } from "./making/reports.mjs";
import { reflectionAtAnalyser, throughFeedline } from "./making/station.mjs";
import { WRITERS } from "./making/write-sweep.mjs";

/** @typedef {import("./making/complex.mjs").Complex} Complex */
/** @typedef {import("./making/deployments.mjs").SweepPlan} SweepPlan */
/** @typedef {import("./making/lines.mjs").LineSweepPlan} LineSweepPlan */
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

/**
 * @param {LineSweepPlan} plan
 * @returns {Point[]}
 */
function lineSweep(plan) {
  const normal = normalFrom(seededUniform(plan.seed));
  return frequenciesHz(LINE_RANGE).map((frequencyHz) => {
    const clean = throughFeedline(plan.end, plan.feedline, frequencyHz);
    return { frequencyHz, reflection: add(clean, { re: NOISE * normal(), im: NOISE * normal() }) };
  });
}

/**
 * @param {string} folder
 * @param {SweepPlan | LineSweepPlan} plan
 * @param {string} takenAt
 * @param {Point[]} points
 */
function write(folder, plan, takenAt, points) {
  const label = {
    date: plan.file.slice(0, "2026-01-01".length),
    mooring: `${plan.mooring} (invented)`,
    rig: plan.rigText,
    takenAt,
  };
  writeFileSync(join(placeOf(folder), plan.file), WRITERS[plan.format](points, label));
  process.stdout.write(`${plan.file}\n`);
}

/**
 * @param {string} folder
 * @returns {string} its path; the folder is there
 */
function placeOf(folder) {
  const place = join(dirname(fileURLToPath(import.meta.url)), folder);
  mkdirSync(place, { recursive: true });
  return place;
}

// The reports and the lines first: they need no model run.
for (const [name, text] of Object.entries(reportFiles())) writeFileSync(join(placeOf("reports"), name), text);
for (const plan of LINE_SWEEPS) write("lines", plan, LINE_TAKEN_AT, lineSweep(plan));
for (const plan of SWEEPS) write("sweeps", plan, plan.takenAt ?? CABIN, sweep(plan));
writeFileSync(join(placeOf("sweeps"), "deployments.csv"), deploymentLog(SWEEPS, CABIN_FEEDLINE.lengthM));
