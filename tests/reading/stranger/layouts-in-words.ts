/** Sweeps without a header of columns: sentences, names beside the values, columns named above. */
import { joinRows, number, UNIT_HZ } from "./layout.js";
import { plainestTable, swrTable } from "./plain-tables.js";
import { tableOf, type Variants } from "./printed-table.js";
import { at } from "./random.js";

/** {f} is the frequency with its unit, {s} the SWR. */
const SENTENCES = ["{f}: SWR {s}", "{f}, SWR {s}", "at {f} SWR {s}", "SWR at {f} = {s}", "Frequency {f} SWR {s}"];

export const IN_WORDS: Variants = {
  sentences: (rng) => {
    const table = swrTable(rng, { layout: { unit: rng.pick(["kHz", "MHz"]) } });
    const { unit } = table.layout;
    const style = rng.pick(SENTENCES);
    const said = ([frequency = "", swr = ""]: string[]): string =>
      style.replace("{f}", `${frequency} ${unit}`).replace("{s}", swr);
    return { table, lines: table.rows.map(said) };
  },
  "names and values": (rng) => {
    const rx = rng.chance(0.4);
    const layout = { down: false, decimal: "." } as const;
    const table = tableOf(rng, { kinds: [rx ? "r-x" : "swr"], plainUnits: true, layout });
    const { unit } = table.layout;
    const [equals, gap, told] = rng.pick([
      ["=", " ", ""],
      ["=", ", ", unit],
      [":", " ", unit],
      ["=", "; ", unit],
      [" = ", ", ", ` ${unit}`],
    ] as const);
    const swrNames = [
      ["f", "swr"],
      ["freq", "SWR"],
      ["F", "VSWR"],
    ];
    const names = rx ? ["f", "r", "x"] : rng.pick(swrNames);
    const named = (cell: string, i: number): string => at(names, i) + equals + cell + (i === 0 ? told : "");
    return {
      table,
      clear: told !== "" || unit === "MHz",
      lines: table.rows.map((row) => row.map(named).join(gap)),
    };
  },
  "records of lines": (rng) => {
    const table = swrTable(rng, { layout: { unit: rng.pick(["kHz", "MHz"]) }, points: 11 });
    const { unit } = table.layout;
    return {
      table,
      lines: table.rows.flatMap(([frequency, swr]) => [`Frequency: ${frequency} ${unit}`, `SWR: ${swr}`, ""]),
    };
  },
  "columns named above in a list": (rng) => {
    const kind = rng.pick(["swr", "r-x", "return-loss"]);
    const table = plainestTable(rng, { decimal: "." }, kind);
    const names = kind === "swr" ? ["SWR"] : kind === "r-x" ? ["R (ohm)", "X (ohm)"] : ["return loss (dB)"];
    const list = [`frequency (${table.layout.unit})`, ...names];
    const above = rng.pick([
      [`columns: ${list.join(", ")}`],
      [`# columns: ${list.join(", ")}`],
      ["Columns:", ...list.map((name, i) => `  ${i + 1}. ${name}`)],
      list.map((name, i) => `Column ${i + 1}: ${name}`),
      [`Fields = ${list.join("; ")}`],
    ]);
    return { table, lines: [...above, ...rng.maybe(""), ...joinRows(table.rows, table.layout)] };
  },
  "start and step only": (rng) => {
    const table = swrTable(rng);
    const { unit } = table.layout;
    const [first, second] = [at(table.swept.hz, 0), at(table.swept.hz, 1)];
    const told = (hz: number): string => `${number(hz / UNIT_HZ[unit], 6, { decimal: "." })} ${unit}`;
    const values = table.rows.map((row) => at(row, 1));
    return { table, clear: false, lines: [`start ${told(first)}, step ${told(second - first)}`, "SWR", ...values] };
  },
};
