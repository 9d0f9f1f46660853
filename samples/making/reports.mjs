// Two invented nights on the air with the same wire as a sloper and as a vee, switched A B B A every two minutes. The vee is 2.5 dB
// up on 40 m, by as much as each receiver lies where it lies, and no different on 20 m. Call signs begin with Q, which is never issued.

import { normalFrom, seededUniform } from "./noise.mjs";

const SLOT = 120_000;
const OWN = { call: "Q0BOAT", locator: "IO92ok" };
const ORDER = ["sloper", "vee", "vee", "sloper"];
/** Half a decibel of level per step of the decoder's slope. */
const FLOOR_DB = -27;

const NIGHTS = [
  { start: Date.UTC(2026, 8, 5, 18, 0), slots: 60, band: "40m", megahertz: 7.0401, vee: 2.5, seed: 5 },
  { start: Date.UTC(2026, 8, 6, 9, 0), slots: 40, band: "20m", megahertz: 14.0971, vee: 0, seed: 6 },
];

const LOCATORS = [
  "JO22",
  "JO31",
  "JN58",
  "IO91",
  "IO63",
  "JP50",
  "KO02",
  "IM67",
  "IN88",
  "JM75",
  "FN42",
  "JN47",
  "HP94",
  "JO65",
];

/** @returns {{time: number, deployment: string, receiver: string, locator: string, snr: number, band: string, megahertz: number}[]} */
function nightOf({ start, slots, band, megahertz, vee, seed }) {
  const uniform = seededUniform(seed);
  const normal = normalFrom(uniform);
  return LOCATORS.flatMap((locator, r) => {
    const path = -20 + 18 * uniform();
    const own = vee === 0 ? 0 : 0.8 * normal();
    const share = 0.25 + 0.75 * uniform();
    let fade = normal();
    return Array.from({ length: slots }, (_, i) => {
      fade = 0.8 * fade + 0.6 * normal();
      const deployment = ORDER[i % 4];
      const level = path + 3 * fade + (deployment === "vee" ? vee + own : 0) + normal();
      const isDecoded = uniform() < share && uniform() < 1 / (1 + Math.exp(FLOOR_DB - level));
      const receiver = `Q1${String.fromCharCode(65 + r)}X`;
      return isDecoded
        ? [{ time: start + i * SLOT, deployment, receiver, locator, snr: Math.round(level), band, megahertz }]
        : [];
    }).flat();
  }).sort((one, other) => one.time - other.time);
}

const stamp = (time) => new Date(time).toISOString().slice(0, 16).replace("T", " ");
const field = (name, text) => `<${name}:${text.length}>${text} `;

/** The first night as a table, the second as an ADIF log, and what was up when. */
export function reportFiles() {
  const [evening = [], morning = []] = NIGHTS.map(nightOf);
  const table = evening.map(({ time, receiver, locator, snr, megahertz }) =>
    [stamp(time), OWN.call, receiver, OWN.locator, locator, megahertz, "WSPR", snr, 1].join(","),
  );
  const records = morning.map(({ time, receiver, locator, snr, band }) =>
    [
      field("STATION_CALLSIGN", OWN.call),
      field("CALL", receiver),
      field("QSO_DATE", stamp(time).slice(0, 10).replaceAll("-", "")),
      field("TIME_ON", stamp(time).slice(11).replace(":", "")),
      field("BAND", band),
      field("MODE", "WSPR"),
      field("RST_RCVD", String(snr)),
      field("TX_PWR", "1"),
      field("GRIDSQUARE", locator),
      field("MY_GRIDSQUARE", OWN.locator),
      "<EOR>",
    ].join(""),
  );
  const turns = NIGHTS.flatMap(({ start, slots }) =>
    Array.from(
      { length: slots },
      (_, i) => `,${ORDER[i % 4]},${stamp(start + i * SLOT)},${stamp(start + (i + 1) * SLOT)}`,
    ),
  );
  return {
    "2026-09-05-gosling-lock-evening.csv": `# Invented reports, not heard by anybody.\ntime,transmitter,receiver,tx locator,rx locator,MHz,mode,SNR dB,power W\n${table.join("\n")}\n`,
    "2026-09-06-gosling-lock-morning.adi": `Invented reports, not heard by anybody.\n<ADIF_VER:5>3.1.7 <EOH>\n${records.join("\n")}\n`,
    "deployments.csv": `file,deployment,up,down\n${turns.join("\n")}\n`,
  };
}
