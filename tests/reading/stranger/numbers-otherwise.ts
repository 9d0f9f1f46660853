/** Numbers written otherwise than a program would: signs, brackets, separators, exponents, gaps, slips. */
import { type Layout, roomy } from "./layout.js";
import { mark } from "./marking.js";
import { swrTable } from "./plain-tables.js";
import { linesOf, type Table, tableOf, type Variants } from "./printed-table.js";
import { at, type Rng } from "./random.js";

const sheet = (rng: Rng): Partial<Layout> => ({ ...roomy(rng), down: false });

/** Where no sign is left to see, its being there is for nobody to tell. */
function unsigned(table: Table, sign: string): void {
  if (!table.rows.some((row) => row[2]?.startsWith(sign))) table.truth.vector = "either";
}

/** Negative numbers as some print them. */
const SIGNS: readonly ((cell: string) => string)[] = [
  (cell) => cell.replace("-", "\u2212"),
  (cell) => cell.replace("-", "–"),
  (cell) => (cell.startsWith("-") ? cell : `+${cell}`),
  (cell) => (cell.startsWith("-") ? `${cell.slice(1)}-` : cell),
];

/** Ranges whose frequencies have thousands to separate, in kHz too. */
const THOUSANDS: readonly (readonly [number, number])[] = [
  [6900, 7300],
  [14000, 14350],
  [3400, 4000],
  [1800, 30000],
  [20800, 21600],
];

export const OTHERWISE: Variants = {
  "missing values": (rng) => {
    const table = tableOf(rng, { kinds: [rng.pick(["swr", "return-loss", "r-x"])], layout: sheet(rng) });
    const word = rng.pick(["", "-", "n/a", "---", "NaN", "?", "missing", "–", "none", "nil"]);
    const rows = mark(rng, table, () => word);
    table.truth.points = table.truth.points.filter((_, i) => !rows.includes(i));
    return { table };
  },
  "negative in brackets": (rng) => {
    const table = tableOf(rng, { kinds: ["r-x"], plainUnits: true, layout: sheet(rng) });
    for (const row of table.rows) row[2] = at(row, 2).replace(/^-(.*)$/, "($1)");
    unsigned(table, "(");
    return { table, lines: [...rng.maybe("Negative numbers are in brackets"), ...linesOf(table)] };
  },
  "sign written otherwise": (rng) => {
    const table = tableOf(rng, { kinds: [rng.pick(["r-x", "gamma-re-im", "s11-db"])], layout: { down: false } });
    const style = rng.pick(SIGNS);
    table.rows = table.rows.map(([frequency = "", ...cells]) => [frequency, ...cells.map(style)]);
    return { table };
  },
  "thousands separators": (rng) => {
    const kHz = rng.pick(THOUSANDS);
    const unit = rng.pick(["Hz", "kHz"] as const);
    const delimiter = rng.chance(0.5) ? ";" : roomy(rng).delimiter;
    const table = tableOf(rng, { kinds: ["swr"], kHz, layout: { unit, down: false, delimiter } });
    const beside = table.layout.decimal === "," ? [".", " ", "\u00a0", "'"] : [",", " ", "\u202f", "'", "’", "_"];
    const separator = rng.pick(beside);
    const separated = (whole: string): string => whole.replace(/\B(?=(\d{3})+$)/g, separator);
    for (const row of table.rows) row[0] = at(row, 0).replace(/\d+/, separated);
    return { table };
  },
  "a decimal comma slipped in": (rng) => {
    const table = swrTable(rng, { layout: { delimiter: rng.pick([";", "\t", "|"]), decimal: "." } });
    mark(rng, table, (cell) => cell.replace(".", ","), { share: 0.05 });
    return { table };
  },
  "letter O for nought": (rng) => {
    const table = swrTable(rng, { layout: roomy(rng) });
    mark(rng, table, (cell) => cell.replace("0", "O"), { share: 0.3 });
    return { table, clear: false };
  },
  exponents: (rng) => {
    const kinds = [rng.pick(["swr", "r-x", "gamma-re-im"])];
    const table = tableOf(rng, { kinds, layout: { unit: "Hz", down: false } });
    const letter = rng.pick(["e", "E"]);
    for (const row of table.rows) {
      const text = Number(row[0])
        .toExponential(6)
        .replace("e", letter)
        .replace(/\+(\d)$/, "+0$1");
      row[0] = text.replace(".", table.layout.decimal);
    }
    for (const point of table.truth.points) point.hzTol = 0.5e-6 * 10 ** Math.floor(Math.log10(point.hz)) + 1;
    return { table };
  },
  "a slipped blank or apostrophe": (rng) => {
    const table = swrTable(rng, { layout: roomy(rng) });
    const style = rng.pick(["'{}", "  {} ", "\u00a0{}"]);
    mark(rng, table, (cell) => style.replace("{}", cell), { share: 0.6 });
    return { table };
  },
  "last row cut off": (rng) => {
    const table = tableOf(rng, { kinds: ["r-x"], layout: sheet(rng) });
    at(table.rows, table.rows.length - 1).splice(1);
    table.truth.points.pop();
    unsigned(table, "-");
    return { table };
  },
};
