import Papa from "papaparse";
import { bytesOf, type FileContent } from "../../input/file-content.js";
import { printableText } from "../../input/printable.js";
import { ReadError } from "../../input/read-error.js";
import { grouped } from "../../numbers/grouped.js";
import { sourceText } from "../../reading/text/text.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { statedDate, timeOf } from "./dates.js";
import type { LogRow } from "./log-row.js";

/** A table kept beside the sweeps: a row for each, with whatever columns the operator likes. */
export interface DeploymentLog {
  /** As the file calls them, in its order; always with one that names the sweep's file */
  readonly columns: readonly string[];
  /** The column that names the sweep's file, as the file calls it */
  readonly fileColumn: string;
  /** The first line to the letter, columns without a name and twice the same included */
  readonly header: readonly string[];
  /** What splits its columns: comma, semicolon or tab */
  readonly delimiter: string;
  /** In the order of the file, without empty lines */
  readonly rows: readonly LogRow[];
  /** What of its text is not as a table should be */
  readonly slips: readonly string[];
  /** A quote that is not closed takes in all that is written after it */
  readonly hasOpenQuote: boolean;
}

/** What a log's file is called where none is named. */
export const LOG_FILE = "deployments.csv";

/** Says that of several logs beside the sweeps only one was read. */
export const logNotRead = (read: string, others: readonly string[]): Finding =>
  finding("caution", "log-not-read", { read, others });

const FILE_COLUMNS = ["file", "sweep", "filename", "file name"];
const DELIMITERS = [",", ";", "\t"];

const REMEDY = "feedpoint log init writes a log to fill in; --no-log leaves this one alone.";

/**
 * Reads a deployment log: delimited text (comma, semicolon or tab, whichever its first line holds most) whose first line names
 * the columns, one of which must be `file`.
 *
 * @param bytes the file's bytes, or its text
 * @param fileName for messages
 * @throws ReadError where it is no text, or has no column of files
 * @throws TypeError for bytes that are none
 * @example
 * ```ts
 * import { readDeploymentLog, rowFinder } from "@feedpoint/core";
 *
 * const log = readDeploymentLog("file,mooring,height\nmay.s1p,Lantern Bridge,8 m\n", "deployments.csv");
 * rowFinder(log)("sweeps/may.s1p")?.mooring; // → "Lantern Bridge"
 * ```
 */
export function readDeploymentLog(bytes: FileContent, fileName: string): DeploymentLog {
  const text = textOf(bytesOf(bytes, "bytes"), fileName);
  const firstLine = /^[^\r\n]*/.exec(text)?.[0] ?? "";
  const count = (delimiter: string) => firstLine.split(delimiter).length;
  const delimiter = DELIMITERS.reduce((best, next) => (count(next) > count(best) ? next : best));
  const { data, errors } = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: "greedy" });
  const [header = [], ...lines] = data.map((cells) => cells.map((cell) => cell.trim()));
  // A log of what was up when may go by the names of its deployments alone.
  const hasTimes = header.some((name) => name.toLowerCase() === "up");
  const fileColumn =
    header.find((name) => FILE_COLUMNS.includes(name.toLowerCase())) ??
    (hasTimes ? header.find((name) => name.toLowerCase() === "deployment") : undefined);
  if (fileColumn === undefined) {
    throw new ReadError({
      code: "no-data",
      file: fileName,
      line: 1,
      found: header.length === 0 ? "no header" : `the columns ${header.join(", ")}`,
      expected: 'a first line that names the columns, one of them "file"',
      remedy: REMEDY,
    });
  }
  const hasOpenQuote = errors.some(({ code }) => code === "MissingQuotes");
  const columns = header.filter((name, i) => name !== "" && header.indexOf(name) === i);
  return {
    columns,
    fileColumn,
    header,
    delimiter,
    hasOpenQuote,
    slips: [
      ...(hasOpenQuote ? ["a quote is not closed, so that all after it is one cell"] : []),
      ...(lines.some((cells) => cells.slice(header.length).some((cell) => cell !== ""))
        ? ["a row has more cells than there are columns"]
        : []),
      ...(new Set(header.filter((name) => name !== "")).size < header.filter((name) => name !== "").length
        ? ["two columns have one name, and only the first is read"]
        : []),
    ],
    rows: lines.map((cells) => Object.fromEntries(columns.map((name) => [name, cells[header.indexOf(name)] ?? ""]))),
  };
}

