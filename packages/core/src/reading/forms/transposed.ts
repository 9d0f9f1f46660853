import { once } from "../../numbers/once.js";
import { splitLine } from "../delimited/cells.js";
import { DELIMITERS } from "../options/read-options.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { FormTable } from "./form.js";
import { swrWord } from "./title-words.js";

const FEWEST_POINTS = 3;
const MOST_LINES = 60;
/** Of longer cells no more is looked at for a name and a number. */
const LONGEST_NAME = 200;

/** A table lying on its side: each line a name and then its values, from left to right; a long one in blocks, one below the other. */
export function transposed(content: string): FormTable | null {
  const lines = content.split(/\r\n|\n|\r/);
  if (lines.length > MOST_LINES) return null;
  const bare = lines.map((line) => line.replace(bracketed(), withoutBrackets));
  for (const delimiter of DELIMITERS) {
    const rows = bare.map((line) => namedRows(splitLine(line, delimiter)));
    const blocks = blocksOf(rows);
    const [first] = blocks;
    if (first === undefined || (first[0]?.values.length ?? 0) < FEWEST_POINTS) continue;
    const used = blocks.every((block) => namesIn(block) === namesIn(first)) ? blocks : [first];
    const named = first.map(({ name }, r) => ({ name, values: used.flatMap((block) => block[r]?.values ?? []) }));
    const count = named[0]?.values.length ?? 0;
    const isUsed = new Set(used.flat().map(({ line }) => line));
    const comments = lines.filter((line, i) => line.trim() !== "" && !isUsed.has(i));
    const isTitled = comments.some((line) => swrWord().test(line));
    if (count < FEWEST_POINTS || !(named.some(isReadingOfSeries) || (isTitled && named.length > 1))) continue;
    return {
      name: "a table on its side",
      comments,
      header: named.map(({ name }) => name),
      rows: Array.from({ length: count }, (_, i) => ({
        cells: named.map(({ values }) => values[i] ?? ""),
        line: null,
      })),
    };
  }
  return null;
}

type Block = readonly (NamedRow & { readonly line: number })[];

const namesIn = (block: Block): string => block.map(({ name }) => name).join("\n");

/** The rows of each block, which begins with its frequencies, or ends before the next ones; all as long as these. */
function blocksOf(lines: readonly (readonly NamedRow[])[]): readonly Block[] {
  const heads = lines.flatMap(([row], line) => (row !== undefined && isOf(row, "frequency") ? [{ row, line }] : []));
  return heads.map(({ row, line }, h) => {
    const [start, end] = [h === 0 ? 0 : line, heads[h + 1]?.line ?? lines.length];
    return lines.slice(start, end).flatMap((readings, i) => {
      const found = readings.find(({ values }) => values.length === row.values.length);
      return found === undefined ? [] : [{ ...found, line: start + i }];
    });
  });
}

/** A list in brackets behind its name, and a unit of frequency in a comment behind that: "f = [7.0 7.1]; % MHz". */
const bracketed = once(
  () =>
    /^\s*(\p{L}[^[({=:]{0,80}?)\s*[:=]\s*[[({]([^\])}]*)[\])}]\s*;?\s*(?:[%#/]+[^\p{L}]*(?:\p{L}+ )*?([kmg]?hz)\s*)?(?=[%#/]|$).*$/iu,
);
const withoutBrackets = (_: string, name: string, list: string, unit?: string) =>
  `${name}${unit === undefined ? "" : ` (${unit})`}: ${list}`;

interface NamedRow {
  readonly name: string;
  readonly values: readonly string[];
}

const isOf = ({ name }: NamedRow, quantity: string): boolean => roleFromHeader(name).quantity === quantity;

/** Whether the first words of a name are those of a reading: "SWR before", "SWR 5 m". */
function isReadingOfSeries({ name }: NamedRow): boolean {
  const words = name.split(" ");
  const quantities = words.map((_, i) => roleFromHeader(words.slice(0, i + 1).join(" ")).quantity);
  return quantities.some((quantity) => quantity !== "frequency" && quantity !== "other");
}

/** The end of a list, which no bracket in its cell opens. */
const LONE_BRACKET = /^([^[({]*)[\])}]$/;
/** Begins like one number, and not like several. */
const NUMBER = /^[<>~]?[+−-]?[.,]?\d(?!.*\d\s*[;|\s]\s*[+−-]?\d)/;
/** A name and the first number of its list, with a sign or a blank between them, and brackets perhaps. */
const NAME_AND_NUMBER = /^(.*?[^\s:=])\s*(?:[:=]\s*[[({]?|[[({]|\s)\s*([<>~]?[+−-]?[.,]?\d\S*)$/u;

/**
 * Words, and then cells that begin like numbers; blanks may split the words. The first number may stand in the cell of the name:
 * that reading comes first where a colon or a bracket says so, or the name is that of a frequency.
 */
function namedRows(given: readonly string[]): readonly NamedRow[] {
  const cells = (given.at(-1) === "" ? given.slice(0, -1) : given).map((cell) =>
    cell.replace(LONE_BRACKET, "$1").trim(),
  );
  if (!/\p{L}/u.test(cells[0] ?? "")) return [];
  const first = cells.findIndex((cell, i) => i > 0 && NUMBER.test(cell));
  const apart = first < 1 ? [] : [{ name: nameOf(cells.slice(0, first)), values: cells.slice(first) }];
  const [, name, number] = NAME_AND_NUMBER.exec((cells[0] ?? "").slice(0, LONGEST_NAME)) ?? [];
  if (name === undefined || number === undefined || !/\p{L}/u.test(name)) return apart;
  // Another delimiter splits what stands behind it.
  if (cells.slice(1).some((cell) => /\d\s+\S*\d/.test(cell))) return apart;
  const together = { name, values: [number, ...cells.slice(1)] };
  const isSaid = /[:=[({]\s*\S*$/.test(cells[0] ?? "") || isOf(together, "frequency");
  return isSaid ? [together, ...apart] : [...apart, together];
}

const nameOf = (cells: readonly string[]): string =>
  cells
    .filter((cell) => cell !== "")
    .join(" ")
    .replace(/\s*[:=]$/, "");
