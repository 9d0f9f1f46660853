/** Headers that name too little, nothing, or something else than a reflection. */
import { joinRows } from "./layout.js";
import { tableOf, type Variants } from "./printed-table.js";
import { ask, askWithoutHeader, refuse, rewrite, rhoOfRow, wide } from "./treachery.js";

const TRANSMISSIONS = ["S21 (dB)", "Gain (dB)", "Insertion loss (dB)", "Transmission (dB)", "Field strength (dB)"];

export const TREACHEROUS_HEADERS: Variants = {
  "header names exchanged": (rng) => {
    const table = tableOf(rng, { kinds: ["swr"], kHz: [6900, 7300], layout: { unit: "kHz" } });
    table.head = ["SWR", "Frequency (kHz)"];
    return ask(table);
  },
  "value without a name": (rng) => {
    const table = wide(rng, "swr");
    table.head[1] = rng.pick(["Value", "Reading", "Y", "Channel 1"]);
    return ask(table);
  },
  "no header, two columns": (rng) => askWithoutHeader(wide(rng, rng.pick(["swr", "return-loss"]))),
  "no header, three columns": (rng) => askWithoutHeader(wide(rng, rng.pick(["r-x", "gamma-re-im", "db-angle"]))),
  "transmission, not reflection": (rng) => {
    const table = wide(rng, "s11-db");
    table.head[1] = rng.pick(TRANSMISSIONS);
    return refuse(table);
  },
  "words for SWR": (rng) => {
    const table = wide(rng, "swr");
    table.rows.forEach((row, i) => {
      row[1] = rhoOfRow(table, i) < 0.3 ? "good" : "poor";
    });
    return refuse(table);
  },
  "header and nothing more": (rng) => {
    const table = wide(rng, "swr");
    return { ...refuse(table), lines: joinRows([table.head], table.layout) };
  },
  "percent without a word": (rng) => {
    const table = wide(rng, "rho");
    rewrite(table, 1, 1, (row) => 100 * rhoOfRow(table, row));
    table.head[1] = rng.pick(["|Γ|", "Reflection coefficient", "rho"]);
    return ask(table);
  },
  "share of what is not said": (rng) => {
    const table = wide(rng, "reflected-share");
    table.head[1] = rng.pick(["Reflected (%)", "Reflection %", "percent reflected"]);
    // Of the power, or of the voltage.
    const voltage = structuredClone(table.truth);
    for (const point of voltage.points) {
      Object.assign(point, { re: point.re ** 2 + point.im ** 2, im: 0, tolRho: 1e-4 });
    }
    return { table, clear: false, truth: { kind: "sweeps", ways: [[table.truth], [voltage]], doubt: true } };
  },
  "decibels of what is not said": (rng) => {
    const table = wide(rng, "return-loss");
    table.head[1] = rng.pick(["dB", "Level (dB)", "Value (dB)", "Loss (dB)"]);
    return ask(table);
  },
};
