import { ReadError } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { NumberRows } from "../text/number-rows.js";
import type { TouchstoneKeywords } from "./header.js";
import type { TouchstoneScan } from "./scan.js";

/** The network data as records of one width: a frequency and the pairs of the whole matrix. */
export interface Records {
  readonly rows: NumberRows;
  readonly ports: number;
  readonly matrixFormat: TouchstoneKeywords["matrixFormat"];
  /** Numbers in a record, its frequency included */
  readonly width: number;
  readonly count: number;
  /** Row that each record's frequency begins; null where each row is a record */
  readonly firstRow: readonly number[] | null;
}

/** Values in a line of noise data, which may follow the network data of a two-port. */
const NOISE_WIDTH = 5;

/**
 * Finds where each frequency's numbers begin and end.
 *
 * In a keyword-free file a line with an odd count begins a record and lines with an even count go on with it; the count
 * tells the ports. In a version 2 file the number of ports does, and numbers may wrap anywhere.
 *
 * @throws ReadError `no-data`, or `bad-row` naming the line, what it holds and what it should hold
 */
export function groupRecords(scan: TouchstoneScan, file: string, port: number, findings: Finding[]): Records {
  const { rows, keywords } = scan;
  if (rows.count === 0) {
    throw new ReadError({
      code: "no-data",
      file,
      found: "there are no rows of numbers",
      expected: "data after the option line",
    });
  }
  const matrixFormat = keywords.version === null ? "full" : keywords.matrixFormat;
  const ports = keywords.ports ?? portsFromRows(rows, file);
  if (port > ports) return { rows, ports, matrixFormat, width: 1, count: 0, firstRow: [] };
  const width = 1 + 2 * (matrixFormat === "full" ? ports * ports : (ports * (ports + 1)) / 2);
  checkParameter(scan, ports, file);
  const end = keywords.version === null ? endOfNetworkData(rows, ports, findings) : rows.count;
  const firstRow = allOfWidth(rows, end, width) ? null : matchRows(rows, end, width, ports, file, findings);
  const count = firstRow?.length ?? end;
  if (keywords.frequencies !== null && keywords.frequencies !== count) {
    findings.push(
      finding("caution", "count-mismatch", { of: "frequencies", stated: keywords.frequencies, held: count }),
    );
  }
  return { rows, ports, matrixFormat, width, count, firstRow };
}

function allOfWidth({ plain, width: widthOf }: NumberRows, end: number, width: number): boolean {
  if (plain !== null) return plain.columns.length === width;
  for (let row = 0; row < end; row++) if (widthOf(row) !== width) return false;
  return true;
}

function portsFromRows(rows: NumberRows, file: string): number {
  let total = rows.width(0);
  for (let row = 1; row < rows.count && rows.width(row) % 2 === 0; row++) total += rows.width(row);
  const ports = Math.sqrt((total - 1) / 2);
  if (Number.isInteger(ports) && ports >= 1) return ports;
  // A lone short row after a good one is the ragged row; judge by the first line alone.
  const first = rows.width(0);
  if (first === 3) return 1;
  if (first === 9) return 2;
  throw new ReadError({
    code: "bad-row",
    file,
    line: rows.line(0),
    found: `${first} number${first === 1 ? "" : "s"} in the first row`,
    expected: "3 for a one-port, 9 for a two-port, or a full matrix over several lines",
  });
}

function checkParameter(scan: TouchstoneScan, ports: number, file: string): void {
  const { parameter } = scan.options;
  if ((parameter === "H" || parameter === "G") && ports !== 2) {
    throw new ReadError({
      code: "bad-option-line",
      file,
      line: scan.optionLine,
      found: `${parameter} parameters of a ${ports}-port`,
      expected: "H and G with two ports only",
    });
  }
}

/** Row where the noise data of a keyword-free two-port begin: five numbers and a frequency that does not advance. */
function endOfNetworkData(rows: NumberRows, ports: number, findings: Finding[]): number {
  const end = rows.count;
  if (ports !== 2) return end;
  for (let row = 1; row < end; row++) {
    if (rows.width(row) !== NOISE_WIDTH || rows.width(row - 1) !== 9) continue;
    if (rows.value(row, 0) > rows.value(row - 1, 0)) continue;
    findings.push(finding("info", "noise-data-skipped", { lines: end - row }, { line: rows.line(row) }));
    return row;
  }
  return end;
}

/** Matches rows to records, in order. @returns for each record the row that its frequency stands in */
function matchRows(
  rows: NumberRows,
  end: number,
  width: number,
  ports: number,
  file: string,
  findings: Finding[],
): readonly number[] {
  const recordRows: number[] = [];
  let row = 0;
  while (row < end) {
    const first = row;
    let filled = 0;
    while (row < end && filled < width) filled += rows.width(row++);
    if (filled === width) {
      recordRows.push(first);
      continue;
    }
    // An even count cannot begin a record, and an odd count after it begins the next: then the first row is the short one.
    const isFirst = rows.width(first) % 2 === 0 || rows.width(row - 1) % 2 === 1;
    const blamed = isFirst ? first : row - 1;
    if (filled < width && row === end && recordRows.length > 0) {
      findings.push(finding("caution", "last-row-cut", { held: filled, wanted: width }, { line: rows.line(first) }));
      break;
    }
    const held = blamed > first ? `${filled} numbers up to here` : `${rows.width(first)} numbers`;
    throw new ReadError({
      code: "bad-row",
      file,
      line: rows.line(blamed),
      found: held,
      expected: `${width} for a ${ports}-port (the frequency and ${(width - 1) / 2} pair${width > 3 ? "s" : ""})`,
      remedy: "Correct or remove the line.",
    });
  }
  return recordRows;
}
