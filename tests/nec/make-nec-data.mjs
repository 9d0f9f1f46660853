/**
 * Writes one CSV of feed-point impedances per modelled antenna beside this file.
 *
 *   node make-nec-data.mjs                 write all files and print a summary of each
 *   node make-nec-data.mjs NAME...         the same for the antennas with these names
 *   node make-nec-data.mjs --convergence   write nothing; show how far three times the segments move the results
 *
 * Needs nec2c on the search path.
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { antennas } from "./antennas.mjs";
import { antennaCards, feedPointImpedances, nec2cSignificantDigits, nec2cVersion } from "./nec2c.mjs";
import { describeResonances, describeUsableRanges } from "./summary.mjs";

/** @typedef {import("./antennas.mjs").Antenna} Antenna */
/** @typedef {import("./nec2c.mjs").ImpedancePoint} ImpedancePoint */

const coarseStepCount = 4;

const args = process.argv.slice(2);
const names = args.filter((arg) => !arg.startsWith("--"));
const chosen = antennas.filter((antenna) => names.length === 0 || names.includes(antenna.name));

for (const antenna of chosen) {
  if (args.includes("--convergence")) printConvergence(antenna);
  else writeAntenna(antenna);
}

/** @param {Antenna} antenna */
function writeAntenna(antenna) {
  const points = sweep(antenna, antenna.grid);
  const file = fileURLToPath(new URL(`${antenna.name}.csv`, import.meta.url));
  writeFileSync(file, csvText(antenna, points));
  const lines = [...describeResonances(points), ...describeUsableRanges(points)];
  console.log([`${antenna.name}: ${points.length} points`, ...lines].join("\n  "));
}

/** @param {Antenna} antenna @param {import("./nec2c.mjs").Grid} grid @returns {ImpedancePoint[]} */
function sweep(antenna, grid, segmentFactor = 1) {
  const points = feedPointImpedances(antenna.model, grid, segmentFactor);
  return antenna.between ? points.map((point) => antenna.between(point)) : points;
}

/** @param {Antenna} antenna @param {ImpedancePoint[]} points @returns {string} */
function csvText(antenna, points) {
  const comments = [
    ...antenna.words,
    `an invented antenna, modelled with nec2c ${nec2cVersion()} (NEC-2, method of moments); not measured`,
    `nec2c prints ${nec2cSignificantDigits} significant digits, so R and X carry rounding noise of order 1e-5, at most 5e-5, of their size`,
    ...antennaCards(antenna.model).map((card) => `deck: ${card}`),
  ];
  const rows = points.map((point) =>
    [point.frequencyHz, shortNumber(point.resistanceOhms, antenna), shortNumber(point.reactanceOhms, antenna)].join(
      ",",
    ),
  );
  return [...comments.map((text) => `# ${text}`), "frequencyHz,resistanceOhms,reactanceOhms", ...rows, ""].join("\n");
}

/** @param {number} value @param {Antenna} antenna */
function shortNumber(value, antenna) {
  return String(Number(value.toPrecision(antenna.significantDigits)));
}

/** @param {Antenna} antenna */
function printConvergence(antenna) {
  const stepHz = (antenna.grid.toHz - antenna.grid.fromHz) / coarseStepCount;
  const coarse = { ...antenna.grid, stepHz };
  const asWritten = sweep(antenna, coarse);
  const refined = sweep(antenna, coarse, 3);
  console.log(antenna.name);
  asWritten.forEach((point, index) => {
    console.log(`  ${point.frequencyHz / 1e6} MHz: ${impedanceText(point)} becomes ${impedanceText(refined[index])}`);
  });
}

/** @param {ImpedancePoint} point */
function impedanceText(point) {
  const sign = point.reactanceOhms < 0 ? "-" : "+";
  return `${point.resistanceOhms.toFixed(2)} ${sign} j${Math.abs(point.reactanceOhms).toFixed(2)}`;
}
