import { type Cell, halfUnitOf, numberOf } from "./cell-grammar.js";
import { medianOf } from "./cell-values.js";
import type { ColumnTitle } from "./column-unit.js";
import type { TableColumn } from "./table-column.js";

/** Units that a name ends in, in brackets. */
const UNIT_OF_NAME = /\s*[([](?:ohms?|Ω|k?ohm|siemens|m?s|1|)[)\]]$/i;
/** "Z = R + jX", "Z = (R, X) in ohm" */
const FORM_OF_NAME = /\s*=\s*\(?\s*R\s*(?:[+±]\s*j|,)\s*\*?X.*$/i;
const PARTS = { rectangular: ["re", "im"], polar: ["mag", "ang"] } as const;

/** The two columns that one of complex numbers makes, named by their part. */
export function partsOf(
  c: number,
  name: string | undefined,
  all: () => readonly (readonly Cell[])[],
  sample: () => readonly (readonly Cell[])[],
  titleAt: (place: number, name: string | undefined) => ColumnTitle,
): readonly TableColumn[] {
  const cells = all().map((row) => row[c] as Cell);
  const isPolar = cells.some((cell) => cell.kind === "complex" && cell.isPolar);
  const plainName = name?.replace(FORM_OF_NAME, "");
  const unit = UNIT_OF_NAME.exec(plainName ?? "")?.[0] ?? "";
  const bare = plainName?.slice(0, plainName.length - unit.length).replace(/^(?:rect|complex|cplx)\((.*)\)$/i, "$1");
  return PARTS[isPolar ? "polar" : "rectangular"].map((part, i) => ({
    ...titleAt(i, bare === undefined ? undefined : `${part}(${bare})${isPolar && i === 1 ? "" : unit}`),
    values: Float64Array.from(cells, (cell) => numberOf({ digits: digitsOf(cell, isPolar)[i] ?? "" })),
    atLeast: [],
    halfUnit: () => medianOf(sample().map((row) => halfUnitOf(digitsOf(row[c] as Cell, isPolar)[i] ?? ""))),
    unit: null,
    mark: null,
    isPart: true,
  }));
}

/** Both parts of a complex number; a real number has none. */
function digitsOf(cell: Cell, isPolar: boolean): readonly string[] {
  if (cell.kind === "complex" && cell.isPolar === isPolar) return cell.parts;
  return cell.kind === "number" ? [cell.digits, "0"] : [];
}
