// The invented season: how the wire was rigged at each mooring, and which sweeps were taken.

/** @typedef {import("./nec.mjs").Rig} Rig */
/** @typedef {import("./nec.mjs").Point} Point */
/** @typedef {import("./nec.mjs").Stretch} Stretch */
/** @typedef {import("./station.mjs").Feedline} Feedline */
/** @typedef {{ steadyOhm: number, worseOhm: number }} Joint */
/**
 * @typedef {object} SweepPlan
 * @property {string} file also gives the date
 * @property {string} mooring
 * @property {string} rigText what the operator would write in the log
 * @property {Rig} rig
 * @property {string} format key of WRITERS
 * @property {number} seed
 * @property {Stretch[]} [stretches] default: 3 to 30 MHz
 * @property {Feedline} [feedline] default: the usual 12 m
 * @property {string} [takenAt] default: in the cabin
 * @property {Joint} [joint] default: a sound joint
 */

const BANK = { relativePermittivity: 13, conductivitySm: 0.005 };
const WATER = { relativePermittivity: 80, conductivitySm: 0.05 };

export const WHOLE_RANGE = [{ startKhz: 3000, stepKhz: 50, count: 541 }];
export const CABIN_FEEDLINE = { lengthM: 12, extraLossDbPerRootMhz: 0 };
export const CABIN = "cabin end of the feedline";

const AROUND_40_M = [{ startKhz: 6800, stepKhz: 10, count: 71 }];
const ONLY_BANDS = [
  { startKhz: 3500, stepKhz: 10, count: 51 },
  { startKhz: 7000, stepKhz: 10, count: 31 },
  { startKhz: 10100, stepKhz: 5, count: 11 },
  { startKhz: 14000, stepKhz: 10, count: 36 },
  { startKhz: 18068, stepKhz: 10, count: 11 },
  { startKhz: 21000, stepKhz: 10, count: 46 },
  { startKhz: 24890, stepKhz: 10, count: 11 },
  { startKhz: 28000, stepKhz: 20, count: 86 },
];
const AT_TRANSFORMER = { lengthM: 0, extraLossDbPerRootMhz: 0 };

// The transformer sits 1.6 m up. The wire starts with 0.8 m straight on from the counterpoise,
// which keeps the modelled source away from the first bend.
/** @type {Point} */
const FEED = [0, 0, 1.6];
/** @type {Point} */
const LEAD = [0.8, 0, 1.6];

/**
 * @param {Point[]} pathAfterLead the last point only gives the direction of the wire's end
 * @param {Partial<Rig>} [changes]
 * @returns {Rig}
 */
function rig(pathAfterLead, changes = {}) {
  return {
    wireLengthM: 20.2,
    wirePath: [FEED, LEAD, ...pathAfterLead],
    counterpoiseLengthM: 3.2,
    counterpoisePath: [FEED, [-5, 0, 1.6]],
    ground: BANK,
    ...changes,
  };
}

const untrimmed = rig([[22, 0, 8.8]], { wireLengthM: 20.6 });
const trimmed = rig([[22, 0, 8.8]]);
const sloper = rig([[22, 0, 10.4]]);
const sloperAgain = rig([[22, 0, 10.3]]);
const invertedL = rig(
  [
    [2.4, 0, 9],
    [30, 0, 8.5],
  ],
  { counterpoiseLengthM: 2.6 },
);
const bridgePole = rig([
  [7, 0, 12],
  [25, 0, 9],
]);
const invertedVee = rig([
  [10, 0, 7],
  [25, 0, -0.5],
]);
const counterpoiseOnDeck = rig(
  [
    [8, 0, 8],
    [30, 0, 6],
  ],
  {
    counterpoiseLengthM: 4,
    counterpoisePath: [FEED, [-2, 0, 1.6], [-2, 0.4, 1.6], [3, 0.4, 1.6]],
    ground: WATER,
  },
);
// The model must not touch the water, so the wire lies 5 cm above it.
const counterpoiseInWater = {
  ...counterpoiseOnDeck,
  counterpoisePath: /** @type {Point[]} */ ([FEED, [-0.4, 0, 1.6], [-0.8, 0, 0.05], [-9, 0, 0.05]]),
};
// Forward along one side of the roof, across the bow, and back along the other side.
const roofLow = rig([
  [1.6, 0, 2.2],
  [9.8, 0, 2.2],
  [9.8, 1.6, 2.2],
  [-9, 1.6, 2.2],
]);
const tree = rig(
  [
    [3, 0, 16],
    [10, 4, 13],
  ],
  { counterpoiseLengthM: 2.6 },
);

