import { mode } from "simple-statistics";
import { once } from "../../numbers/once.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { FormTable } from "./form.js";

/** What stands in brackets that hold none, and where. */
interface Group {
  readonly start: number;
  readonly end: number;
  readonly inner: string;
}

/** Of all groups so many are alike, or the text is another. */
const LEAST_SHARE = 0.8;
const FEWEST_ROWS = 3;
const MOST_GROUPS = 100_000;

/** A number, and between two of them what lists have there. */
const NUMBER = "[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:e[+-]?\\d+)?[fL]?";
const areNumbers = once(() => new RegExp(`^\\s*${NUMBER}(?:(?:\\s*[,;]\\s*|\\s+)${NUMBER})*\\s*[,;]?\\s*$`, "i"));
/** `'f_mhz': 7.05`, `swr = 1.5` */
const pairPattern = once(
  () =>
    /["']?([\p{L}_|∠][\p{L}\d_ .|()²°/%-]{0,60}?)["']?\s*(?:=>|[:=])\s*(?:"([^"]*)"|'([^']*)'|([^\s,;"'][^,;"']*))/gu,
);
/** What stands before the list of a column: `f_mhz = [`, `mhz <- c(`. */
const namePattern = once(
  () => /([\p{L}_|][\p{L}\d_ .|()²°/%-]{0,60}?)["']?(?:\[\d*\])?\s*(?:<-|:=|=|:)\s*(?:[\w.]{1,20}\s*)?$/u,
);

/**
 * Tables as programs write them: rows in brackets below a line that names their columns, records of names and values in brackets,
 * or a list in brackets for each column.
 */
export function bracketed(content: string): FormTable | null {
  const groups = groupsIn(content);
  if (groups.length < 2 || groups.length > MOST_GROUPS) return null;
  return records(content, groups) ?? columns(content, groups) ?? rows(content, groups);
}

function groupsIn(content: string): readonly Group[] {
  return [...content.matchAll(/[[({]([^[\](){}]*)[\])}]/g)].flatMap((match) =>
    // "[3]" is the size of a list.
    /\d[^\d]+\d/.test(match[1] ?? "")
      ? [{ start: match.index, end: match.index + match[0].length, inner: match[1] ?? "" }]
      : [],
  );
}

function records(content: string, groups: readonly Group[]): FormTable | null {
  const found = groups.map(
    ({ inner }) =>
      new Map(
        [...inner.matchAll(pairPattern())].map(([, name = "", double, single, bare]) => [
          name.trim(),
          (double ?? single ?? bare ?? "").trim(),
        ]),
      ),
  );
  const keysOf = (record: ReadonlyMap<string, string>) => [...record.keys()].join("\n");
  const [first] = found.filter(({ size }) => size > 1);
  if (first === undefined || !isOfSweep([...first.keys()])) return null;
  const own = found.filter((record) => keysOf(record) === keysOf(first));
  if (own.length < FEWEST_ROWS || own.length < LEAST_SHARE * groups.length) return null;
  return {
    name: "records in brackets",
    comments: outside(content, groups),
    header: [...first.keys()],
    rows: own.map((record) => ({ cells: [...record.values()], line: null })),
  };
}

/** What programs put before a name that they declare (from memory). */
const DECLARED = /^(?:(?:const|let|var|static|final|auto|my|float|double|int|long)\s+)+/;

function columns(content: string, groups: readonly Group[]): FormTable | null {
  const lists = groups.flatMap(({ start, inner }, g) => {
    if (!areNumbers().test(inner)) return [];
    const before = content.slice(Math.max(groups[g - 1]?.end ?? 0, start - 120), start);
    const name = namePattern().exec(before)?.[1]?.trim().replace(DECLARED, "");
    return name === undefined ? [] : [{ name, values: numbersIn(inner) }];
  });
  const length = Math.max(0, ...lists.map(({ values }) => values.length));
  const long = lists.filter(({ values }) => values.length === length);
  if (length < FEWEST_ROWS || !isOfSweep(long.map(({ name }) => name))) return null;
  return {
    name: "lists in brackets",
    comments: outside(content, groups),
    header: long.map(({ name }) => name),
    rows: Array.from({ length }, (_, i) => ({ cells: long.map(({ values }) => values[i] ?? ""), line: null })),
  };
}

function rows(content: string, groups: readonly Group[]): FormTable | null {
  const found = groups.filter(({ inner }) => areNumbers().test(inner)).map(({ inner }) => numbersIn(inner));
  const width = found.length === 0 ? 0 : mode(found.map(({ length }) => length));
  const own = found.filter((cells) => cells.length === width);
  if (width < 2 || own.length < FEWEST_ROWS || own.length < LEAST_SHARE * groups.length) return null;
  const beside = outside(content, groups);
  const headers = [...beside, fieldsOf(content)].map((line) =>
    line.split(/\s*[,;|]\s*|\s+/).filter((name) => name !== ""),
  );
  const header = headers.find((names) => names.length === width && isOfSweep(names));
  if (header === undefined) return null;
  return {
    name: "rows in brackets",
    comments: beside.filter((_, i) => headers[i] !== header),
    header,
    rows: own.map((cells) => ({ cells, line: null })),
  };
}

/** The names of the fields of a structure, "struct { long khz; float swr; }", without what they are. */
const fieldsOf = (content: string): string =>
  (/struct\s*\w*\s*\{([^{}]*)\}/.exec(content)?.[1] ?? "")
    .split(";")
    .map(
      (field) =>
        field
          .trim()
          .split(/[\s*]+/)
          .at(-1) ?? "",
    )
    .join(" ");

const numbersIn = (inner: string): readonly string[] =>
  inner
    .split(/[\s,;]+/)
    .filter((cell) => cell !== "")
    .map((cell) => cell.replace(/[fL]$/i, ""));

/** Whether some names are those of a frequency and a reading. */
function isOfSweep(names: readonly string[]): boolean {
  const roles = names.map((name) => roleFromHeader(name).quantity);
  return roles.includes("frequency") && roles.some((role) => role !== "frequency" && role !== "other");
}

/** The lines of what stands outside the groups, without the marks of comments. */
function outside(content: string, groups: readonly Group[]): readonly string[] {
  const pieces = [...groups, { start: content.length, end: 0 }].map(({ start }, g) =>
    content.slice(groups[g - 1]?.end ?? 0, start),
  );
  return pieces
    .join("\n")
    .split(/\r\n|\n|\r/)
    .map((line) =>
      line
        .replace(/\/\*|\*\//g, " ")
        .replace(/^[\s#%;/*!,[\](){}-]+(?:columns?\s*[:=]\s*)?/i, "")
        .trim(),
    )
    .filter((line) => /\p{L}/u.test(line));
}
