import { ReadError } from "../../input/read-error.js";
import { magnitudesOf } from "../../numbers/column.js";
import { type Complex, complex, fromPolarDegrees, scale } from "../../numbers/complex.js";
import { reflectionFromAdmittance, reflectionFromImpedance } from "../../reflection/impedance.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { ReadOptions } from "../options/read-options.js";
import { type Points, rowsWithoutNumber } from "../points/arrange.js";
import type { ReadPoints } from "../points/read-points.js";
import { NO_ROUNDING, roundingOfParts } from "../points/rounding.js";
import type { NumberRows } from "../text/number-rows.js";
import { linesFrom } from "../text/plain-rows.js";
import type { SourceText } from "../text/text.js";
import { reflectionAtPort } from "./network.js";
import { oddities } from "./oddities.js";
import { groupRecords, type Records } from "./records.js";
import { scanTouchstone, type TouchstoneScan } from "./scan.js";

const FORMAT_WORDS = { RI: "real and imaginary", MA: "magnitude and angle", DB: "dB and angle" };

/**
 * Reads the reflection at one port from a Touchstone file.
 *
 * Source for all rules: IBIS Open Forum, Touchstone File Format Specification, Version 2.1 (26 January 2024), which
 * covers keyword-free files (called version 1 here) as well.
 *
 * @throws ReadError where the file breaks a rule in a way that leaves its meaning open
 */
export function readTouchstone(text: SourceText, options: ReadOptions): ReadPoints {
  const scan = scanTouchstone(text);
  const findings: Finding[] = [...scan.findings];
  const records = groupRecords(scan, text.file, options.port ?? 1, findings);
  const port = (options.port ?? 1) - 1;
  if (!Number.isInteger(port) || port < 0 || port >= records.ports) {
    throw new ReadError({
      code: "bad-option",
      file: text.file,
      found: `port ${port + 1} was asked for, but the file has ${records.ports}`,
      remedy: "Give a port that the file has.",
    });
  }
  const references = referencesOf(scan, records.ports, text.file);
  const points = reflectionPoints(scan, records, references, port, text.file, findings);
  const { options: line } = scan;
  const version = scan.keywords.version === null ? "1" : scan.keywords.version;
  if (line.unitIsDefault) {
    findings.push(
      finding(
        "caution",
        "frequency-unit-default",
        {},
        {
          line: scan.optionLine,
        },
      ),
    );
  }
  findings.push(...oddities(scan, records, points, text.file, options));
  return {
    format: "touchstone",
    points,
    referenceOhms: references[port] as number,
    description: `Touchstone ${version}, ${records.ports}-port ${line.parameter}, ${FORMAT_WORDS[line.format]}, ${line.unit}`,
    comments: scan.comments,
    findings,
  };
}

function referencesOf(scan: TouchstoneScan, ports: number, file: string): readonly number[] {
  const stated = scan.keywords.references ?? scan.options.references;
  if (stated.length === ports) return stated;
  if (stated.length === 1) return new Array<number>(ports).fill(stated[0] as number);
  throw new ReadError({
    code: "bad-option-line",
    file,
    line: scan.optionLine,
    found: `${stated.length} reference impedances for ${ports} ports`,
    expected: "one for all ports, or one per port",
  });
}

function reflectionPoints(
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
