import { type Finding, finding } from "../../sweep/finding.js";
import type { Quantity } from "../options/column-role.js";
import { isReckoned, isReflection, type NamedSeries, NO_SERIES, partOfSeries } from "./names-of-series.js";
import type { TableInHz } from "./table-in-hz.js";
import type { TableOfSeries } from "./table-of-series.js";

/**
 * Where no name is known as a whole, columns by the part of their names that is: "SWR (at shack)", "R (ser.)" and "X (ser.)". Null where
 * that leaves open which counts.
 */
export function byPartOfName(table: TableInHz, findings: Finding[]): TableOfSeries | null {
  const { columns, index } = table;
  if (columns.some(({ role }) => isReflection(role) || role.quantity === "transmission")) return null;
  const inNames = columns.map(({ name, isNamed }, c) =>
    c !== index && isNamed && !NO_SERIES.test(name) ? partOfSeries(name) : null,
  );
  const parts = inNames.map((part, c) => (isReckoned().test(columns[c]?.name ?? "") ? null : part));
  if (parts.some((part) => part !== null && !isSureInPart(part))) return null;
  const known = parts.flatMap((part) => part?.role.quantity ?? []);
  if (known.length === 0 || new Set(known).size < known.length) return null;
  const names = columns.flatMap(({ name }, c) => (parts[c] === null ? [] : [name]));
  // "R dry" and "X wet" may be of two antennas.
  const areOfOne = new Set(inNames.flatMap((part) => part?.series.toLowerCase() ?? [])).size < 2;
  findings.push(finding(areOfOne ? "info" : "caution", "name-in-part", { names }));
  return {
    ...table,
    columns: columns.map((column, c) => ({ ...column, role: parts[c]?.role ?? column.role })),
    series: null,
  };
}

/** Quantities that nothing but a reading is called by. */
const IN_PART: ReadonlySet<Quantity> = new Set<Quantity>(["swr", "resistance", "reactance"]);
/** A unit that is not known changes the numbers: "R (dΩ)". */
const isSureInPart = ({ role: { quantity }, series }: NamedSeries): boolean =>
  !/%|percent|prozent|per ?cent/iu.test(series) &&
  (quantity === "swr" || (IN_PART.has(quantity) && !/[Ω\u2126]|ohm|\d[.,]\d/iu.test(series)));
