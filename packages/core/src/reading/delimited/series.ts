import { type Finding, finding } from "../../sweep/finding.js";
import type { ColumnRole } from "../options/column-role.js";
import { UNIT_EXPONENTS } from "../options/units.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { TextLines } from "../text/text-lines.js";
import { splitLines } from "./cells.js";
import type { Dialect } from "./dialect.js";
import type { TableColumn } from "./table-column.js";
import type { TableInHz } from "./table-in-hz.js";

/** Of the rows this share repeats a frequency where a table holds several series. */
const LEAST_REPEATED_SHARE = 0.3;
/** More values than these name no series. */
const MOST_SERIES = 20;
/** Rows of a longer table are not looked at for what tells series apart. */
const MOST_ROWS = 50_000;
const FEWEST_ROWS = 6;

/** A table whose rows belong to one series or several. */
export interface TableOfSeries extends TableInHz {
  /** The series of each row, by its place among the names; null where there is only one */
  readonly series: { readonly names: readonly string[]; readonly of: Uint32Array } | null;
}

/**
 * Tells several series in a table apart, one row of each at every frequency: by a column (the antenna, its height, before and
 * after), or side by side.
 */
export function tableOfSeries(
  table: TableInHz,
  dialect: Dialect,
  lines: TextLines,
  findings: Finding[],
): TableOfSeries {
  const found = withOwnFrequencies(table) ?? sideBySide(table, findings) ?? byColumn(table, dialect, lines, findings);
  return found ?? { ...table, series: null };
}

/** A reading of one of several series: its role, and what its name says of the series. */
interface NamedSeries {
  readonly role: ColumnRole;
  readonly series: string;
}

/**
 * Puts series that stand side by side, each with its own columns of the same readings ("SWR dry", "SWR wet"), one below the other.
 *
 * @returns null where they don't
 */
function sideBySide(table: TableInHz, findings: Finding[]): TableOfSeries | null {
  const { columns, index } = table;
  const plain = columns.filter(({ role }) => !role.isExtreme);
  const isAmongSeveral = ({ role }: TableColumn) =>
    isReading(role) && plain.filter((other) => other.role.quantity === role.quantity).length > 1;
  const found = columns.map((column, c) => {
    const { name, role, isNamed } = column;
    const mayBe = c !== index && isNamed && !role.isExtreme && (role.quantity === "other" || isAmongSeveral(column));
    return mayBe && !NO_SERIES.test(name) ? partOfSeries(name) : null;
  });
  for (const [c, { name, role }] of columns.entries()) {
    const isTwin = found.some((part) => part !== null && part.role.quantity === role.quantity);
    const isOwn = isReading(role) && !role.isExtreme && !NO_SERIES.test(name);
    if (found[c] === null && isOwn && isTwin) found[c] = { role, series: name };
  }
  const names = [...new Set(found.flatMap((part) => part?.series ?? []))];
  const isPlain = columns.some(({ role }, c) => c !== index && found[c] === null && isReading(role));
  if (names.length < 2 || names.length > MOST_SERIES || isPlain) return null;
  const setOf = (series: string) => columns.filter((_, c) => found[c]?.series === series);
  const rolesOf = (series: string) => found.filter((part) => part?.series === series).map((part) => part?.role);
  const [first = ""] = names;
  const quantities = (series: string) =>
    rolesOf(series)
      .map((role) => role?.quantity)
      .join();
  if (!names.every((series) => quantities(series) === quantities(first))) return null;
  findings.push(finding("info", "series-told-apart", { column: "the header", values: names }));
  const frequency = columns[index] as TableColumn;
  return stacked(
    table,
    names.map((series) => [frequency, ...setOf(series)]),
    [frequency.role, ...(rolesOf(first) as readonly ColumnRole[])],
    names,
  );
}

/** Puts tables that stand side by side, each with frequencies of its own, one below the other; null where there is only one. */
function withOwnFrequencies(table: TableInHz): TableOfSeries | null {
  const { columns, unit } = table;
  const starts = columns.flatMap(({ role }, c) => (role.quantity === "frequency" ? [c] : []));
  if (starts.length < 2) return null;
  const sets = starts.map((start, s) =>
    columns.slice(start, starts[s + 1] ?? columns.length).filter(({ role }) => role.quantity !== "other"),
  );
  const [first = []] = sets;
  const quantities = (set: readonly TableColumn[]) => set.map(({ role }) => role.quantity).join();
  if (first.length < 2 || !sets.every((set) => quantities(set) === quantities(first))) return null;
  const inHz = (column: TableColumn, c: number, set: number): TableColumn =>
    c > 0 || set === 0
      ? column
      : {
          ...column,
          values: column.values.map((value) => Number((value * 10 ** UNIT_EXPONENTS[unit]).toPrecision(15))),
        };
  return stacked(
    table,
    sets.map((set, s) => set.map((column, c) => inHz(column, c, s))),
    first.map(({ role }) => role),
    null,
  );
}

const isReading = ({ quantity }: ColumnRole): boolean =>
  quantity !== "other" && quantity !== "frequency" && quantity !== "transmission";

/** What tells of a reading, and is none of another series. */
const NO_SERIES =
  /wanted|goal|required|mask|err|uncert|±|\+\/-|sigma|std|dev|delta|diff|change|limit|soll|allowed|permitted|threshold|rank|grenz|zulässig|target|trend|spread|tolerance|noise/i;