function textOf(bytes: Uint8Array, fileName: string): string {
  try {
    const source = sourceText(bytes, fileName);
    return source.decode(0, source.bytes.length);
  } catch (error) {
    throw error instanceof ReadError ? new ReadError({ ...error.problem, remedy: REMEDY }) : error;
  }
}

/** The last part of a path, whichever way its slashes lean. */
const baseName = (path: string) => path.replace(/^.*[\\/]/s, "");

/**
 * A path as it is compared: slashes forward, accents composed, what could steer a terminal as it is printed, and without the
 * apostrophe that `log init` puts before a name that a spreadsheet would take for a formula.
 */
function comparable(path: string): string {
  const forward = path
    .replace(/[\\/]+/g, "/")
    .replace(/^(\.\/)+/, "")
    .replace(/(?<=.)\/$/, "");
  return printableText(forward.replace(/^'(?=[=+\-@])/, "").normalize("NFC"));
}

/**
 * Finds the row of a log that speaks of a file: the one whose file name, with as many folders as it states, stands at the end
 * of the file's path. Of several, the one that states the most; of equal ones the first.
 *
 * @returns a function of a path, with slashes either way, which gives null where no row speaks of it
 */
export function rowFinder({ fileColumn, rows }: DeploymentLog): (path: string) => LogRow | null {
  const stated = rows.map((row) => ({ row, path: comparable(row[fileColumn] ?? "") }));
  const byName = grouped(stated, ({ path }) => baseName(path));
  return (path) => {
    const whole = `/${comparable(path)}`;
    const matches = (byName.get(baseName(whole)) ?? []).filter(
      ({ path: end }) => end !== "" && whole.endsWith(`/${end}`),
    );
    const longest = matches.reduce((most, { path: end }) => Math.max(most, end.length), 0);
    return matches.find(({ path: end }) => end.length === longest)?.row ?? null;
  };
}

/**
 * What of a log and some files did not match, and what of the log could not be understood.
 *
 * @param files paths of the sweeps that were graded
 * @returns none where all is well
 */
export function logFindings(log: DeploymentLog, files: readonly string[]): readonly Finding[] {
  const find = rowFinder(log);
  const rows = files.map(find);
  const used = new Set(rows);
  const without = files.filter((_, i) => rows[i] === null).map(baseName);
  const unused = log.rows.filter((row) => !used.has(row));
  const isAgain = (row: LogRow) => {
    const again = find(row[log.fileColumn] ?? "");
    return again !== null && again !== row && used.has(again);
  };
  const nameOf = (row: LogRow) => row[log.fileColumn] || "(no file named)";
  const again = unused.filter(isAgain).map(nameOf);
  const left = unused.filter((row) => !isAgain(row)).map(nameOf);
  const filesOfRows = grouped(rows, (row) => row);
  const shared = log.rows.flatMap((row) => {
    const count = filesOfRows.get(row)?.length ?? 0;
    return count > 1 ? [{ name: nameOf(row), files: count }] : [];
  });
  const undated = log.rows.map(statedDate).filter((date) => date !== "" && timeOf(date) === null);
  const { slips } = log;
  return [
    ...(without.length === 0 ? [] : [finding("caution", "log-row-missing", { names: without })]),
    ...(left.length === 0 ? [] : [finding("caution", "log-row-unmatched", { names: left })]),
    ...(again.length === 0 ? [] : [finding("caution", "log-row-repeated", { names: again })]),
    ...(shared.length === 0 ? [] : [finding("caution", "log-row-shared", { rows: shared })]),
    ...(slips.length === 0 ? [] : [finding("caution", "log-slip", { slips })]),
    ...(undated.length === 0 ? [] : [finding("caution", "log-date-unread", { dates: undated })]),
  ];
}
