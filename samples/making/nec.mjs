// The wire as an NEC-2 model: builds a deck, runs nec2c, reads the feed-point impedances.

import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** @typedef {import("./complex.mjs").Complex} Complex */
/** @typedef {[number, number, number]} Point x, y and height, metres */
/** @typedef {{ startKhz: number, stepKhz: number, count: number }} Stretch */
/** @typedef {{ relativePermittivity: number, conductivitySm: number }} Ground */
/**
 * @typedef {object} Rig
 * @property {number} wireLengthM length of the radiating wire, from the transformer to its far end
 * @property {Point[]} wirePath corners of the wire; the last one only gives the direction
 * @property {number} counterpoiseLengthM
 * @property {Point[]} counterpoisePath corners of the counterpoise, same convention
 * @property {Ground} ground
 */

const WIRE_RADIUS_M = 0.001;
const SEGMENT_LENGTH_M = 0.4; // 1/25 of a wavelength at 30 MHz
const COPPER_CONDUCTIVITY_SM = 5.8e7;

/**
 * Cuts a path to a length, so that re-rigging or trimming never needs a corner worked out by hand.
 *
 * @param {Point[]} path
 * @param {number} lengthM
 * @returns {Point[]}
 */
export function cutPath(path, lengthM) {
  const corners = [path[0]];
  let remainingM = lengthM;
  for (let i = 1; i < path.length; i += 1) {
    const from = path[i - 1];
    const to = path[i];
    const legM = distanceM(from, to);
    if (legM >= remainingM) {
      const share = remainingM / legM;
      corners.push(/** @type {Point} */ (from.map((value, axis) => value + share * (to[axis] - value))));
      return corners;
    }
    corners.push(to);
    remainingM -= legM;
  }
  throw new Error(`the path is ${remainingM.toFixed(2)} m shorter than the wire`);
}

/**
 * @param {Point} from
 * @param {Point} to
 * @returns {number}
 */
function distanceM(from, to) {
  return Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
}

/**
 * One GW card per straight leg. Tags count up from `firstTag`.
 *
 * @param {Point[]} corners
 * @param {number} firstTag
 * @returns {string[]}
 */
function wireCards(corners, firstTag) {
  return corners.slice(1).map((end, index) => {
    const start = corners[index];
    const segments = Math.max(1, Math.round(distanceM(start, end) / SEGMENT_LENGTH_M));
    const ends = [...start, ...end].map((value) => value.toFixed(4)).join(" ");
    return `GW ${firstTag + index} ${segments} ${ends} ${WIRE_RADIUS_M}`;
  });
}

/**
 * @param {Rig} rig
 * @param {Stretch[]} stretches
 * @returns {string} the deck; the source is the wire's first segment, next to the counterpoise
 */
export function necDeck(rig, stretches) {
  const wire = wireCards(cutPath(rig.wirePath, rig.wireLengthM), 1);
  const counterpoise = wireCards(cutPath(rig.counterpoisePath, rig.counterpoiseLengthM), wire.length + 1);
  const { relativePermittivity, conductivitySm } = rig.ground;
  const sweeps = stretches.flatMap(({ startKhz, stepKhz, count }) => [
    `FR 0 ${count} 0 0 ${startKhz / 1000} ${stepKhz / 1000}`,
    "XQ",
  ]);
  return [
    "CM end-fed wire with a short counterpoise",
    "CE",
    ...wire,
    ...counterpoise,
    "GE 1",
    `LD 5 0 0 0 ${COPPER_CONDUCTIVITY_SM}`,
    `GN 2 0 0 0 ${relativePermittivity} ${conductivitySm}`,
    "EX 0 1 1 0 1.0 0.0",
    ...sweeps,
    "EN",
    "",
  ].join("\n");
}

/**
 * @param {string} output text written by nec2c
 * @returns {Complex[]} one impedance for each frequency, in the order of the deck
 */
export function readImpedances(output) {
  const lines = output.split("\n");
  const impedances = [];
  for (let i = 0; i < lines.length; i += 1) {
    if (!lines[i].includes("ANTENNA INPUT PARAMETERS")) {
      continue;
    }
    // Two rows of column names follow; the impedance is in columns 7 and 8.
    const columns = lines[i + 3].trim().split(/\s+/).map(Number);
    impedances.push({ re: columns[6], im: columns[7] });
  }
  return impedances;
}

/**
 * @param {Rig} rig
 * @param {Stretch[]} stretches
 * @returns {Complex[]}
 */
export function feedPointImpedances(rig, stretches) {
  const folder = mkdtempSync(join(tmpdir(), "sweep-model-"));
  try {
    const deckFile = join(folder, "deck.nec");
    const outputFile = join(folder, "deck.out");
    writeFileSync(deckFile, necDeck(rig, stretches));
    execFileSync("nec2c", ["-i", deckFile, "-o", outputFile], { stdio: "pipe" });
    const impedances = readImpedances(readFileSync(outputFile, "utf8"));
    const wanted = stretches.reduce((sum, stretch) => sum + stretch.count, 0);
    if (impedances.length !== wanted || impedances.some(({ re, im }) => !(re > 0) || !Number.isFinite(im))) {
      throw new Error(`nec2c gave ${impedances.length} impedances for ${wanted} frequencies, or an impossible one`);
    }
    return impedances;
  } finally {
    rmSync(folder, { recursive: true });
  }
}
