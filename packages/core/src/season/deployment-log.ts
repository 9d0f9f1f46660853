import Papa from "papaparse";
import { type Finding, finding } from "../finding.js";
import type { SweepGrade } from "../grade.js";
import { ReadError } from "../read-error.js";
import { sourceText } from "../reading/text.js";

/** A row of a deployment log: what the operator wrote under each column. */
export type LogRow = Readonly<Record<string, string>>;

/** A table kept beside the sweeps: a row for each, with whatever columns the operator likes. */
export interface DeploymentLog {
  /** As the file calls them, in its order; always with one that names the sweep's file */
  readonly columns: readonly string[];
  readonly fileColumn: string;
  readonly rows: readonly LogRow[];
}

/** What a log's file is called where none is named. */
export const LOG_FILE = "deployments.csv";

const FILE_COLUMNS = ["file", "sweep", "filename", "file name"];
const DELIMITERS = [",", ";", "\t"];

/**
 * Reads a deployment log: delimited text (comma, semicolon or tab, whichever its first line holds most) whose first line names
 * the columns, one of which must be `file`.
 *
 * @throws ReadError where it is no text, or has no column of files
 */
export function readDeploymentLog(bytes: Uint8Array, fileName: string): DeploymentLog {
  const source = sourceText(bytes, fileName);
  const text = source.decode(0, source.bytes.length);
  const firstLine = /^[^\r\n]*/.exec(text)?.[0] ?? "";
  const count = (delimiter: string) => firstLine.split(delimiter).length;
  const delimiter = DELIMITERS.reduce((best, next) => (count(next) > count(best) ? next : best));
  const { data } = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: "greedy" });
  const [header = [], ...lines] = data.map((cells) => cells.map((cell) => cell.trim()));
  const fileColumn = header.find((name) => FILE_COLUMNS.includes(name.toLowerCase()));
  if (fileColumn === undefined) {
    throw new ReadError({
      code: "no-data",
      file: fileName,
      line: 1,
      found: header.length === 0 ? "no header" : `the columns ${header.join(", ")}`,
      expected: 'a first line that names the columns, one of them "file"',
      remedy: "feedpoint log init writes a log to fill in.",
    });
  }
  const columns = header.filter((name, i) => name !== "" && header.indexOf(name) === i);
  return {
    columns,
    fileColumn,
    rows: lines.map((cells) => Object.fromEntries(columns.map((name) => [name, cells[header.indexOf(name)] ?? ""]))),
  };
}

/** The last part of a path, whichever way its slashes lean. */
const baseName = (path: string) => path.replace(/^.*[\\/]/, "");

/**
 * Finds the row of a log that speaks of a file: the one whose file name, with as many folders as it states, stands at the end
 * of the file's path.
 */
export function rowFinder({ fileColumn, rows }: DeploymentLog): (path: string) => LogRow | null {
  const byName = new Map<string, LogRow[]>();
  for (const row of rows) {
    const name = baseName(row[fileColumn] ?? "");
    byName.set(name, [...(byName.get(name) ?? []), row]);
  }
  return (path) => {
    const whole = `/${path.replaceAll("\\", "/")}`;
    return byName.get(baseName(whole))?.find((row) => whole.endsWith(`/${statedPath(row[fileColumn] ?? "")}`)) ?? null;
  };
}

const statedPath = (path: string) => path.replaceAll("\\", "/").replace(/^(\.\/)+/, "");

/** What of a log and some files did not match. */
export function logFindings(log: DeploymentLog, files: readonly string[]): readonly Finding[] {
  const find = rowFinder(log);
  const rows = files.map(find);
  const used = new Set(rows);
  const without = files.filter((_, i) => rows[i] === null).map(baseName);
  const left = log.rows.filter((row) => !used.has(row)).map((row) => row[log.fileColumn] || "(no file named)");
  return [
    ...(without.length === 0
      ? []
      : [finding("caution", "log-row-missing", `The log has no row for ${listed(without)}.`)]),
    ...(left.length === 0
      ? []
      : [finding("caution", "log-row-unmatched", `Rows of the log that name no sweep graded here: ${listed(left)}.`)]),
  ];
}

const MOST_NAMED = 5;

const listed = (names: readonly string[]) =>
  names.length > MOST_NAMED
    ? `${names.slice(0, MOST_NAMED).join(", ")} and ${names.length - MOST_NAMED} more`
    : names.join(", ");

/** A date or date and time in ISO 8601, year first. */
const ISO_DATE = /^(\d{4})-(\d\d)-(\d\d)([T ]\d\d:\d\d(:\d\d)?)?$/;

/** When a sweep was taken: as the log says under `date`, or else as its file does; null where neither does. */
export function dateOf({ sweep, log }: SweepGrade): string | null {
  const stated = Object.entries(log ?? {}).find(([column]) => column.toLowerCase() === "date")?.[1] ?? "";
  return ISO_DATE.test(stated) ? stated : sweep.takenAt;
}
