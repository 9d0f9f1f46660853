import type { ColumnRole } from "../options/column-role.js";
import { UNIT_EXPONENTS } from "../options/units.js";
import { referenceNamed } from "../quantities/reference-statement.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import { isReflection, type NamedSeries, NO_SERIES, partOfSeries } from "./names-of-series.js";
import type { SeriesBeside } from "./stacked.js";
import type { TableColumn } from "./table-column.js";
import type { TableInHz } from "./table-in-hz.js";
import { MOST_SERIES } from "./table-of-series.js";

/** Series that stand side by side, each with its own columns of the same readings ("SWR dry", "SWR wet"); null where they don't. */
export function sideBySide(table: TableInHz, titles: readonly string[]): SeriesBeside | null {
  const { columns, index } = table;
  const plain = columns.filter(({ role }) => !role.isExtreme);
  const isAmongSeveral = ({ role }: TableColumn) =>
    isReflection(role) && plain.filter((other) => other.role.quantity === role.quantity).length > 1;
  const inNames = columns.map((column, c): NamedSeries | null => {
    const { name, role, isNamed } = column;
    const mayBe = c !== index && isNamed && !role.isExtreme && (role.quantity === "other" || isAmongSeveral(column));
    return mayBe && !NO_SERIES.test(name) ? partOfSeries(name) : null;
  });
  const found = inNames.some((part) => part !== null) ? inNames : [...underTitles(table, titles)];
  const named = [...found];
  const areTwins = columns.map(({ name, role }, c) => {
    const isTwin = named.some((part) => part !== null && part.role.quantity === role.quantity);
    return named[c] === null && isTwin && isReflection(role) && !role.isExtreme && !NO_SERIES.test(name);
  });
  // "R", "X" beside "R2", "X2": those without a name of a series are one as well.
  const own = columns.flatMap(({ name }, c) => (areTwins[c] ? [name] : [])).join(", ");
  for (const [c, { role }] of columns.entries()) if (areTwins[c]) found[c] = { role, series: own };
  const names = [...new Set(found.flatMap((part) => part?.series ?? []))];
  const isPlain = columns.some(({ role }, c) => c !== index && found[c] === null && isReflection(role));
  if (names.length < 2 || names.length > MOST_SERIES || isPlain) return null;
  // The same readings against two impedances are no two antennas.
  const references = columns.flatMap(({ name }, c) => (found[c] === null ? [] : [referenceNamed(name)]));
  if (new Set(references).size > 1) return null;
  const setOf = (series: string) => columns.filter((_, c) => found[c]?.series === series);
  const rolesOf = (series: string) => found.filter((part) => part?.series === series).map((part) => part?.role);
  const [first = ""] = names;
  const quantities = (series: string) =>
    rolesOf(series)
      .map((role) => role?.quantity)
      .join();
  if (!names.every((series) => quantities(series) === quantities(first))) return null;
  const frequency = columns[index] as TableColumn;
  return {
    sets: names.map((series) => [frequency, ...setOf(series)]),
    roles: [frequency.role, ...(rolesOf(first) as readonly ColumnRole[])],
    names,
  };
}

/** Columns of one name each under a title, or beside the one that has it, as merged cells do. */
function underTitles({ columns, index }: TableInHz, titles: readonly string[]): readonly (NamedSeries | null)[] {
  let title = "";
  return columns.map(({ role }, c) => {
    if (c === index) return null;
    title = titles[c] || title;
    const isTwin = columns.filter((other) => other.role.quantity === role.quantity).length > 1;
    return title !== "" && isReflection(role) && isTwin ? { role, series: title } : null;
  });
}

/** A column of a table that stands beside others: what it holds, and the words in its name that say of what. */
interface OwnColumn {
  readonly column: TableColumn;
  readonly role: ColumnRole;
  readonly series: string;
}

/** Tables that stand side by side, each with frequencies of its own; null where there is only one. */
export function withOwnFrequencies({ columns, unit }: TableInHz, titles: readonly string[]): SeriesBeside | null {
  const starts = columns.flatMap(({ role }, c) => (role.quantity === "frequency" ? [c] : []));
  if (starts.length < 2) return null;
  const ends = [...starts.slice(1), columns.length];
  const sets = starts.map((start, s) => columns.slice(start, ends[s]).flatMap(ownColumn));
  const [first = []] = sets;
  const quantities = (set: readonly OwnColumn[]) => set.map(({ role }) => role.quantity).join();
  if (first.length < 2 || !sets.every((set) => quantities(set) === quantities(first))) return null;
  const areNames = (given: readonly (string | undefined)[]): given is readonly string[] =>
    given.every((name) => name !== undefined) && new Set(given).size === given.length;
  const above = sets.map((_, s) => titles.slice(starts[s], ends[s]).find((title) => title !== ""));
  const own = sets.map((set, s) => namesOf(set) || above[s]);
  const named = areNames(own) ? own : above;
  const areNamed = areNames(named);
  const inHz = (column: TableColumn, c: number, set: number): TableColumn =>
    c > 0 || set === 0
      ? column
      : {
          ...column,
          values: column.values.map((value) => Number((value * 10 ** UNIT_EXPONENTS[unit]).toPrecision(15))),
        };
  const stacks = sets.map((set, s) => set.map(({ column }, c) => inHz(column, c, s)));
  const isOneSweep = !areNamed && goOn(stacks.map(([frequency]) => frequency?.values ?? new Float64Array()));
  const names = areNamed ? named : isOneSweep ? null : sets.map((_, s) => String(s + 1));
  return { sets: stacks, roles: first.map(({ role }) => role), names };
}

/** What a column beside others holds; none for one that is no part of a sweep. */
function ownColumn(column: TableColumn): readonly OwnColumn[] {
  const { name, role, isNamed } = column;
  if (role.quantity === "frequency") return [{ column, role, series: wordsBesideFrequency(name) }];
  if (role.quantity !== "other") return [{ column, role, series: "" }];
  const part = isNamed && !NO_SERIES.test(name) ? partOfSeries(name) : null;
  return part === null ? [] : [{ column, ...part }];
}

/** "MHz A" is of A. */
const wordsBesideFrequency = (name: string): string =>
  name
    .split(/[\s()[\]]+/)
    .filter((word) => word !== "" && roleFromHeader(word).quantity !== "frequency")
    .join(" ");

const namesOf = (set: readonly OwnColumn[]): string | undefined => set.find(({ series }) => series !== "")?.series;

/** Whether frequencies in one column after the other go on where those before ended: the rows of one sweep. */
function goOn(sets: readonly Float64Array[]): boolean {
  const ranges = sets.map((set) => {
    const known = set.filter((value) => Number.isFinite(value));
    return { low: Math.min(...known), high: Math.max(...known) };
  });
  const follow = (isAfter: (a: { low: number; high: number }, b: { low: number; high: number }) => boolean) =>
    ranges.every((range, i) => i === 0 || isAfter(ranges[i - 1] ?? range, range));
  return follow((a, b) => b.low > a.high) || follow((a, b) => b.high < a.low);
}
