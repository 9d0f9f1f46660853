/**
 * The antennas whose feed-point impedance is modelled. All are invented; none was measured.
 * Wires lie along x or y, heights are above ground, all lengths in metres.
 */
import { nec2cSignificantDigits } from "./nec2c.mjs";
import { throughTransformer, transformer49 } from "./transformer.mjs";

/**
 * @typedef {object} Antenna
 * @property {string} name of the CSV file
 * @property {string[]} words one comment line each
 * @property {import("./nec2c.mjs").Model} model
 * @property {import("./nec2c.mjs").Grid} grid
 * @property {number} significantDigits written for R and X
 * @property {(point: import("./nec2c.mjs").ImpedancePoint) => import("./nec2c.mjs").ImpedancePoint} [between]
 *   what stands between the modelled feed point and the connector
 */

// Average ground, relative permittivity 13 and 0.005 S/m: common practice, no source.
// GN 2 is the Sommerfeld solution. nec2c interpolates it only up to one wavelength, so antennas that are
// larger than that at their highest frequency get GN 0, the smooth reflection-coefficient approximation.
const sommerfeldGround = "GN 2 0 0 0 13.0 0.005";
const approximateGround = "GN 0 0 0 0 13.0 0.005";

const copperSiemensPerM = 5.8e7;
const aluminiumSiemensPerM = 3.5e7;
const khz = 1e3;
const mhz = 1e6;

/** Half of the short wire that holds the source of a centre-fed antenna. */
const feedHalfLengthM = 0.1;

/** @type {Antenna} */
const dipole20 = {
  name: "dipole-20m",
  words: ["half-wave dipole for 20 m, horizontal copper wire 10.32 m long, 8 m above average ground"],
  model: {
    wires: [{ tag: 1, segments: 41, from: [0, -5.16, 8], to: [0, 5.16, 8], radiusM: 0.001024 }],
    coils: [],
    conductivitySiemensPerM: copperSiemensPerM,
    groundCard: sommerfeldGround,
    sourceTag: 1,
  },
  grid: { fromHz: 13 * mhz, toHz: 15.4 * mhz, stepHz: 10 * khz },
  significantDigits: nec2cSignificantDigits,
};

/** @type {Antenna} */
const dipole10 = {
  name: "dipole-10m-wide",
  words: [
    "wide-band half-wave dipole for 10 m, horizontal aluminium tube 4.96 m long and 30 mm thick, 4 m above average ground",
  ],
  model: {
    wires: [{ tag: 1, segments: 41, from: [0, -2.48, 4], to: [0, 2.48, 4], radiusM: 0.015 }],
    coils: [],
    conductivitySiemensPerM: aluminiumSiemensPerM,
    groundCard: sommerfeldGround,
    sourceTag: 1,
  },
  grid: { fromHz: 26 * mhz, toHz: 31.5 * mhz, stepHz: 10 * khz },
  significantDigits: nec2cSignificantDigits,
};

const veeLegM = 10.2;

/**
 * Inverted vee with its apex 10 m up. Its leg length runs from the middle of the feed to the end.
 * @param {string} name @param {string} words @param {number} legM @param {number} droopDegrees
 * @returns {Antenna}
 */
function vee40(name, words, legM, droopDegrees) {
  const feedHeightM = 10;
  const slopeM = legM - feedHalfLengthM;
  const droop = (droopDegrees * Math.PI) / 180;
  const endX = roundToThousandth(feedHalfLengthM + slopeM * Math.cos(droop));
  const endHeightM = roundToThousandth(feedHeightM - slopeM * Math.sin(droop));
  const radiusM = 0.001;
  return {
    name,
    words: [
      words,
      `apex 10 m, legs ${legM.toFixed(4)} m, ${droopDegrees} degrees below horizontal, copper wire of 1 mm radius, average ground`,
    ],
    model: {
      wires: [
        {
          tag: 1,
          segments: 1,
          from: [-feedHalfLengthM, 0, feedHeightM],
          to: [feedHalfLengthM, 0, feedHeightM],
          radiusM,
        },
        { tag: 2, segments: 51, from: [feedHalfLengthM, 0, feedHeightM], to: [endX, 0, endHeightM], radiusM },
        { tag: 3, segments: 51, from: [-feedHalfLengthM, 0, feedHeightM], to: [-endX, 0, endHeightM], radiusM },
      ],
      coils: [],
      conductivitySiemensPerM: copperSiemensPerM,
      groundCard: sommerfeldGround,
      sourceTag: 1,
    },
    grid: { fromHz: 3 * mhz, toHz: 12 * mhz, stepHz: 10 * khz },
    significantDigits: nec2cSignificantDigits,
  };
}

