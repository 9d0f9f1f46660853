import Papa from "papaparse";
import { ReadError } from "../../input/read-error.js";
import type { LeftOut, ReportLeftOutReason } from "./left-out.js";
import type { ReadReports, ReceptionReport } from "./report.js";
import { type ReportColumn, reportColumns } from "./report-columns.js";
import { bandAt, bandNamed, callOf, powersIn, reportTime, snrIn } from "./report-values.js";

/** The header stands among the first lines. */
const HEADER_WITHIN = 20;
const LINE_END = /\r\n|\r|\n/;
const DELIMITERS = [",", ";", "\t", "|"];

/**
 * A table of reports: a row each, its columns named in a header, in any order.
 *
 * @param own the own call sign, which stands for the transmitter where no column names it
 * @throws ReadError where there is no such header
 */
export function reportsFromTable(text: string, file: string, own: string | undefined): ReadReports {
  // Most files that are asked are sweeps: all is cut only where there is a header.
  const header = headerIn(text.split(LINE_END, HEADER_WITHIN));
  if (header === null || (own === undefined && !header.columns.has("transmitter"))) refuse(header === null, file);
  const { columns, delimiter, line } = header;
  const lines = text.split(LINE_END);
  const rows = rowsOf(lines.slice(line).join("\n"), delimiter);
  const cell = (row: readonly string[], column: ReportColumn): string => row[columns.get(column) ?? -1]?.trim() ?? "";
  const powers = powersIn(
    rows.map((row) => cell(row, "power")),
    unitOfPower(lines[line - 1] ?? "", delimiter, columns),
  );
  const reports: ReceptionReport[] = [];
  const leftOut: LeftOut[] = [];
  for (const [index, row] of rows.entries()) {
    if (row.every((each) => each.trim() === "")) continue;
    const read = reportFrom((column) => cell(row, column), powers[index] ?? null, own);
    if (typeof read === "string") leftOut.push({ place: line + index + 1, reason: read });
    else reports.push(read);
  }
  return { reports, leftOut, description: "table of reports" };
}

interface Header {
  readonly columns: ReadonlyMap<ReportColumn, number>;
  readonly delimiter: string;
  /** Its line, from 1 */
  readonly line: number;
}

function headerIn(lines: readonly string[]): Header | null {
  for (const [index, line] of lines.entries()) {
    for (const delimiter of DELIMITERS.filter((each) => line.includes(each))) {
      const columns = reportColumns(rowsOf(line, delimiter)[0] ?? []);
      if (columns !== null) return { columns, delimiter, line: index + 1 };
    }
  }
  return null;
}

/** The quoting of delimited text is papaparse's. */
const rowsOf = (text: string, delimiter: string): readonly (readonly string[])[] =>
  Papa.parse<string[]>(text, { delimiter }).data;

function unitOfPower(line: string, delimiter: string, columns: ReadonlyMap<ReportColumn, number>): "W" | "dBm" | null {
  const name = rowsOf(line, delimiter)[0]?.[columns.get("power") ?? -1] ?? "";
  if (/dbm/i.test(name)) return "dBm";
  return /\bW\b|watt|_w$/i.test(name) ? "W" : null;
}

function reportFrom(
  cell: (column: ReportColumn) => string,
  powerW: number | null,
  own: string | undefined,
): ReceptionReport | ReportLeftOutReason {
  const time = reportTime(cell("date") === "" ? cell("time") : `${cell("date")} ${cell("time")}`);
  if (time === null) return "no-time";
  const [transmitter, receiver] = [callOf(cell("transmitter") || own || ""), callOf(cell("receiver"))];
  if (transmitter === "" || receiver === "") return "no-station";
  const band = bandNamed(cell("band")) ?? bandAt(cell("frequency"));
  if (band === null) return "no-band";
  const mode = cell("mode").toUpperCase();
  return {
    time,
    transmitter,
    receiver,
    transmitterLocator: cell("transmitterLocator") || null,
    receiverLocator: cell("receiverLocator") || null,
    band,
    mode: mode === "" ? null : mode,
    snrDb: snrIn(cell("snr"), null),
    powerW,
  };
}

function refuse(hasNoHeader: boolean, file: string): never {
  throw new ReadError({
    code: "no-data",
    file,
    found: hasNoHeader
      ? "no line names the columns of a table of reports"
      : "no column names the station that was heard",
    expected: "a time, a receiver, a transmitter, and a band or a frequency",
    remedy: hasNoHeader ? "Name the columns in a line above the rows." : "Say which station it was.",
  });
}
