import { type FrequencyUnit, UNIT_EXPONENTS } from "../options/units.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { FormTable } from "./form.js";
import { quantityIn } from "./title-words.js";

/** "+20", "+ 20 kHz" */
const OFFSET = /^\+\s*(\d+(?:[.,]\d+)?)\s*(?:[kM]Hz)?$/i;
const SPLIT = /\s*[;\t|]\s*|\s*,\s+|,(?=\+)|\s{2,}/;
const FEWEST_OFFSETS = 2;
const FEWEST_ROWS = 2;

/**
 * Readings in a grid: a row for each frequency, and in each column what is added to it: "kHz;+0;+20;+40" over "7000;1.6;1.5;1.4". What the
 * readings are stands above.
 */
export function offsetGrid(content: string): FormTable | null {
  const lines = content.split(/\r\n|\n|\r/);
  const head = lines.findIndex((line) => offsetsIn(line) !== null);
  const found = offsetsIn(lines[head] ?? "");
  const quantity = quantityIn(lines.slice(0, Math.max(0, head)));
  if (found === null || quantity === null) return null;
  const { unit, offsets } = found;
  const grid = lines.flatMap((line, i) => {
    const [base = "", ...readings] = cellsOf(line);
    return i > head && readings.length > 0 && isNumber(base) ? [{ base: numberOf(base), readings, line: i + 1 }] : [];
  });
  const step = Math.min(...grid.slice(1).map(({ base }, i) => base - (grid[i]?.base ?? 0)));
  const scale = scaleOf(unit, Math.max(...offsets), step);
  if (grid.length < FEWEST_ROWS || scale === null || grid.some(({ readings }) => readings.length > offsets.length))
    return null;
  return {
    name: "a grid of readings",
    comments: lines.slice(0, head),
    header: [`frequency (${unit})`, quantity],
    rows: grid.flatMap(({ base, readings, line }) =>
      readings.flatMap((reading, c) =>
        reading === "" ? [] : [{ cells: [printed(base + (offsets[c] ?? 0) * scale), reading], line }],
      ),
    ),
  };
}

const cellsOf = (line: string): readonly string[] =>
  line
    .trim()
    .replace(/^\|/, "")
    .replace(/[|;]$/, "")
    .split(SPLIT)
    .map((cell) => cell.trim());
const isNumber = (cell: string): boolean => /^\d+(?:[.,]\d+)?$/.test(cell);
const numberOf = (cell: string): number => Number(cell.replace(",", "."));
const printed = (value: number): string => String(Number(value.toPrecision(12)));

/** The unit of the first column and what the others add, from 0 on or ascending; null for another line. */
function offsetsIn(line: string): { readonly unit: FrequencyUnit; readonly offsets: readonly number[] } | null {
  const [first = "", ...cells] = cellsOf(line);
  const offsets = cells.map((cell) => numberOf(OFFSET.exec(cell)?.[1] ?? ""));
  const { quantity, frequencyUnit } = roleFromHeader(first);
  const areAlong = offsets.every((offset, i) => i === 0 || offset > (offsets[i - 1] ?? 0));
  const areOffsets = cells.length >= FEWEST_OFFSETS && cells.every((cell) => OFFSET.test(cell)) && areAlong;
  return areOffsets && quantity === "frequency" && frequencyUnit ? { unit: frequencyUnit, offsets } : null;
}

/** What an offset counts in the unit of the rows: as much, or, where that leads beyond the next row, as many kilohertz. */
function scaleOf(unit: FrequencyUnit, greatest: number, step: number): number | null {
  const kilohertz = 10 ** (UNIT_EXPONENTS.kHz - UNIT_EXPONENTS[unit]);
  return [1, kilohertz].find((scale) => greatest * scale < step) ?? null;
}
