import { spaced } from "../quantities/name-words.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { FormTable } from "./form.js";
import { type Json, parsed, parsedLines } from "./json-text.js";

/** Deeper than this no table is looked for. */
const DEEPEST = 6;
/** Entries beside the tables that are kept as comments. */
const MOST_COMMENTS = 40;
/** What a list of limits, of markers or of a calibration stands under; it is no sweep beside another table. */
const NO_SWEEP = /limit|marker|calib|setting|config|spec|mask|target/i;
/** What names a table that stands beside others. */
const NAMES = ["name", "label", "title", "antenna", "series", "trace", "id"];

/** Header and rows of a table, and what tells it from others. */
interface NamedTable {
  readonly name: string;
  /** It stands under a key such as "limits" */
  readonly isAside: boolean;
  readonly table: Table;
}
type Table = readonly (readonly string[])[];

/**
 * Tables written as JSON (RFC 8259): a list of objects, one list for each column, or a list of rows, below a row of names or
 * beside a list of them; also an object in each line. Several with the same columns are one, with a column that tells them apart; of
 * others the longest counts.
 */
export function jsonTable(content: string): FormTable | null {
  if (!/^\s*[[{]/.test(content)) return null;
  const json = parsed(content) ?? parsedLines(content);
  if (json === null) return null;
  const comments: string[] = [];
  const all = tablesIn(json, { name: "", key: "", isAside: false, depth: 0 }, comments).filter(
    ({ table }) => table.length > 1,
  );
  const sweeps = all.filter(({ isAside }) => !isAside);
  const [first, ...others] = (sweeps.length > 0 ? sweeps : all).toSorted((a, b) => b.table.length - a.table.length);
  if (first === undefined) return null;
  // Settings may be a table of two columns: { "key": "Z0", "value": 75 }.
  for (const { table } of all.filter((each) => !sweeps.includes(each)))
    comments.push(...table.slice(1, MOST_COMMENTS).flatMap((cells) => (cells.length === 2 ? [cells.join(": ")] : [])));
  const alike = others.filter(({ table }) => table[0]?.join() === first.table[0]?.join());
  const [header = [], ...rows] =
    alike.length === 0 ? first.table : stacked(all.filter((each) => each === first || alike.includes(each)));
  const units = unitsIn(json);
  return {
    name: "JSON",
    comments,
    header: header.map((name) => (units.has(name) ? `${spaced(name)} (${units.get(name)})` : spaced(name))),
    rows: rows.map((cells) => ({ cells, line: null })),
    isOneOfSeveral: 1 + alike.length < all.length,
  };
}

/** The units of columns that an object by itself tells: { "units": { "freq": "kHz" } }. */
function unitsIn(json: Json): ReadonlyMap<string, string> {
  const [, told] = isObject(json) ? (Object.entries(json).find(([key]) => /^units?$/i.test(key)) ?? []) : [];
  const entries = told !== undefined && isObject(told) ? Object.entries(told) : [];
  return new Map(entries.flatMap(([name, unit]) => (typeof unit === "string" && unit !== "" ? [[name, unit]] : [])));
}

/** Tables of the same columns as one, with what names each in front. */
function stacked(tables: readonly NamedTable[]): Table {
  const names = tables.map(({ name }) => name);
  const areNamed = new Set(names).size === names.length && !names.includes("");
  const rows = tables.flatMap(({ name, table }, i) =>
    table.slice(1).map((cells) => [areNamed ? name : String(i + 1), ...cells]),
  );
  return [["series", ...(tables[0]?.table[0] ?? [])], ...rows];
}

const isList = (json: Json): json is readonly Json[] => Array.isArray(json);
const isObject = (json: Json): json is { readonly [key: string]: Json } =>
  typeof json === "object" && json !== null && !isList(json);
const isScalar = (json: Json): json is string | number | boolean | null => !isList(json) && !isObject(json);
const textOf = (json: Json | undefined): string =>
  json === undefined || json === null || !isScalar(json) ? "" : String(json);

/** Where in the whole something stands. */
interface Under {
  readonly name: string;
  /** The key that it stands under; what has a value of its own there is not of the sweep: { "feedline": { "z0": 75 } } */
  readonly key: string;
  readonly isAside: boolean;
  readonly depth: number;
}

/** All tables in it, with the keys that they stand under; what else there is goes to the comments. */
function tablesIn(json: Json, under: Under, comments: string[]): readonly NamedTable[] {
  const { name, key: above, isAside, depth } = under;
  if (depth > DEEPEST || isScalar(json)) return [];
  if (isList(json)) {
    const [asides, rest] = asidesOf(json);
    for (const [key, value] of asides.flatMap((object) => Object.entries(object))) {
      const text = statedIn(value);
      if (text !== null && comments.length < MOST_COMMENTS) comments.push(`${key}: ${text}`);
    }
    const table = tableOfList(rest, null);
    if (table !== null) return [{ name, isAside, table }];
    return json.flatMap((value) => tablesIn(value, { ...under, depth: depth + 1 }, comments));
  }
  const entries = Object.entries(json);
  for (const [key, value] of entries) {
    const text = statedIn(value);
    if (text !== null && comments.length < MOST_COMMENTS) comments.push(`${above} ${key}: ${text}`.trim());
  }
  const label = NAMES.map((key) => json[key]).find((value) => typeof value === "string");
  const own: Under = { ...under, name: label === undefined ? name : textOf(label) };
  const ofColumns = tableOfColumns(columnsIn(json)) ?? tableByFrequency(entries, above);
  const tables = ofColumns === null ? tablesOfNamed(json, own) : [{ name: own.name, isAside, table: ofColumns }];
  const inner = entries
    .filter(([key, value]) => tables.length === 0 || (isObject(value) && !(ofColumns && isOfColumns(key, value))))
    .flatMap(([key, value]) =>
      tablesIn(value, label === undefined ? below(own, key) : { ...below(own, key), name: own.name }, comments),
    );
  return [...tables, ...inner];
}

/** The objects at the start of a list that share no name with the last one, such as settings above the lines of a sweep; and the rest. */
function asidesOf(list: readonly Json[]): readonly [readonly { readonly [key: string]: Json }[], readonly Json[]] {
  const last = list.at(-1);
  if (last === undefined || !isObject(last)) return [[], list];
  const isAside = (json: Json) => isObject(json) && !Object.keys(json).some((key) => key in last);
  const first = list.findIndex((json) => !isAside(json));
  return [list.slice(0, first).filter(isObject), list.slice(first)];
}

/** What stands under a key; one that only holds the table does not name it. */
const below = ({ name, isAside, depth }: Under, key: string): Under => ({
  key,
  name: key === "" || HOLDERS.test(key) ? name : key,
  isAside: isAside || NO_SWEEP.test(key),
  depth: depth + 1,
});

/** Words that only say that a table follows. */
const HOLDERS = /^(?:data|points?|rows?|values?|table|sweeps?|readings?|measurements?|series|results?|traces?)$/i;

/** What an entry states in a few words: 75, "75 ohm", { "value": 75, "unit": "ohm" }, { "re": 75, "im": 0 }, [75, 0]; null for more. */
function statedIn(json: Json): string | null {
  if (isScalar(json)) return textOf(json);
  const values = isList(json) ? json : Object.values(json);
  if (values.length === 0 || values.length > 2 || !values.every(isScalar)) return null;
  const [first, second] = values;
  if (isList(json) && values.every((value) => typeof value === "string")) return values.join("; ");
  if (typeof first !== "number" || (typeof second === "number" && second !== 0)) return null;
  return typeof second === "string" ? `${first} ${second}` : String(first);
}

/**
 * The lists of an object by their names: those of parts in it as "swr A", of pairs as "s11 re" and "s11 im", and frequencies that are told
 * by their first and their step.
 */
function columnsIn(json: { readonly [key: string]: Json }): readonly (readonly [string, Json])[] {
  const isBesideNumbers = (list: readonly Json[]) =>
    Object.values(json).some(
      (other) => isList(other) && other.length === list.length && other.every((cell) => typeof cell === "number"),
    );
  const lists = Object.entries(json).flatMap(([name, value]): readonly (readonly [string, Json])[] => {
    if (isList(value) && value.every((cell) => isList(cell) && cell.length === 2) && isBesideNumbers(value))
      return ["re", "im"].map((part, k) => [
        `${name} ${part}`,
        value.map((cell) => (cell as readonly Json[])[k] ?? null),
      ]);
    if (!isOfColumns(name, value)) return [[name, value]];
    const unit = Object.entries(value).find(([key]) => /^units?$/i.test(key))?.[1];
    const inner = Object.entries(value).filter(([, list]) => isList(list));
    return inner.map(([key, list]) => [
      inner.length === 1 ? `${name}${typeof unit === "string" ? ` (${unit})` : ""}` : `${name} ${key}`,
      list,
    ]);
  });
  const numberOf = (pattern: RegExp) => lists.find(([name, value]) => pattern.test(name) && typeof value === "number");
  const [first, step] = [numberOf(/^(?:f\w*?_?)?(?:start|from|first|begin)/i), numberOf(/step|increment|spacing/i)];
  const count = Math.max(0, ...lists.map(([, value]) => (isList(value) ? value.length : 0)));
  const isTold = lists.some(([name, value]) => isList(value) && roleFromHeader(name).quantity === "frequency");
  if (first === undefined || step === undefined || isTold) return lists;
  const unit = /[kmg]?hz/i.exec(`${first[0]} ${step[0]}`)?.[0] ?? "Hz";
  const frequencies = Array.from({ length: count }, (_, i) =>
    Number((Number(first[1]) + i * Number(step[1])).toPrecision(12)),
  );
  return [[`frequency (${unit})`, frequencies], ...lists];
}

/** Whether an object holds further columns of the table that it stands in, and no table of its own. */
const isOfColumns = (name: string, value: Json): value is { readonly [key: string]: Json } =>
  isObject(value) &&
  !NO_SWEEP.test(name) &&
  Object.values(value).some(isList) &&
  !Object.keys(value).some((key) => roleFromHeader(key).quantity === "frequency");

/** { "7000000": { "r": 40, "x": -9 } }, or { "7.0": 1.9 } under "swr" */
function tableByFrequency(entries: readonly (readonly [string, Json])[], above: string): Table | null {
  if (entries.length < 2 || !entries.every(([key]) => /^\d+(?:\.\d+)?(?:e[+-]?\d+)?$/i.test(key))) return null;
  const rows = entries.map(
    ([key, value]): Json => (isObject(value) ? { frequency: key, ...value } : { frequency: key, [above]: value }),
  );
  return tableOfList(rows, null);
}

/** { "frequency": [7.0, 7.1], "swr": [2, 1.5] } */
function tableOfColumns(entries: readonly (readonly [string, Json])[]): Table | null {
  const columns = entries.flatMap(([name, value]) =>
    isList(value) && value.length > 0 && value.every(isScalar) ? [{ name, value }] : [],
  );
  const length = Math.max(0, ...columns.map(({ value }) => value.length));
  const long = columns.filter(({ value }) => value.length === length && value.some((cell) => typeof cell === "number"));
  if (long.length < 2) return null;
  const rows = Array.from({ length }, (_, i) => long.map(({ value }) => textOf(value[i])));
  return [long.map(({ name }) => name), ...rows];
}

/** { "columns": ["frequency", "swr"], "data": [[7.0, 2], [7.1, 1.5]] }, and further lists of rows with their own names */
function tablesOfNamed(json: { readonly [key: string]: Json }, own: Under): readonly NamedTable[] {
  const lists = Object.entries(json).filter((entry): entry is [string, readonly Json[]] => isList(entry[1]));
  const names = lists.find(([, list]) => list.length > 1 && list.every((cell) => typeof cell === "string"))?.[1];
  if (names === undefined) return [];
  return lists.flatMap(([key, list]) => {
    const table = tableOfList(list, names.map(textOf));
    const { name, isAside } = below(own, key);
    return table === null ? [] : [{ name, isAside, table }];
  });
}

/** A list of objects, or of rows; the names of these stand in the first or are given. */
function tableOfList(list: readonly Json[], given: readonly string[] | null): Table | null {
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
