import { quote, ReadError } from "../../input/read-error.js";
import { isInSomeBand } from "../notes/note-place.js";
import { isReading } from "../options/column-role.js";
import type { TableColumn } from "./table-column.js";
import type { TableText } from "./table-text.js";

/** Rows of which fewer tell nothing. */
const FEWEST_ROWS = 3;
/** Steps that differ by less than this share of the mean one are even, but for rounding in print. */
const EVEN = 0.05;

/**
 * Refuses a table whose frequencies go up and down, or along where no band is, while a reading goes in even steps, as frequencies do: its
 * names are exchanged.
 *
 * @throws ReadError `ambiguous`
 */
export function refuseExchangedNames(
  columns: readonly TableColumn[],
  index: number,
  { dialect, file }: TableText,
): void {
  const frequency = columns[index];
  if (frequency === undefined || frequency.values.length < FEWEST_ROWS) return;
  // Frequencies that go one way are doubted only where the others are in a band, as MHz, and they are not.
  const isOrdered = areAlong(frequency.values);
  const even = columns.find(
    ({ role, values }) => isReading(role) && areEven(values) && (!isOrdered || values.every(isInSomeBand)),
  );
  if (even === undefined) return;
  if (isOrdered && (areEven(frequency.values) || frequency.values.every((hz) => isInSomeBand(hz / 1e6)))) return;
  throw new ReadError({
    code: "ambiguous",
    file,
    line: dialect.firstDataLine,
    found: `the numbers under ${quote(even.name)} go in even steps, as frequencies do, and those under ${quote(frequency.name)} do not: the names seem to be exchanged`,
    remedy: "Put the names right, or say what each column holds with --columns, from the left.",
  });
}

function areAlong(values: Float64Array): boolean {
  let [areUp, areDown] = [true, true];
  for (let i = 1; i < values.length && (areUp || areDown); i++) {
    const step = (values[i] as number) - (values[i - 1] as number);
    areUp &&= step >= 0;
    areDown &&= step <= 0;
  }
  return areUp || areDown;
}

function areEven(values: Float64Array): boolean {
  const mean = ((values.at(-1) as number) - (values[0] as number)) / (values.length - 1);
  if (mean === 0) return false;
  for (let i = 1; i < values.length; i++) {
    const step = (values[i] as number) - (values[i - 1] as number);
    if (!(Math.abs(step - mean) <= EVEN * Math.abs(mean))) return false;
  }
  return true;
}
