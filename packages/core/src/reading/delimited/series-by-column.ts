import { distance } from "fastest-levenshtein";
import { type Finding, finding } from "../../sweep/finding.js";
import type { TableColumn } from "./table-column.js";
import type { TableInHz } from "./table-in-hz.js";
import { MOST_SERIES, type TableOfSeries } from "./table-of-series.js";
import type { TextsOfCells } from "./texts-of-cells.js";

/** Of the rows this share repeats a frequency where a table holds several series. */
const LEAST_REPEATED_SHARE = 0.3;
/** Rows of a longer table are not looked at for what tells series apart. */
const MOST_ROWS = 50_000;
const FEWEST_ROWS = 4;

/**
 * Tells the rows of several series apart by a column of words or numbers, one row of each at every frequency, or each with frequencies
 * of its own; null where no column does.
 */
export function byColumn(table: TableInHz, cells: TextsOfCells | null, findings: Finding[]): TableOfSeries | null {
  const { columns, index } = table;
  const { values: frequency, isFilled } = filledDown(columns[index] as TableColumn);
  const count = frequency.length;
  if (cells === null || count < FEWEST_ROWS || count > MOST_ROWS) return null;
  const isOneWay = isAscending(frequency);
  if (isOneWay && !columns.some(({ name, role }) => role.quantity === "other" && NAMES_SERIES.test(name))) return null;
  const areRepeated = count - new Set(frequency).size >= LEAST_REPEATED_SHARE * count;
  for (const [c, { name, role }] of columns.entries()) {
    if (c === index || role.quantity !== "other") continue;
    const keys = namesDown(cells().map((row) => row[c] ?? ""));
    const names = [...new Set(keys)];
    if (names.length < 2 || names.length > MOST_SERIES || names.includes("")) continue;
    const places = new Set(keys.map((key, row) => `${key}\n${frequency[row]}`));
    const areTogether = () =>
      names.every((key) => keys.lastIndexOf(key) - keys.indexOf(key) + 1 === countOf(keys, key));
    const areApart =
      (NAMES_SERIES.test(name) && areTogether()) ||
      (!isOneWay && (areRepeated || (!isFilled && startsAnewWith(keys, frequency))));
    if (places.size < count || !areApart) continue;
    const severity = mayBeSlips(keys, names) ? "caution" : "info";
    findings.push(finding(severity, "series-told-apart", { column: name, values: names }));
    const filled = columns.map((column, i) => (i === index && isFilled ? { ...column, values: frequency } : column));
    return { ...table, columns: filled, series: { names, of: Uint32Array.from(keys, (key) => names.indexOf(key)) } };
  }
  return null;
}

/** What several sweeps, one below the other and perhaps in bands of their own, are told apart by (from memory). */
const NAMES_SERIES =
  /^[^\p{L}]*(?:series|antennas?|aerials?|antennes?|antenn[ei]?n?|antenă|antén[ay]?|antenas?|antennák?|antenni|антенн?а|κεραία|アンテナ|天线|天線|안테나|wire|draht|deployment|version|sweep|trace|label|name|anten)[^\p{L}]*$/iu;

const countOf = (keys: readonly string[], wanted: string): number => keys.filter((key) => key === wanted).length;

/** A name of so few rows, spelled nearly as one of many, may be a slip of that. */
const FEW_ROWS = 2;
const MANY_ROWS = 5;
const SHORTEST_NAME = 4;
const MOST_LETTERS = 2;

function mayBeSlips(keys: readonly string[], names: readonly string[]): boolean {
  const isNear = (name: string, other: string) =>
    !/\d/.test(name + other) && distance(name.toLowerCase(), other.toLowerCase()) <= MOST_LETTERS;
  const usual = names.filter((name) => name.length >= SHORTEST_NAME && countOf(keys, name) >= MANY_ROWS);
  return names.some((name) => countOf(keys, name) <= FEW_ROWS && usual.some((other) => isNear(name, other)));
}

/** Frequencies that were written once for several rows stand for those below. */
function filledDown({ values }: TableColumn): { readonly values: Float64Array; readonly isFilled: boolean } {
  let first = 0;
  while (first < values.length && Number.isFinite(values[first])) first++;
  if (first === values.length) return { values, isFilled: false };
  const filled = Float64Array.from(values);
  for (let row = Math.max(first, 1); row < filled.length; row++) {
    if (!Number.isFinite(filled[row])) filled[row] = filled[row - 1] as number;
  }
  return { values: filled, isFilled: true };
}

/** Names that were written once for several rows stand for those below. */
function namesDown(names: readonly string[]): readonly string[] {
  let last = "";
  return names.map((name) => {
    last = name || last;
    return last;
  });
}

/** Whether each name has its rows together, and the frequencies begin anew where another name does and nowhere else. */
function startsAnewWith(keys: readonly string[], frequency: Float64Array): boolean {
  const step = (row: number) => (frequency[row] as number) - (frequency[row - 1] as number);
  const turns = keys.flatMap((_, row) => (row > 0 && !(step(row) * step(1) > 0) ? [row] : []));
  const changes = keys.flatMap((key, row) => (row > 0 && key !== keys[row - 1] ? [row] : []));
  return changes.length === new Set(keys).size - 1 && turns.join() === changes.join();
}

function isAscending(values: Float64Array): boolean {
  for (let i = 1; i < values.length; i++) if (!((values[i] as number) > (values[i - 1] as number))) return false;
  return true;
}
