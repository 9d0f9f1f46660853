// From the wire's feed-point impedance to what the analyser sees at its socket.

import { add, divide, multiply, polar, scale } from "./complex.mjs";

/** @typedef {import("./complex.mjs").Complex} Complex */
/** @typedef {{ lengthM: number, extraLossDbPerRootMhz: number }} Feedline */

export const REFERENCE_OHM = 50;

// A 49:1 transformer with two turns on the coax side, all values seen from that side.
// Plausible figures for a ferrite ring core, chosen for this model, no source.
export const TRANSFORMER = {
  turnsRatio: 7,
  magnetisingH: 8e-6,
  leakageH: 0.12e-6,
  coreLossOhm: 700,
  compensationF: 100e-12,
};

// Fit to a published RG-58C/U data sheet: dB per 100 m = root * sqrt(f) + linear * f, f in MHz.
const MATCHED_LOSS_ROOT = 1.3583;
const MATCHED_LOSS_LINEAR = 0.0259;
const VELOCITY_FACTOR = 0.66;
const LIGHT_SPEED_MS = 299792458;
const DB_PER_NEPER = 20 / Math.LN10;

/**
 * @param {Complex[]} impedances
 * @returns {Complex} all of them in parallel
 */
function parallel(...impedances) {
  const one = { re: 1, im: 0 };
  const admittance = impedances.map((impedance) => divide(one, impedance)).reduce(add);
  return divide(one, admittance);
}

/**
 * @param {Complex} wireOhm
 * @param {number} frequencyHz
 * @returns {Complex} impedance on the coax side, ohms
 */
export function throughTransformer(wireOhm, frequencyHz) {
  const omega = 2 * Math.PI * frequencyHz;
  const stepped = scale(wireOhm, 1 / TRANSFORMER.turnsRatio ** 2);
  const withLeakage = add(stepped, { re: 0, im: omega * TRANSFORMER.leakageH });
  return parallel(
    withLeakage,
    { re: 0, im: omega * TRANSFORMER.magnetisingH },
    { re: TRANSFORMER.coreLossOhm, im: 0 },
    { re: 0, im: -1 / (omega * TRANSFORMER.compensationF) },
  );
}

/**
 * @param {Complex} impedanceOhm
 * @returns {Complex}
 */
export function reflectionOf(impedanceOhm) {
  const reference = { re: REFERENCE_OHM, im: 0 };
  return divide(add(impedanceOhm, scale(reference, -1)), add(impedanceOhm, reference));
}

/**
 * @param {Complex} reflection
 * @returns {Complex} ohms
 */
export function impedanceOf(reflection) {
  const one = { re: 1, im: 0 };
  return scale(divide(add(one, reflection), add(one, scale(reflection, -1))), REFERENCE_OHM);
}

/**
 * @param {Feedline} feedline
 * @param {number} frequencyHz
 * @returns {number} one-way matched loss, dB
 */
export function matchedLossDb(feedline, frequencyHz) {
  const rootMhz = Math.sqrt(frequencyHz / 1e6);
  const dryDbPer100m = MATCHED_LOSS_ROOT * rootMhz + MATCHED_LOSS_LINEAR * rootMhz ** 2;
  return (dryDbPer100m * feedline.lengthM) / 100 + feedline.extraLossDbPerRootMhz * rootMhz;
}

/**
 * The feedline's characteristic impedance is taken as the reference impedance, so it only turns and shrinks the reflection.
 *
 * @param {Complex} reflection at the far end
 * @param {Feedline} feedline
 * @param {number} frequencyHz
 * @returns {Complex} reflection coefficient at the near end
 */
export function throughFeedline(reflection, feedline, frequencyHz) {
  const lossNeper = matchedLossDb(feedline, frequencyHz) / DB_PER_NEPER;
  const phaseRad = (2 * Math.PI * frequencyHz * feedline.lengthM) / (VELOCITY_FACTOR * LIGHT_SPEED_MS);
  return multiply(reflection, polar(Math.exp(-2 * lossNeper), -2 * phaseRad));
}

/**
 * @param {Complex} wireOhm feed-point impedance of the wire
 * @param {number} jointOhm series resistance where the feedline meets the transformer
 * @param {Feedline} feedline
 * @param {number} frequencyHz
 * @returns {Complex} reflection coefficient at the analyser
 */
export function reflectionAtAnalyser(wireOhm, jointOhm, feedline, frequencyHz) {
  const loadOhm = add(throughTransformer(wireOhm, frequencyHz), { re: jointOhm, im: 0 });
  return throughFeedline(reflectionOf(loadOhm), feedline, frequencyHz);
}
