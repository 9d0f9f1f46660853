import { ReadError } from "../../input/read-error.js";
import { magnitudesOf } from "../../numbers/column.js";
import { type Complex, complex, fromPolarDegrees, scale } from "../../numbers/complex.js";
import { reflectionFromAdmittance, reflectionFromImpedance } from "../../reflection/impedance.js";
import type { Finding } from "../../sweep/finding.js";
import { type Points, rowsWithoutNumber } from "../points/arrange.js";
import { NO_ROUNDING, roundingOfParts } from "../points/rounding.js";
import type { NumberRows } from "../text/number-rows.js";
import { linesFrom } from "../text/plain-rows.js";
import { reflectionAtPort } from "./network.js";
import type { Records } from "./records.js";
import type { TouchstoneScan } from "./scan.js";

/** The reflection at a port, point by point; rows that give none are left out and reported. */
export function reflectionPoints(
  scan: TouchstoneScan,
  records: Records,
  references: readonly number[],
  port: number,
  file: string,
  findings: Finding[],
): Points {
  const { rows, count, firstRow } = records;
  // The commonest file by far needs nothing done to its numbers.
  if (rows.plain !== null && scan.options.parameter === "S" && scan.options.format === "RI") {
    const [frequencyHz, real, imaginary] = rows.plain.columns as [Float64Array, Float64Array, Float64Array];
    return pointsOf(frequencyHz, real, imaginary, linesFrom(rows.line(0), count), true);
  }
  const frequencyHz = new Float64Array(count);
  const reflectionReal = new Float64Array(count);
  const reflectionImaginary = new Float64Array(count);
  const line = new Uint32Array(count);
  const read = reflectionReader(scan, records, references, port);
  let kept = 0;
  let dropped = 0;
  let droppedLine = 0;
  for (let r = 0; r < count; r++) {
    const row = firstRow === null ? r : (firstRow[r] as number);
    const frequency = rows.leadingHz(row);
    const { real, imaginary } = read(rows, row);
    if (!(Number.isFinite(frequency) && Number.isFinite(real) && Number.isFinite(imaginary))) {
      if (dropped++ === 0) droppedLine = rows.line(row);
      continue;
    }
    frequencyHz[kept] = frequency;
    reflectionReal[kept] = real;
    reflectionImaginary[kept] = imaginary;
    line[kept++] = rows.line(row);
  }
  if (dropped > 0) findings.push(rowsWithoutNumber(droppedLine, dropped));
  if (kept === 0) {
    throw new ReadError({
      code: "no-data",
      file,
      found: "no row holds usable numbers",
      expected: "a frequency and a reflection in each row",
    });
  }
  return pointsOf(
    frequencyHz.subarray(0, kept),
    reflectionReal.subarray(0, kept),
    reflectionImaginary.subarray(0, kept),
    line.subarray(0, kept),
    scan.options.parameter === "S" && scan.options.format === "RI",
  );
}

function pointsOf(
  frequencyHz: Float64Array,
  real: Float64Array,
  imaginary: Float64Array,
  line: Uint32Array,
  areAsPrinted: boolean,
): Points {
  return {
    frequencyHz,
    reflectionReal: real,
    reflectionImaginary: imaginary,
    reflectionMagnitude: magnitudesOf(real, imaginary),
    line,
    ceiling: null,
    areSpots: false,
    repeatNoise: null,
    rounding: areAsPrinted ? roundingOfParts(real, imaginary) : NO_ROUNDING,
  };
}

/** How to get the wanted reflection from the record that begins in a row. */
function reflectionReader(
  scan: TouchstoneScan,
  { ports, matrixFormat }: Records,
  references: readonly number[],
  port: number,
): (rows: NumberRows, row: number) => Complex {
  const { parameter, format } = scan.options;
  const isNormalised = scan.keywords.version === null;
  const pair = ({ value }: NumberRows, row: number, place: number) =>
    complexFromPair(value(row, 1 + 2 * place), value(row, 2 + 2 * place), format);
  if (parameter === "S") {
    const place = placeInRecord(port, port, ports, matrixFormat);
    return (rows, row) => pair(rows, row, place);
  }
  const reference = references[port] as number;
  if (ports === 1 && (parameter === "Z" || parameter === "Y")) {
    const referenceOhms = isNormalised ? 1 : reference;
    const convert = parameter === "Z" ? reflectionFromImpedance : reflectionFromAdmittance;
    return (rows, row) => convert(pair(rows, row, 0), referenceOhms);
  }
  // Whether 12 or 21 comes first in a two-port makes no difference: what is at a port is the same for the matrix turned over.
  return (rows, first) => {
    const matrix: Complex[] = [];
    for (let row = 0; row < ports; row++) {
      for (let column = 0; column < ports; column++) {
        const value = pair(rows, first, placeInRecord(row, column, ports, matrixFormat));
        matrix.push(isNormalised ? value : normalise(value, parameter, row, column, references));
      }
    }
    return reflectionAtPort(matrix, ports, parameter, port);
  };
}

/**
 * A matrix entry over (or times) the references: voltages are counted over √R, currents times √R of their port. The
 * off-diagonal of H and G has no unit, and changes with the ratio of the two.
 */
function normalise(
  value: Complex,
  parameter: "Y" | "Z" | "H" | "G",
  row: number,
  column: number,
  references: readonly number[],
): Complex {
  if ((parameter === "H" || parameter === "G") && row !== column) {
    const ratio = Math.sqrt((references[1] as number) / (references[0] as number));
    return scale(value, parameter === "H" ? ratio : 1 / ratio);
  }
  const isImpedance = parameter === "Z" || parameter === (row === 0 ? "H" : "G");
  const ohms = Math.sqrt((references[row] as number) * (references[column] as number));
  return scale(value, isImpedance ? 1 / ohms : ohms);
}

/** Index of matrix entry (row, column) among the pairs of a record; a triangular matrix holds each pair of ports once. */
function placeInRecord(row: number, column: number, ports: number, format: Records["matrixFormat"]): number {
  if (format === "full") return row * ports + column;
  const [low, high] = row < column ? [row, column] : [column, row];
  return format === "lower" ? (high * (high + 1)) / 2 + low : low * ports - (low * (low - 1)) / 2 + (high - low);
}

function complexFromPair(first: number, second: number, format: "DB" | "MA" | "RI"): Complex {
  if (format === "RI") return complex(first, second);
  return fromPolarDegrees(format === "MA" ? first : 10 ** (first / 20), second);
}
