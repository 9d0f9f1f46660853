/**
 * Writes a NEC-2 deck, runs nec2c on it and reads the feed-point impedances.
 * A deck is text: one card a line, two letters and then numbers. Lengths in metres.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/**
 * @typedef {[number, number, number]} Point x, y and height, in metres
 *
 * @typedef {object} Wire
 * @property {number} tag number by which loads and the source refer to the wire
 * @property {number} segments
 * @property {Point} from
 * @property {Point} to
 * @property {number} radiusM
 *
 * @typedef {object} Coil a coil in the middle segment of a wire
 * @property {number} tag
 * @property {number} inductanceH
 * @property {number} resistanceOhms
 *
 * @typedef {object} Model everything nec2c must know of an antenna; the source sits in
 *   the middle segment of the wire with sourceTag
 * @property {Wire[]} wires
 * @property {Coil[]} coils
 * @property {number} conductivitySiemensPerM of the wires
 * @property {string} groundCard
 * @property {number} sourceTag
 *
 * @typedef {{fromHz: number, toHz: number, stepHz: number}} Grid
 *
 * @typedef {object} ImpedancePoint
 * @property {number} frequencyHz
 * @property {number} resistanceOhms
 * @property {number} reactanceOhms
 */

/** How many digits of each number nec2c prints. */
export const nec2cSignificantDigits = 5;

/** @returns {string} for example "1.3" */
export function nec2cVersion() {
  return execFileSync("nec2c", ["-v"], { encoding: "utf8" }).replace("nec2c", "").trim();
}

/** @param {Grid} grid @returns {number[]} every frequency of the grid, both ends included */
export function gridFrequenciesHz(grid) {
  const count = Math.round((grid.toHz - grid.fromHz) / grid.stepHz) + 1;
  return Array.from({ length: count }, (_, index) => grid.fromHz + index * grid.stepHz);
}

/**
 * @param {Model} model @param {number} segmentFactor odd, so that every wire with a middle
 *   segment keeps one
 * @returns {string[]} the cards that describe the antenna, without the frequencies
 */
export function antennaCards(model, segmentFactor = 1) {
  const wireCards = model.wires.map((wire) =>
    ["GW", wire.tag, wire.segments * segmentFactor, ...wire.from, ...wire.to, wire.radiusM].join(" "),
  );
  const coilCards = model.coils.map((coil) => {
    const segment = middleSegment(model, coil.tag, segmentFactor);
    return ["LD 0", coil.tag, segment, segment, coil.resistanceOhms, coil.inductanceH, 0].join(" ");
  });
  const sourceSegment = middleSegment(model, model.sourceTag, segmentFactor);
  return [
    ...wireCards,
    "GE 1",
    `LD 5 0 0 0 ${model.conductivitySiemensPerM}`,
    ...coilCards,
    model.groundCard,
    `EX 0 ${model.sourceTag} ${sourceSegment} 0 1.0 0.0`,
  ];
}

/** @param {Model} model @param {Grid} grid @returns {ImpedancePoint[]} */
export function feedPointImpedances(model, grid, segmentFactor = 1) {
  const frequenciesHz = gridFrequenciesHz(grid);
  const frequencyCard = `FR 0 ${frequenciesHz.length} 0 0 ${grid.fromHz / 1e6} ${grid.stepHz / 1e6}`;
  // PT -1 leaves the long list of currents out of the listing.
  const cards = ["CM feed point", "CE", ...antennaCards(model, segmentFactor), "PT -1", frequencyCard, "XQ", "EN"];
  const impedances = readImpedances(runNec2c(`${cards.join("\n")}\n`));
  if (impedances.length !== frequenciesHz.length) {
    throw new Error(`nec2c gave ${impedances.length} impedances for ${frequenciesHz.length} frequencies`);
  }
  // The listing rounds frequencies to five digits, so take them from the grid.
  return impedances.map((impedance, index) => ({ frequencyHz: frequenciesHz[index], ...impedance }));
}

/** @param {Model} model @param {number} tag @param {number} segmentFactor */
function middleSegment(model, tag, segmentFactor) {
  const wire = model.wires.find((candidate) => candidate.tag === tag);
  if (!wire) throw new Error(`no wire has tag ${tag}`);
  const segments = wire.segments * segmentFactor;
  if (segments % 2 === 0) throw new Error(`wire ${tag} has an even number of segments, so no middle one`);
  return (segments + 1) / 2;
}

/** @param {string} deck @returns {string} the listing */
function runNec2c(deck) {
  const folder = mkdtempSync(join(tmpdir(), "nec-data-"));
  try {
    const deckFile = join(folder, "antenna.nec");
    const listingFile = join(folder, "antenna.out");
    writeFileSync(deckFile, deck);
    execFileSync("nec2c", ["-i", deckFile, "-o", listingFile], { stdio: ["ignore", "ignore", "inherit"] });
    return readFileSync(listingFile, "utf8");
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** @param {string} listing @returns {{resistanceOhms: number, reactanceOhms: number}[]} */
function readImpedances(listing) {
  const lines = listing.split("\n");
  const impedances = [];
  lines.forEach((line, index) => {
    if (!line.includes("ANTENNA INPUT PARAMETERS")) return;
    // Two lines of column names follow; then tag, segment, voltage, current, impedance.
    const values = lines[index + 3].trim().split(/\s+/).map(Number);
    const [resistanceOhms, reactanceOhms] = values.slice(6, 8);
    if (!Number.isFinite(resistanceOhms) || !Number.isFinite(reactanceOhms)) {
      throw new Error(`cannot read an impedance from: ${lines[index + 3]}`);
    }
    impedances.push({ resistanceOhms, reactanceOhms });
  });
  return impedances;
}
