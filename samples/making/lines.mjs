// The invented sweeps of the canal boat's feedline alone, taken off the transformer, with nothing or a short at its far end.

import { CABIN, CABIN_FEEDLINE } from "./deployments.mjs";

/** @typedef {import("./complex.mjs").Complex} Complex */
/** @typedef {import("./station.mjs").Feedline} Feedline */
/** @typedef {import("./nec.mjs").Stretch} Stretch */
/**
 * @typedef {object} LineSweepPlan
 * @property {string} file also gives the date
 * @property {string} mooring
 * @property {string} rigText what the operator would write in the log
 * @property {Complex} end reflection at the far end
 * @property {Feedline} feedline
 * @property {string} format key of WRITERS
 * @property {number} seed
 */

const OPEN = { re: 1, im: 0 };
const SHORTED = { re: -1, im: 0 };

/** @type {Stretch[]} */
export const LINE_RANGE = [{ startKhz: 1000, stepKhz: 100, count: 301 }];
export const LINE_TAKEN_AT = CABIN;

/** @type {LineSweepPlan[]} */
export const LINE_SWEEPS = [
  {
    file: "2026-05-02-lantern-bridge-feedline-open.s1p",
    mooring: "Lantern Bridge",
    rigText: "the feedline alone, its far end open",
    end: OPEN,
    feedline: CABIN_FEEDLINE,
    format: "touchstoneMhzRi",
    seed: 2701,
  },
  {
    file: "2026-05-02-lantern-bridge-feedline-short.s1p",
    mooring: "Lantern Bridge",
    rigText: "the feedline alone, its far end shorted",
    end: SHORTED,
    feedline: CABIN_FEEDLINE,
    format: "touchstoneMhzRi",
    seed: 2702,
  },
  {
    file: "2026-07-11-lantern-bridge-wet-feedline-short.s1p",
    mooring: "Lantern Bridge",
    rigText: "the soaked feedline alone, its far end shorted",
    end: SHORTED,
    feedline: { ...CABIN_FEEDLINE, extraLossDbPerRootMhz: 0.35 },
    format: "touchstoneMhzRi",
    seed: 2703,
  },
];
