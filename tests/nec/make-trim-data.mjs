/**
 * Writes trims/*.csv: feed-point impedances of each antenna of trimmed-antennas.mjs as it is, and with its wire cut or made longer.
 *
 *   node make-trim-data.mjs          all of them; some minutes
 *   node make-trim-data.mjs NAME...  those with these names
 *
 * Needs nec2c on the search path.
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { antennaCards, feedPointImpedances, nec2cVersion } from "./nec2c.mjs";
import { trimmedAntennas } from "./trimmed-antennas.mjs";

const BANDS_MHZ = {
  "80m": [3.5, 3.8],
  "40m": [7, 7.2],
  "30m": [10.1, 10.15],
  "20m": [14, 14.35],
  "17m": [18.068, 18.168],
  "15m": [21, 21.45],
  "10m": [28, 29.7],
};
const CHANGES = [-0.08, -0.04, -0.02, 0.02, 0.04, 0.08];
/** What is swept beside a band, as a share of its frequency. */
const BESIDE = 0.13;

const names = process.argv.slice(2);
for (const antenna of trimmedAntennas.filter(({ name }) => names.length === 0 || names.includes(name))) {
  const rows = [0, ...CHANGES].flatMap((change) =>
    antenna.bands.flatMap((band) => {
      const [low, high] = BANDS_MHZ[band];
      const [from, to, steps] = change === 0 ? [low * (1 - BESIDE), high * (1 + BESIDE), 110] : [low, high, 20];
      const grid = { fromHz: from * 1e6, toHz: to * 1e6, stepHz: ((to - from) * 1e6) / steps };
      return feedPointImpedances(antenna.model(1 + change), grid).map(
        ({ frequencyHz, resistanceOhms, reactanceOhms }) =>
          [change, band, Math.round(frequencyHz), resistanceOhms, reactanceOhms].join(","),
      );
    }),
  );
  const comments = [
    antenna.words,
    `an invented antenna, modelled with nec2c ${nec2cVersion()} (NEC-2, method of moments); not measured`,
    `stays as it is when the wire is cut: ${antenna.fixed}`,
    ...(antenna.wireLengthM === undefined
      ? []
      : [`${antenna.count} of ${antenna.fixedLengthM} m each; the wire that is cut: ${antenna.wireLengthM} m`]),
    `ideal transformer between feed point and connector, not in these impedances: ${antenna.ratio}`,
    ...antennaCards(antenna.model(1)).map((card) => `deck as it is: ${card}`),
  ];
  const text = [
    ...comments.map((line) => `# ${line}`),
    "lengthChange,band,frequencyHz,resistanceOhms,reactanceOhms",
    ...rows,
    "",
  ];
  writeFileSync(fileURLToPath(new URL(`trims/${antenna.name}.csv`, import.meta.url)), text.join("\n"));
  console.log(`${antenna.name}: ${rows.length} points`);
}