const UNIT_BEHIND = /\s*[([](?:ohms?|Ω|k?ohm|db|deg|°|%|rad|x:1)[)\]]\s*$/i;
const EDGE_NUMBER = /^[-–:\d.,]+$/;

/** A name that holds that of a reading, and words for the series before or behind it: the longest name that is one. */
function partOfSeries(name: string): NamedSeries | null {
  const unit = UNIT_BEHIND.exec(name)?.[0] ?? "";
  const words = name
    .slice(0, name.length - unit.length)
    .split(/\s+|(?<=[)\]])(?=[^\s])|_/)
    .filter((word) => word !== "");
  const parts = Array.from({ length: Math.max(0, words.length - 1) }, (_, i) => i + 1).flatMap((count) => [
    { reading: words.slice(0, count), rest: words.slice(count) },
    { reading: words.slice(-count), rest: words.slice(0, -count) },
  ]);
  const found = parts.flatMap(({ reading, rest }) => {
    // A number at its edge belongs to the words beside it: "6 m".
    if (EDGE_NUMBER.test(reading.at(-1) ?? "") || EDGE_NUMBER.test(reading[0] ?? "")) return [];
    const text = reading.join(" ").replace(/[-–:,]+$/, "");
    const role = roleFromHeader(text + unit);
    const series = rest.join(" ").replace(/^[-–:,(\s[]+|[-–:,)\s\]]+$/g, "");
    return isReading(role) && !role.isAssumed && series !== "" ? [{ role, series, length: text.length }] : [];
  });
  return found.reduce<(NamedSeries & { length: number }) | null>(
    (best, part) => (best === null || part.length > best.length ? part : best),
    null,
  );
}

/** The rows of the first set of columns, then those of the next. Each begins with its frequencies; rows without one are none. */
function stacked(
  table: TableInHz,
  sets: readonly (readonly TableColumn[])[],
  roles: readonly ColumnRole[],
  names: readonly string[] | null,
): TableOfSeries {
  const rows = sets.flatMap((set, s) =>
    Array.from(set[0]?.values ?? [], (value, row) => ({ set: s, row, isOne: s === 0 || Number.isFinite(value) })),
  );
  const kept = rows.filter(({ isOne }) => isOne);
  // What goes on in the next columns row by row is one sweep.
  const frequencyOf = ({ set, row }: { set: number; row: number }) => sets[set]?.[0]?.values[row] ?? Number.NaN;
  const isOneSweep = names === null && new Set(kept.map(frequencyOf)).size === kept.length;
  if (isOneSweep) kept.sort((a, b) => frequencyOf(a) - frequencyOf(b));
  const place = new Map(kept.map(({ set, row }, i) => [`${set} ${row}`, i]));
  const columns = roles.map((role, c): TableColumn => {
    const first = sets[0]?.[c] as TableColumn;
    return {
      ...first,
      role,
      values: Float64Array.from(kept, ({ set, row }) => sets[set]?.[c]?.values[row] ?? Number.NaN),
      atLeast: sets.flatMap((set, s) =>
        (set[c]?.atLeast ?? []).flatMap((cell) => {
          const row = place.get(`${s} ${cell.row}`);
          return row === undefined ? [] : [{ ...cell, row }];
        }),
      ),
    };
  });
  const lines = Uint32Array.from(kept, ({ row }) => table.rows.lines[row] ?? 0);
  const series = names === null ? null : { names, of: Uint32Array.from(kept, ({ set }) => set) };
  return { ...table, index: 0, columns, rows: { ...table.rows, lines }, series };
}

/** Tells the rows of several series apart by a column of words or numbers; null where no column does. */
function byColumn(table: TableInHz, dialect: Dialect, lines: TextLines, findings: Finding[]): TableOfSeries | null {
  const { rows, columns, index } = table;
  const frequency = columns[index]?.values as Float64Array;
  const count = frequency.length;
  // Columns of complex numbers are not told apart from their neighbours by place.
  if (count < FEWEST_ROWS || count > MOST_ROWS || columns.length !== dialect.columns) return null;
  if (isAscending(frequency) || count - new Set(frequency).size < LEAST_REPEATED_SHARE * count) return null;
  const texts = splitLines(
    Array.from(rows.lines, (line) => lines.text(line - 1)),
    dialect.delimiter,
  );
  for (const [c, { name, role }] of columns.entries()) {
    if (c === index || role.quantity !== "other") continue;
    const keys = texts.map((cells) => cells[c] ?? "");
    const names = [...new Set(keys)];
    if (names.length < 2 || names.length > MOST_SERIES || names.includes("")) continue;
    const places = new Set(keys.map((key, row) => `${key}\n${frequency[row]}`));
    if (places.size < count) continue;
    findings.push(finding("info", "series-told-apart", { column: name, values: names }));
    return { ...table, series: { names, of: Uint32Array.from(keys, (key) => names.indexOf(key)) } };
  }
  return null;
}

function isAscending(values: Float64Array): boolean {
  for (let i = 1; i < values.length; i++) if (!((values[i] as number) > (values[i - 1] as number))) return false;
  return true;
}