/** @type {Antenna} */
const fanDipole = {
  name: "fan-dipole-40-20m",
  words: [
    "fan dipole for 40 m and 20 m: two pairs of copper legs on one feed point 9 m up, average ground",
    "the longer legs are horizontal, the shorter ones hang 25 degrees below them",
  ],
  model: {
    wires: [
      { tag: 1, segments: 1, from: [-0.1, 0, 9], to: [0.1, 0, 9], radiusM: 0.001 },
      { tag: 2, segments: 51, from: [0.1, 0, 9], to: [10.2, 0, 9], radiusM: 0.001 },
      { tag: 3, segments: 51, from: [-0.1, 0, 9], to: [-10.2, 0, 9], radiusM: 0.001 },
      { tag: 4, segments: 25, from: [0.1, 0, 9], to: [4.78, 0, 6.82], radiusM: 0.001 },
      { tag: 5, segments: 25, from: [-0.1, 0, 9], to: [-4.78, 0, 6.82], radiusM: 0.001 },
    ],
    coils: [],
    conductivitySiemensPerM: copperSiemensPerM,
    groundCard: approximateGround,
    sourceTag: 1,
  },
  grid: { fromHz: 6 * mhz, toHz: 15.5 * mhz, stepHz: 10 * khz },
  significantDigits: nec2cSignificantDigits,
};

/** @type {Antenna} */
const endFed = {
  name: "end-fed-49-to-1",
  words: [
    "end-fed wire, half a wave on 40 m: 20.3 m of horizontal copper wire 9 m up, 1.6 m counterpoise hanging from the feed",
    "seen through a 49:1 transformer that is calculated here, not modelled by nec2c:",
    `turns ratio ${transformer49.turnsRatio}; on the 50 ohm side magnetising inductance ${transformer49.magnetisingInductanceH} H,`,
    `core loss ${transformer49.coreLossResistanceOhms} ohm in parallel, leakage inductance ${transformer49.leakageInductanceH} H, capacitor ${transformer49.capacitanceF} F across the connector`,
  ],
  model: {
    wires: [
      { tag: 1, segments: 1, from: [0, 0, 9], to: [0.2, 0, 9], radiusM: 0.001 },
      { tag: 2, segments: 101, from: [0.2, 0, 9], to: [20.3, 0, 9], radiusM: 0.001 },
      { tag: 3, segments: 8, from: [0, 0, 9], to: [0, 0, 7.4], radiusM: 0.001 },
    ],
    coils: [],
    conductivitySiemensPerM: copperSiemensPerM,
    groundCard: approximateGround,
    sourceTag: 1,
  },
  grid: { fromHz: 6 * mhz, toHz: 30 * mhz, stepHz: 20 * khz },
  significantDigits: 8,
  between: throughTransformer,
};

const coilInductanceH = 21.5e-6;
const coilQ = 100;
const coilFrequencyHz = 3.65 * mhz;

/** @type {Antenna} */
const loadedVertical = {
  name: "loaded-vertical-80m",
  words: [
    "short vertical for 80 m, 14 m tall, with a coil at half its height and four radials of 19 m, base 2.5 m above average ground",
    `coil ${coilInductanceH} H, Q ${coilQ} at ${coilFrequencyHz} Hz; its series resistance is held at that value for all frequencies`,
  ],
  model: {
    wires: [
      { tag: 1, segments: 1, from: [0, 0, 2.5], to: [0, 0, 3], radiusM: 0.005 },
      { tag: 2, segments: 13, from: [0, 0, 3], to: [0, 0, 9.5], radiusM: 0.005 },
      { tag: 3, segments: 1, from: [0, 0, 9.5], to: [0, 0, 10], radiusM: 0.005 },
      { tag: 4, segments: 13, from: [0, 0, 10], to: [0, 0, 16.5], radiusM: 0.005 },
      { tag: 5, segments: 38, from: [0, 0, 2.5], to: [19, 0, 2.5], radiusM: 0.001 },
      { tag: 6, segments: 38, from: [0, 0, 2.5], to: [-19, 0, 2.5], radiusM: 0.001 },
      { tag: 7, segments: 38, from: [0, 0, 2.5], to: [0, 19, 2.5], radiusM: 0.001 },
      { tag: 8, segments: 38, from: [0, 0, 2.5], to: [0, -19, 2.5], radiusM: 0.001 },
    ],
    coils: [
      {
        tag: 3,
        inductanceH: coilInductanceH,
        resistanceOhms: roundToThousandth((2 * Math.PI * coilFrequencyHz * coilInductanceH) / coilQ),
      },
    ],
    conductivitySiemensPerM: copperSiemensPerM,
    groundCard: sommerfeldGround,
    sourceTag: 1,
  },
  grid: { fromHz: 3.2 * mhz, toHz: 4.2 * mhz, stepHz: 10 * khz },
  significantDigits: nec2cSignificantDigits,
};

/** @type {Antenna[]} */
export const antennas = [
  dipole20,
  vee40("vee-40m", "inverted vee for 40 m", veeLegM, 30),
  vee40("vee-40m-trimmed", "the inverted vee for 40 m with its wire cut by 2 %", veeLegM * 0.98, 30),
  vee40("vee-40m-drooped", "the inverted vee for 40 m, the same wire with its ends pulled lower", veeLegM, 45),
  endFed,
  loadedVertical,
  fanDipole,
  dipole10,
];

/** Keeps the decks short. @param {number} value */
function roundToThousandth(value) {
  return Math.round(value * 1000) / 1000;
}