/** @type {SweepPlan[]} */
export const SWEEPS = [
  {
    file: "2026-02-21-tansy-reach-untrimmed.s1p",
    mooring: "Tansy Reach",
    rigText: "new wire of 20.6 m, sloper to an 8 m post",
    rig: untrimmed,
    stretches: AROUND_40_M,
    feedline: AT_TRANSFORMER,
    takenAt: "transformer, no feedline",
    format: "touchstoneMhzZ",
    seed: 2601,
  },
  {
    file: "2026-02-21-tansy-reach-trimmed.txt",
    mooring: "Tansy Reach",
    rigText: "same sloper, wire trimmed by 2 % to 20.2 m",
    rig: trimmed,
    stretches: AROUND_40_M,
    feedline: AT_TRANSFORMER,
    takenAt: "transformer, no feedline",
    format: "blankRealImaginary",
    seed: 2602,
  },
  {
    file: "2026-03-14-heron-lock-sloper.s1p",
    mooring: "Heron Lock",
    rigText: "sloper, far end 9 m up",
    rig: sloper,
    format: "touchstoneMhzRi",
    seed: 2603,
  },
  {
    file: "2026-03-21-heron-lock-sloper-again.csv",
    mooring: "Heron Lock",
    rigText: "same sloper a week later, far end a hand lower",
    rig: sloperAgain,
    format: "commaRxSwr",
    seed: 2604,
  },
  {
    file: "2026-04-11-nettle-winding-inverted-l.s1p",
    mooring: "Nettle Winding",
    rigText: "inverted L, 9 m up and then level, counterpoise 2.6 m",
    rig: invertedL,
    format: "touchstoneHzDb",
    seed: 2605,
  },
  {
    file: "2026-05-02-lantern-bridge-bridge-pole.s1p",
    mooring: "Lantern Bridge",
    rigText: "over a pole on the bridge, 12 m up, far end falling to 10.8 m",
    rig: bridgePole,
    format: "touchstoneKhzMa",
    seed: 2606,
  },
  {
    file: "2026-05-16-moorhen-wharf-inverted-vee.csv",
    mooring: "Moorhen Wharf",
    rigText: "inverted vee over the boathook mast, 7 m up",
    rig: invertedVee,
    format: "semicolonDecimalComma",
    seed: 2607,
  },
  {
    file: "2026-05-30-cuckoo-basin-counterpoise-deck.s1p",
    mooring: "Cuckoo Basin",
    rigText: "bent sloper over water, counterpoise 4 m folded back on the deck",
    rig: counterpoiseOnDeck,
    format: "touchstoneMhzRi",
    seed: 2608,
  },
  {
    file: "2026-05-30-cuckoo-basin-counterpoise-water.s1p",
    mooring: "Cuckoo Basin",
    rigText: "same wire, counterpoise 4 m let down into the water",
    rig: counterpoiseInWater,
    format: "touchstoneMhzRi",
    seed: 2609,
  },
  {
    file: "2026-06-13-alder-bend-roof-low.csv",
    mooring: "Alder Bend",
    rigText: "low along the roof, out one side and back the other, 2.2 m up",
    rig: roofLow,
    format: "scalarSwr",
    seed: 2610,
  },
  {
    file: "2026-06-27-owl-cutting-tree.tsv",
    mooring: "Owl Cutting",
    rigText: "nearly upright in a tree, 16 m up, counterpoise 2.6 m",
    rig: tree,
    stretches: ONLY_BANDS,
    format: "tabImpedanceAngle",
    seed: 2611,
  },
  {
    file: "2026-07-11-lantern-bridge-wet-feedline.csv",
    mooring: "Lantern Bridge",
    rigText: "same bridge pole as in May, feedline soaked",
    rig: bridgePole,
    feedline: { ...CABIN_FEEDLINE, extraLossDbPerRootMhz: 0.35 },
    format: "preambleReturnLoss",
    seed: 2612,
  },
  {
    file: "2026-07-25-nettle-winding-extra-feedline.s1p",
    mooring: "Nettle Winding",
    rigText: "same inverted L as in April, 9 m of feedline added",
    rig: invertedL,
    feedline: { ...CABIN_FEEDLINE, lengthM: 21 },
    format: "touchstoneHzDb",
    seed: 2613,
  },
  {
    file: "2026-08-08-moorhen-wharf-poor-joint.csv",
    mooring: "Moorhen Wharf",
    rigText: "same inverted vee as in May, corroded joint at the transformer",
    rig: invertedVee,
    joint: { steadyOhm: 4, worseOhm: 10 },
    format: "commaS11Db",
    seed: 2614,
  },
];
