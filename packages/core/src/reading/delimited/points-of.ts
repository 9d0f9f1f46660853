import { quote, ReadError } from "../../input/read-error.js";
import { at, magnitudesOf } from "../../numbers/column.js";
import { reflectionMagnitudeFromSwr } from "../../reflection/swr.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { type Points, rowsWithoutNumber } from "../points/arrange.js";
import { roundingOf } from "../points/rounding.js";
import { type Determination, reflectionAt } from "../quantities/determination.js";
import type { DelimitedColumns } from "./delimited-columns.js";

/** An SWR of 0.99 is a rounded 1, not an impossible reading. */
const NEARLY_ZERO = 0.01;

/** The points of the rows that give one, and which those are. */
export function pointsOf(
  { file, frequencyHz, lines }: DelimitedColumns,
  chosen: Determination,
  findings: Finding[],
): { points: Points; isKept: (_: number, row: number) => boolean } {
  const count = frequencyHz.length;
  const real = new Float64Array(count);
  const imaginary = new Float64Array(count);
  let lost = 0;
  let lostLine = 0;
  for (let row = 0; row < count; row++) {
    const value = reflectionAt(chosen, row);
    const frequency = at(frequencyHz, row);
    const isUsable = Number.isFinite(frequency) && Number.isFinite(value.real) && Number.isFinite(value.imaginary);
    if (!isUsable || (!chosen.isVector && value.real < -NEARLY_ZERO)) {
      if (lost++ === 0) lostLine = lines[row] as number;
      real[row] = Number.NaN;
      continue;
    }
    real[row] = chosen.isVector ? value.real : Math.max(0, value.real);
    imaginary[row] = value.imaginary;
  }
  if (lost > 0) findings.push(rowsWithoutNumber(lostLine, lost));
  if (lost === count) {
    throw new ReadError({
      code: "no-data",
      file,
      found: `no row gives a reflection from ${chosen.title}`,
      expected: "numbers in those columns",
      remedy: "If other columns hold them, say what each holds with --columns, from the left.",
    });
  }
  const isKept = (_: number, row: number) => !Number.isNaN(at(real, row));
  const keptOf = (column: Float64Array) => (lost === 0 ? column : column.filter(isKept));
  const first = keptOf(real);
  const second = keptOf(imaginary);
  const points: Points = {
    frequencyHz: keptOf(frequencyHz),
    reflectionReal: chosen.isVector ? first : null,
    reflectionImaginary: chosen.isVector ? second : null,
    // Of a scalar reading the real part is ρ already; squaring it would lose what lies below 1e-154.
    reflectionMagnitude: chosen.isVector ? magnitudesOf(first, second) : first,
    line: lost === 0 ? lines : lines.filter(isKept),
    ceiling: scaleEndIn(chosen, findings),
    areSpots: false,
    repeatNoise: null,
    rounding: roundingOf(chosen),
  };
  return { points, isKept };
}

/** ρ from which on a scalar reading means "at least", where its instrument's scale ended. */
function scaleEndIn({ columns, isVector }: Determination, findings: Finding[]): number | null {
  const [column] = columns;
  if (isVector || column === undefined || column.ceiling === null) return null;
  const isSwr = column.quantity === "swr";
  if (column.ceiling >= (isSwr ? Number.POSITIVE_INFINITY : 1)) {
    findings.push(finding("caution", "saturated", { name: quote(column.name), ceiling: null }));
    return null;
  }
  findings.push(finding("caution", "saturated", { name: quote(column.name), ceiling: column.ceiling }));
  return isSwr ? reflectionMagnitudeFromSwr(column.ceiling) : column.ceiling;
}
