// Writes a sweep in one of the generic text forms that analysers and spreadsheets export.

import { angleDeg, magnitude } from "./complex.mjs";
import { impedanceOf, REFERENCE_OHM } from "./station.mjs";

/** @typedef {import("./complex.mjs").Complex} Complex */
/** @typedef {{ frequencyHz: number, reflection: Complex }} Point */
/** @typedef {{ date: string, mooring: string, rig: string, takenAt: string }} Label */
/** @typedef {(points: Point[], label: Label) => string} Writer */

const NOTICE = "Invented demo data, computed from a model, not a measurement.";
const SIGNIFICANT_DIGITS = 6;

/**
 * @param {number} value
 * @returns {string}
 */
function digits(value) {
  return value.toPrecision(SIGNIFICANT_DIGITS);
}

/**
 * @param {number} frequencyHz
 * @returns {string}
 */
function mhz(frequencyHz) {
  return (frequencyHz / 1e6).toFixed(3);
}

/**
 * @param {Complex} reflection
 * @returns {number} 20 log of the magnitude, negative for a passive load
 */
function magnitudeDb(reflection) {
  return 20 * Math.log10(magnitude(reflection));
}

/**
 * @param {Complex} reflection
 * @returns {number}
 */
function swr(reflection) {
  const rho = magnitude(reflection);
  if (rho >= 1) {
    throw new Error("no SWR exists for a reflection coefficient of 1 or more");
  }
  return (1 + rho) / (1 - rho);
}

/**
 * @param {string[]} lines
 * @returns {string}
 */
function text(lines) {
  return `${lines.join("\n")}\n`;
}

/**
 * @param {string} optionLine
 * @param {(frequencyHz: number) => string} writeFrequency
 * @param {(reflection: Complex) => [number, number]} pairOf
 * @returns {Writer}
 */
function touchstone(optionLine, writeFrequency, pairOf) {
  return (points, label) =>
    text([
      `! ${NOTICE}`,
      `! Mooring: ${label.mooring}, ${label.date}`,
      `! Rig: ${label.rig}`,
      `! Taken at: ${label.takenAt}`,
      optionLine,
      ...points.map(({ frequencyHz, reflection }) => {
        const [first, second] = pairOf(reflection);
        return `${writeFrequency(frequencyHz)} ${digits(first)} ${digits(second)}`;
      }),
    ]);
}

/**
 * @param {string[]} preamble whole lines up to and including the column names
 * @param {string} delimiter
 * @param {(point: Point) => string[]} fieldsOf
 * @param {Point[]} points
 * @returns {string}
 */
function table(preamble, delimiter, fieldsOf, points) {
  return text([...preamble, ...points.map((point) => fieldsOf(point).join(delimiter))]);
}

/**
 * @param {Point} point
 * @returns {string[]} MHz, ohms, ohms, SWR
 */
function resistanceReactanceSwr({ frequencyHz, reflection }) {
  const { re, im } = impedanceOf(reflection);
  return [mhz(frequencyHz), digits(re), digits(im), digits(swr(reflection))];
}

/** @type {Record<string, Writer>} */
export const WRITERS = {
  touchstoneMhzRi: touchstone("# MHz S RI R 50", mhz, ({ re, im }) => [re, im]),
  touchstoneHzDb: touchstone("# HZ S DB R 50", String, (s) => [magnitudeDb(s), angleDeg(s)]),
  touchstoneKhzMa: touchstone(
    "# kHz S MA R 50",
    (frequencyHz) => String(frequencyHz / 1000),
    (s) => [magnitude(s), angleDeg(s)],
  ),
  // Touchstone 1.x: impedances are divided by the reference resistance.
  touchstoneMhzZ: touchstone("# MHz Z RI R 50", mhz, (s) => {
    const { re, im } = impedanceOf(s);
    return [re / REFERENCE_OHM, im / REFERENCE_OHM];
  }),
  commaRxSwr: (points) =>
    table([`# ${NOTICE}`, "Frequency (MHz),R (ohm),X (ohm),SWR"], ",", resistanceReactanceSwr, points),
  commaS11Db: (points) =>
    table(
      [`# ${NOTICE}`, "Frequency (Hz),S11 (dB),Phase (deg)"],
      ",",
      ({ frequencyHz, reflection }) => [
        String(frequencyHz),
        digits(magnitudeDb(reflection)),
        digits(angleDeg(reflection)),
      ],
      points,
    ),
  semicolonDecimalComma: (points) =>
    table(
      [`# ${NOTICE}`, "Frequenz (MHz);R (Ohm);X (Ohm);SWR"],
      ";",
      (point) => resistanceReactanceSwr(point).map((field) => field.replace(".", ",")),
      points,
    ),
  tabImpedanceAngle: (points) =>
    table(
      [`# ${NOTICE}`, "freq_MHz\t|Z|\tangle_deg"],
      "\t",
      ({ frequencyHz, reflection }) => {
        const impedance = impedanceOf(reflection);
        return [mhz(frequencyHz), digits(magnitude(impedance)), digits(angleDeg(impedance))];
      },
      points,
    ),
  blankRealImaginary: (points) =>
    table(
      [`# ${NOTICE}`, "# freq_Hz  re  im"],
      "  ",
      ({ frequencyHz, reflection }) => [String(frequencyHz), digits(reflection.re), digits(reflection.im)],
      points,
    ),
  preambleReturnLoss: (points, label) =>
    table(
      [
        "Notice,Invented and modelled; not a measurement",
        `Mooring,${label.mooring}`,
        `Date,${label.date}`,
        `Rig,${label.rig.replaceAll(",", ";")}`,
        `Taken at,${label.takenAt}`,
        `Points,${points.length}`,
        `Reference impedance (ohm),${REFERENCE_OHM}`,
        "",
        "Freq(kHz),Return Loss (dB),Phase (deg)",
      ],
      ",",
      ({ frequencyHz, reflection }) => [
        String(frequencyHz / 1000),
        digits(-magnitudeDb(reflection)),
        digits(angleDeg(reflection)),
      ],
      points,
    ),
  scalarSwr: (points) =>
    table(
      [`# ${NOTICE}`, "Frequency (MHz),SWR"],
      ",",
      ({ frequencyHz, reflection }) => [mhz(frequencyHz), swr(reflection).toFixed(2)],
      points,
    ),
};
