import { splitLine } from "../delimited/cells.js";
import { DELIMITERS } from "../options/read-options.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { FormRow, FormTable } from "./form.js";

/** Names of the columns that say what a row tells, how much of it, and in what unit (from memory). */
const QUANTITY =
  /^(?:quantity|parameter|param|variable|measure|what|name|key|metric|größe|messgröße|grandeur|magnitud|grandezza|grootheid)$/iu;
const VALUE = /^(?:value|val|reading|wert|messwert|valeur|valor|valore|waarde)$/iu;
const UNIT = /^(?:units?|einheit|unité|unidad|unità|eenheid)$/iu;

/** No sweep tells more quantities. */
const MOST_COLUMNS = 40;

/** The header of a table with a row for each quantity. */
interface TidyHeader {
  readonly names: readonly string[];
  readonly frequency: number;
  readonly quantity: number;
  readonly value: number;
  /** -1 for none */
  readonly unit: number;
}

/** A table with a row for each quantity at each frequency; null where the text is none. */
export function tidy(content: string): FormTable | null {
  const lines = content.split(/\r\n|\n|\r/);
  for (const delimiter of DELIMITERS) {
    const heading = lines.findIndex((line) => line.trim() !== "");
    const header = headerIn(splitLine(lines[heading] ?? "", delimiter));
    if (header === null) continue;
    const rows = lines
      .slice(heading + 1)
      .map((line, i): FormRow => ({ cells: splitLine(line, delimiter), line: heading + i + 2 }))
      .filter(({ cells }) => cells.length === header.names.length);
    return { name: "a row for each quantity", comments: [], ...widened(header, rows) };
  }
  return null;
}

function headerIn(names: readonly string[]): TidyHeader | null {
  const frequency = names.findIndex((name) => roleFromHeader(name).quantity === "frequency");
  const placeOf = (pattern: RegExp) => names.findIndex((name) => pattern.test(name));
  const [quantity, value, unit] = [placeOf(QUANTITY), placeOf(VALUE), placeOf(UNIT)] as const;
  return frequency < 0 || quantity < 0 || value < 0 ? null : { names, frequency, quantity, value, unit };
}

/** A row for each frequency (and whatever else tells rows apart), with a column for each quantity. */
function widened({ names, frequency, quantity, value, unit }: TidyHeader, rows: readonly FormRow[]) {
  const cellOf = ({ cells }: FormRow, c: number) => cells[c] ?? "";
  const nameOf = (row: FormRow) =>
    unit < 0 || cellOf(row, unit) === "" ? cellOf(row, quantity) : `${cellOf(row, quantity)} (${cellOf(row, unit)})`;
  const kept = names.flatMap((_, c) => ([frequency, quantity, value, unit].includes(c) ? [] : [c]));
  const columns = [...new Set(rows.map(nameOf))].slice(0, MOST_COLUMNS);
  const byPlace = new Map<string, { readonly first: FormRow; readonly told: Map<string, string> }>();
  for (const row of rows) {
    const place = [frequency, ...kept].map((c) => cellOf(row, c)).join("\n");
    const own = byPlace.get(place) ?? { first: row, told: new Map<string, string>() };
    own.told.set(nameOf(row), cellOf(row, value));
    byPlace.set(place, own);
  }
  const wide = [...byPlace.values()].map(
    ({ first, told }): FormRow => ({
      cells: [...[frequency, ...kept].map((c) => cellOf(first, c)), ...columns.map((column) => told.get(column) ?? "")],
      line: first.line,
    }),
  );
  return { header: [...[frequency, ...kept].map((c) => names[c] ?? ""), ...columns], rows: wide };
}
