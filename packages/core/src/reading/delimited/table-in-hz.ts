import { type Finding, finding } from "../../sweep/finding.js";
import { type FrequencyUnit, frequencyUnitOf, UNIT_EXPONENTS } from "../options/units.js";
import { frequencyUnitFor, refuseImpossible, refuseUnitInRow } from "../quantities/frequency-unit.js";
import type { TextLines } from "../text/text-lines.js";
import { readCell, splitLines } from "./cells.js";
import type { Dialect } from "./dialect.js";
import { readTable } from "./number-table.js";
import type { NumberTable } from "./table-builder.js";

/** Rows looked at for a unit beside the frequency. */
const ROWS_FOR_UNITS = 200;
/** Frequencies of one sweep in one unit differ by less than this factor. */
const MOST_SPREAD = 200;

/** Reads the table with its frequencies in Hz; a unit that is not stated is told from the size of the numbers. */
export function tableInHz(
  lines: TextLines,
  dialect: Dialect,
  index: number,
  header: readonly string[],
  unit: {
    readonly asked: FrequencyUnit | null;
    readonly stated: FrequencyUnit | null;
    readonly isDecimalStated: boolean;
  },
  file: string,
  findings: Finding[],
): { table: NumberTable; unit: FrequencyUnit } {
  const ofSomeRows = unit.asked === null && unit.stated === null ? unitOfSomeRows(lines, dialect, index) : null;
  const readIn = (name: FrequencyUnit) =>
    readTable(
      lines,
      dialect,
      Array.from({ length: dialect.columns }, (_, column) => (column === index ? UNIT_EXPONENTS[name] : 0)),
      header,
      ofSomeRows !== null,
    );
  if (unit.asked !== null) return { table: readIn(unit.asked), unit: unit.asked };
  const stated = unit.stated ?? ofSomeRows;
  refuseUnitInRow(lines.text(dialect.firstDataLine).trim(), stated, file);
  if (stated !== null) {
    const table = readIn(stated);
    refuseImpossible(table.columns[index] as Float64Array, stated, unit.isDecimalStated, file);
    return { table, unit: stated };
  }
  const asPrinted = readIn("Hz");
  const inferred = frequencyUnitFor(asPrinted.columns[index] as Float64Array, file);
  findings.push(finding("caution", "frequency-unit-inferred", { unit: inferred }));
  return { table: inferred === "Hz" ? asPrinted : readIn(inferred), unit: inferred };
}

/** The unit that stands beside the frequencies of some rows, the first among them, where those of the others are of its size. */
function unitOfSomeRows(lines: TextLines, dialect: Dialect, index: number): FrequencyUnit | null {
  const { firstDataLine, delimiter, decimal } = dialect;
  const rows = splitLines(lines.texts(firstDataLine, firstDataLine + ROWS_FOR_UNITS), delimiter);
  const cells = rows.map((row) => /^([\d.,]+)\s*([kmg]?hz)?$/i.exec(row[index] ?? "")).filter((cell) => cell !== null);
  const units = new Set(cells.flatMap(([, , unit]) => (unit === undefined ? [] : [frequencyUnitOf(unit)])));
  const [unit = null] = units;
  const sizes = cells.flatMap(([, printed = ""]) => {
    const cell = readCell(printed, decimal);
    return cell.kind === "number" ? [cell.value] : [];
  });
  const areAlike = sizes.length === rows.length && Math.max(...sizes) < MOST_SPREAD * Math.min(...sizes);
  return units.size === 1 && cells[0]?.[2] !== undefined && areAlike ? unit : null;
}
