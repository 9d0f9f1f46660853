// The invented operator's deployment log, deployments.csv: a row for each sweep, as `feedpoint log init` lays it out.

/** @typedef {import("./deployments.mjs").SweepPlan} SweepPlan */
/** @typedef {{ shape: string, height: string, counterpoise: string, weather?: string }} Notes */

/** @type {Record<string, Notes>} by the file of the sweep; the weather is dry unless it says otherwise */
const NOTES = {
  "2026-02-21-tansy-reach-untrimmed.s1p": { shape: "sloper", height: "8 m", counterpoise: "3.2 m" },
  "2026-02-21-tansy-reach-trimmed.txt": { shape: "sloper", height: "8 m", counterpoise: "3.2 m" },
  "2026-03-14-heron-lock-sloper.s1p": { shape: "sloper", height: "9 m", counterpoise: "3.2 m" },
  "2026-03-21-heron-lock-sloper-again.csv": { shape: "sloper", height: "9 m", counterpoise: "3.2 m" },
  "2026-04-11-nettle-winding-inverted-l.s1p": { shape: "inverted L", height: "9 m", counterpoise: "2.6 m" },
  "2026-05-02-lantern-bridge-bridge-pole.s1p": { shape: "bridge pole", height: "12 m", counterpoise: "3.2 m" },
  "2026-05-16-moorhen-wharf-inverted-vee.csv": { shape: "inverted vee", height: "7 m", counterpoise: "3.2 m" },
  "2026-05-30-cuckoo-basin-counterpoise-deck.s1p": { shape: "sloper", height: "8 m", counterpoise: "4 m on deck" },
  "2026-05-30-cuckoo-basin-counterpoise-water.s1p": { shape: "sloper", height: "8 m", counterpoise: "4 m in water" },
  "2026-06-13-alder-bend-roof-low.csv": { shape: "along the roof", height: "2.2 m", counterpoise: "3.2 m" },
  "2026-06-27-owl-cutting-tree.tsv": { shape: "upright", height: "16 m", counterpoise: "2.6 m" },
  "2026-07-11-lantern-bridge-wet-feedline.csv": {
    shape: "bridge pole",
    height: "12 m",
    counterpoise: "3.2 m",
    weather: "rain",
  },
  "2026-07-25-nettle-winding-extra-feedline.s1p": { shape: "inverted L", height: "9 m", counterpoise: "2.6 m" },
  "2026-08-08-moorhen-wharf-poor-joint.csv": { shape: "inverted vee", height: "7 m", counterpoise: "3.2 m" },
};

const COLUMNS = ["file", "date", "mooring", "shape", "height", "counterpoise", "feedline", "weather", "data", "note"];

const cell = (text) => (/[",]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/**
 * @param {SweepPlan[]} sweeps
 * @param {number} usualFeedlineM
 * @returns {string} the log as CSV
 */
export function deploymentLog(sweeps, usualFeedlineM) {
  const rows = sweeps.map(({ file, mooring, feedline, rigText }) => {
    const { shape, height, counterpoise, weather = "dry" } = NOTES[file];
    const lengthM = feedline?.lengthM ?? usualFeedlineM;
    const line = lengthM === 0 ? "none" : `${lengthM} m`;
    return [
      file,
      file.slice(0, "2026-01-01".length),
      mooring,
      shape,
      height,
      counterpoise,
      line,
      weather,
      "invented",
      rigText,
    ];
  });
  return `${[COLUMNS, ...rows].map((row) => row.map(cell).join(",")).join("\n")}\n`;
}
