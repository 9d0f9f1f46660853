import { at } from "../column.js";
import { type Finding, finding } from "../finding.js";
import { ReadError } from "../read-error.js";
import { readCell } from "./cells.js";
import type { ColumnRole } from "./columns.js";
import type { CellRows } from "./delimited.js";
import type { Dialect } from "./dialect.js";
import { type FrequencyUnit, type ReadOptions, UNIT_EXPONENTS } from "./options.js";

/** The frequency column in Hz (NaN where a cell holds no number) and the unit that it was printed in. */
export interface FrequencyColumn {
  readonly values: Float64Array;
  readonly unit: FrequencyUnit;
}

/**
 * Reads the frequency column, its unit from the user, the header or, failing both, the size of the numbers.
 *
 * @throws ReadError `no-frequency` where there is none, `ambiguous` where its unit could be two things
 */
export function readFrequencyColumn(
  rows: CellRows,
  roles: readonly ColumnRole[],
  dialect: Dialect,
  options: ReadOptions,
  file: string,
  findings: Finding[],
): FrequencyColumn {
  const index = roles.findIndex(({ quantity }) => quantity === "frequency");
  if (index < 0) {
    throw new ReadError({
      code: "no-frequency",
      file,
      found: "no column holds a frequency",
      remedy: "Say which one does with --columns.",
    });
  }
  const stated = options.frequencyUnit ?? roles[index]?.frequencyUnit ?? null;
  const valuesIn = (unit: FrequencyUnit) =>
    Float64Array.from(rows.cells, (row) => {
      const cell = readCell(row[index] ?? "", dialect.decimal, UNIT_EXPONENTS[unit]);
      return cell.kind === "number" ? cell.value : Number.NaN;
    });
  if (stated !== null) return { values: valuesIn(stated), unit: stated };
  const unit = inferUnit(valuesIn("Hz"), file);
  findings.push(
    finding(
      "caution",
      "frequency-unit-inferred",
      `No unit of frequency is stated; the size of the numbers says ${unit}. Say --unit if it is another.`,
    ),
  );
  return { values: valuesIn(unit), unit };
}

/**
 * The unit that numbers without one can only have in a sweep of an antenna between about 100 kHz and 6 GHz. Numbers
 * that fit two units are refused: 7.1 may be MHz or, in a laboratory's file, GHz.
 */
function inferUnit(values: Float64Array, file: string): FrequencyUnit {
  let least = Number.POSITIVE_INFINITY;
  let greatest = 0;
  for (let i = 0; i < values.length; i++) {
    const value = at(values, i);
    if (value > 0 && value < least) least = value;
    if (value > greatest) greatest = value;
  }
  if (greatest >= 1e7) return "Hz";
  if (greatest >= 1000 && greatest < 1e5 && least >= 100) return "kHz";
  if (greatest >= 10 && greatest < 1000) return "MHz";
  throw new ReadError({
    code: "ambiguous",
    file,
    found: `frequencies from ${least} to ${greatest} without a unit`,
    remedy: "Say which it is: --unit Hz, --unit kHz, --unit MHz or --unit GHz.",
  });
}
