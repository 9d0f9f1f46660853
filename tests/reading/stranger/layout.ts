/** How a file is written down: delimiter, decimal mark, line ends, encoding, unit and order of the frequencies. */
import { Buffer } from "node:buffer";
import type { Rng } from "./random.js";

type Delimiter = "," | ";" | "\t" | " " | "|";

export interface Layout {
  delimiter: Delimiter;
  decimal: "." | ",";
  eol: string;
  encoding: "utf8" | "utf8bom" | "utf16le" | "utf16be" | "latin1";
  unit: "Hz" | "kHz" | "MHz" | "GHz";
  /** Frequencies fall. */
  down: boolean;
}

export const UNIT_HZ = { Hz: 1, kHz: 1e3, MHz: 1e6, GHz: 1e9 } as const;

/** A layout by chance but for what is fixed; a decimal comma never beside a comma as delimiter, unless fixed so. */
export function layoutOf(rng: Rng, fixed: Partial<Layout> = {}): Layout {
  const delimiter = fixed.delimiter ?? rng.pick<Delimiter>([",", ",", ";", ";", "\t", "\t", " ", "|"]);
  const decimal = fixed.decimal ?? (delimiter !== "," && rng.chance(0.35) ? "," : ".");
  return {
    delimiter,
    decimal,
    eol: fixed.eol ?? rng.pick(["\n", "\n", "\r\n", "\r\n", "\r"]),
    encoding: fixed.encoding ?? rng.pick(["utf8", "utf8", "utf8", "utf8bom", "utf16le", "utf16be", "latin1"]),
    unit: fixed.unit ?? rng.pick(["Hz", "kHz", "MHz", "MHz", "MHz", "GHz"]),
    down: fixed.down ?? rng.chance(0.15),
  };
}

/** A delimiter that leaves room for blanks within a cell. */
export function roomy(rng: Rng): Pick<Layout, "delimiter"> {
  return { delimiter: rng.pick([",", ";", "\t", "|"]) };
}

/** The bytes of a text; UTF-8 where Latin-1 lacks a character. */
export function encode(text: string, encoding: Layout["encoding"]): Uint8Array {
  if (encoding === "latin1" && [...text].every((c) => c.charCodeAt(0) < 256)) return Buffer.from(text, "latin1");
  if (encoding === "utf16le") return Buffer.from(`\ufeff${text}`, "utf16le");
  if (encoding === "utf16be") return Buffer.from(`\ufeff${text}`, "utf16le").swap16();
  return Buffer.from((encoding === "utf8bom" ? "\ufeff" : "") + text, "utf8");
}

/** Makes lines of cells: quoted where needed; blanks as delimiter become aligned columns, two blanks or more apart. */
export function joinRows(rows: readonly (readonly string[])[], layout: Layout, quoteAll = false): string[] {
  const { delimiter } = layout;
  if (delimiter === " ") {
    const single = rows.every((row) => row.every((cell) => cell !== "" && !/\s/.test(cell)));
    const columns = Math.max(...rows.map((row) => row.length));
    const widths = Array.from({ length: columns }, (_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)));
    if (single && columns % 2 === 0) return rows.map((row) => row.join(" "));
    return rows.map((row) => row.map((cell, i) => cell.padStart(widths[i] ?? 0)).join("  "));
  }
  const quote = (cell: string): string =>
    quoteAll || cell.includes(delimiter) || cell.includes('"') ? `"${cell.replaceAll('"', '""')}"` : cell;
  return rows.map((row) => row.map(quote).join(delimiter));
}

/** A number as it is printed; never "-0.00". */
export function number(value: number, decimals: number, layout: Pick<Layout, "decimal">): string {
  const text = (Math.abs(value) < 0.5 * 10 ** -decimals ? 0 : value).toFixed(decimals);
  return layout.decimal === "," ? text.replace(".", ",") : text;
}
