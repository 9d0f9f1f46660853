import type { FormTable } from "./form.js";

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** Deeper than this no table is looked for. */
const DEEPEST = 6;
/** Entries beside the table that are kept as comments. */
const MOST_COMMENTS = 40;

/**
 * A table written as JSON (RFC 8259): a list of objects, one list for each column, or a list of rows, below a row of names or
 * beside a list of them; also an object in each line.
 */
export function jsonTable(content: string): FormTable | null {
  if (!/^\s*[[{]/.test(content)) return null;
  const json = parsed(content) ?? parsedLines(content);
  if (json === null) return null;
  const comments: string[] = [];
  const found = tableIn(json, comments, 0);
  if (found === null) return null;
  const [header, ...rows] = found;
  if (header === undefined || rows.length === 0) return null;
  return { name: "JSON", comments, header: header.map(spaced), rows: rows.map((cells) => ({ cells, line: null })) };
}

/** "returnLossDb" in words. */
const spaced = (name: string): string => name.replace(/(?<=[a-z]{2})(?=[A-Z][a-z])(?!Hz)/g, " ");

function parsed(content: string): Json | null {
  try {
    return JSON.parse(content) as Json;
  } catch {
    return null;
  }
}

/** JSON in each line, as one list. */
function parsedLines(content: string): Json | null {
  const lines = content.split(/\r\n|\n|\r/).filter((line) => line.trim() !== "");
  const values = lines.map((line) => parsed(line.replace(/,\s*$/, "")));
  return lines.length > 1 && values.every((value) => value !== null) ? values : null;
}

const isList = (json: Json): json is readonly Json[] => Array.isArray(json);
const isObject = (json: Json): json is { readonly [key: string]: Json } =>
  typeof json === "object" && json !== null && !isList(json);
const isScalar = (json: Json): json is string | number | boolean | null => !isList(json) && !isObject(json);
const textOf = (json: Json | undefined): string =>
  json === undefined || json === null || !isScalar(json) ? "" : String(json);

/** Header and rows of the first table in it. */
function tableIn(json: Json, comments: string[], depth: number): readonly (readonly string[])[] | null {
  if (depth > DEEPEST || isScalar(json)) return null;
  if (isList(json)) return tableOfList(json, null) ?? firstTable(json, comments, depth);
  const entries = Object.entries(json);
  for (const [key, value] of entries) {
    if (isScalar(value) && comments.length < MOST_COMMENTS) comments.push(`${key}: ${textOf(value)}`);
  }
  return tableOfColumns(entries) ?? tableOfNamed(json) ?? firstTable(Object.values(json), comments, depth);
}

function firstTable(values: readonly Json[], comments: string[], depth: number) {
  for (const value of values) {
    const found = tableIn(value, comments, depth + 1);
    if (found !== null) return found;
  }
  return null;
}

/** { "frequency": [7.0, 7.1], "swr": [2, 1.5] } */
function tableOfColumns(entries: readonly (readonly [string, Json])[]): readonly (readonly string[])[] | null {
  const columns = entries.flatMap(([name, value]) =>
    isList(value) && value.length > 0 && value.every(isScalar) ? [{ name, value }] : [],
  );
  const length = Math.max(0, ...columns.map(({ value }) => value.length));
  const long = columns.filter(({ value }) => value.length === length && value.some((cell) => typeof cell === "number"));
  if (long.length < 2) return null;
  const rows = Array.from({ length }, (_, i) => long.map(({ value }) => textOf(value[i])));
  return [long.map(({ name }) => name), ...rows];
}

/** { "columns": ["frequency", "swr"], "data": [[7.0, 2], [7.1, 1.5]] } */
function tableOfNamed(json: { readonly [key: string]: Json }): readonly (readonly string[])[] | null {
  const lists = Object.values(json).filter(isList);
  const names = lists.find((list) => list.length > 1 && list.every((cell) => typeof cell === "string"));
  if (names === undefined) return null;
  return lists.map((list) => tableOfList(list, names.map(textOf))).find((table) => table !== null) ?? null;
}

/** A list of objects, or of rows; the names of these stand in the first or are given. */
function tableOfList(list: readonly Json[], given: readonly string[] | null): readonly (readonly string[])[] | null {
  if (list.length > 0 && list.every(isList)) {
    const rows = list.map((row) => row.map(textOf));
    const [first] = list;
    const isNamed = first?.every((cell) => typeof cell === "string") === true;
    return isNamed ? rows : given === null ? null : [given, ...rows];
  }
  const objects = list.filter(isObject).map(flat);
  if (objects.length === 0 || objects.length < list.length) return null;
  const names = [...new Set(objects.flatMap((object) => [...object.keys()]))];
  const rows = objects.map((object) => names.map((name) => object.get(name) ?? ""));
  return names.length < 2 ? null : [names, ...rows];
}

/** An object's entries, those of objects in it under both names: { "z": { "re": 40 } } as "z re". */
function flat(object: { readonly [key: string]: Json }): ReadonlyMap<string, string> {
  const entries = Object.entries(object).flatMap(([key, value]): readonly (readonly [string, string])[] => {
    if (isScalar(value)) return [[key, textOf(value)]];
    if (isList(value)) return [];
    return [...flat(value)].map(([inner, text]) => [`${key} ${inner}`, text] as const);
  });
  return new Map(entries);
}
