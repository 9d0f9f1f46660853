import { quote, ReadError } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { type FrequencyUnit, frequencyUnitOf, UNIT_EXPONENTS } from "../options/units.js";
import { frequencyUnitFor, refuseImpossible } from "../quantities/frequency-unit.js";
import { splitLine } from "./cells.js";
import { cutRows } from "./cut-rows.js";
import { withoutFrequency } from "./stated-columns.js";
import type { CutRows } from "./table-builder.js";
import type { TableColumn } from "./table-column.js";
import { type Titles, tableColumns } from "./table-columns.js";
import type { TableText } from "./table-text.js";
import { withThousands } from "./thousands-in-frequencies.js";

/** A table whose frequencies are in Hz. */
export interface TableInHz {
  readonly rows: CutRows;
  readonly columns: readonly TableColumn[];
  /** Place of the frequencies among the columns */
  readonly index: number;
  readonly unit: FrequencyUnit;
}

/** What is known of the unit of frequency before the rows are read. */
interface UnitKnown {
  readonly asked: FrequencyUnit | null;
  readonly stated: FrequencyUnit | null;
}

/**
 * Reads the table with its frequencies in Hz. The unit is the one of the cells, or that which the user or the file state, or
 * else is told from the size of the numbers.
 *
 * @param index which of the columns, as they are cut, holds the frequencies
 */
export function tableInHz(
  text: TableText,
  index: number,
  titles: Titles,
  { asked, stated }: UnitKnown,
  findings: Finding[],
): TableInHz {
  const { lines, dialect, file } = text;
  const readIn = (unit: FrequencyUnit) => {
    const shifts = Array.from({ length: dialect.columns }, (_, c) => (c === index ? UNIT_EXPONENTS[unit] : 0));
    const rows = cutRows(lines, dialect, shifts, titles.names);
    const columns = tableColumns({ ...text, rows, shifts }, titles).map(countedFromZero);
    const place = columns.findIndex(({ role }) => role.quantity === "frequency");
    if (place < 0) throw withoutFrequency(file);
    return { rows, columns, index: place };
  };
  const beside = unitBeside(text, index);
  if (beside !== null && stated !== null && beside !== stated) throw twoUnits(beside, stated, text);
  const known = asked ?? stated ?? beside;
  const cut = readIn(known ?? "Hz");
  const first = { ...cut, columns: withThousands(cut.columns, cut.index, index, cut.rows, text) };
  const frequency = first.columns[first.index] as TableColumn;
  const inCells = frequency.unit === null ? null : (frequency.role.frequencyUnit ?? null);
  if (inCells !== null) {
    if (asked !== null && asked !== frequency.unit?.name) {
      const params = { where: "cells", unit: frequency.unit?.name ?? inCells, given: asked } as const;
      findings.push(finding("caution", "unit-stated", params));
    }
    refuseImpossible(frequency.values, inCells, dialect.isDecimalStated, file);
    return { ...first, unit: inCells };
  }
  if (asked !== null) return { ...first, unit: asked };
  if (known !== null) {
    refuseImpossible(frequency.values, known, dialect.isDecimalStated, file);
    return { ...first, unit: known };
  }
  const inferred = frequencyUnitFor(frequency.values, file);
  findings.push(finding("caution", "frequency-unit-inferred", { unit: inferred }));
  return { ...(inferred === "Hz" ? first : readIn(inferred)), unit: inferred };
}

/** Frequencies that are counted from another one, from 0. */
function countedFromZero(column: TableColumn): TableColumn {
  const { quantity, offset } = column.role;
  if (quantity !== "frequency" || offset === undefined) return column;
  return { ...column, values: column.values.map((value) => value + offset) };
}

/** The unit that stands in a cell of its own behind the frequency of the first row. */
function unitBeside({ lines, dialect }: TableText, index: number): FrequencyUnit | null {
  const cells = splitLine(lines.text(dialect.firstDataLine), dialect.delimiter);
  return frequencyUnitOf(cells[index + 1] ?? "");
}

const twoUnits = (beside: FrequencyUnit, stated: FrequencyUnit, { lines, dialect, file }: TableText): ReadError =>
  new ReadError({
    code: "ambiguous",
    file,
    found: `the unit ${quote(beside)} stands beside the numbers (${quote(lines.text(dialect.firstDataLine).trim())}), and ${stated} in the header`,
    remedy: "Say which unit the frequencies have with --unit.",
  });
