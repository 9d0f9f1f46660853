import { quote, ReadError } from "../../input/read-error.js";
import { isReading } from "../options/column-role.js";
import type { TableColumn } from "./table-column.js";
import type { TableText } from "./table-text.js";

/** Rows of which fewer tell nothing. */
const FEWEST_ROWS = 3;
/** Steps that differ by less than this share of the mean one are even, but for rounding in print. */
const EVEN = 0.05;

/**
 * Refuses a table whose frequencies go up and down while a reading goes in even steps, as frequencies do: its names are exchanged.
 *
 * @throws ReadError `ambiguous`
 */
export function refuseExchangedNames(
  columns: readonly TableColumn[],
  index: number,
  { dialect, file }: TableText,
): void {
  const frequency = columns[index];
  if (frequency === undefined || frequency.values.length < FEWEST_ROWS || areAlong(frequency.values)) return;
  const even = columns.find(({ role, values }) => isReading(role) && areEven(values));
  if (even === undefined) return;
  throw new ReadError({
    code: "ambiguous",
    file,
    line: dialect.firstDataLine,
    found: `the numbers under ${quote(even.name)} go in even steps, and those under ${quote(frequency.name)} up and down: the names seem to be exchanged`,
    remedy: "Put the names right, or say what each column holds with --columns, from the left.",
  });
}

const stepsOf = (values: Float64Array): Float64Array =>
  values.subarray(1).map((value, i) => value - (values[i] as number));

function areAlong(values: Float64Array): boolean {
  const steps = stepsOf(values);
  return steps.every((step) => step >= 0) || steps.every((step) => step <= 0);
}

function areEven(values: Float64Array): boolean {
  const steps = stepsOf(values);
  const mean = ((values.at(-1) as number) - (values[0] as number)) / steps.length;
  return mean !== 0 && steps.every((step) => Math.abs(step - mean) <= EVEN * Math.abs(mean));
}
