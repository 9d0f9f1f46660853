import { bytesOf, type FileContent } from "../../input/file-content.js";
import { sourceText } from "../text/text.js";
import { isAdif } from "./adif.js";
import { reportsFromAdif } from "./adif-reports.js";
import type { ReadReports } from "./report.js";
import { reportsFromTable } from "./report-table.js";

/** What the user says about a file of reports. */
export interface ReadReportsOptions {
  /** The file's name, for messages */
  readonly fileName?: string;
  /** The own call sign, where the file does not name the station that was heard */
  readonly transmitter?: string;
}

/**
 * Reads reception reports: an ADIF log (ADI or ADX), or a table whose columns are named. Times are taken as UTC.
 *
 * @param bytes the file's bytes, or its text
 * @throws ReadError for what is neither
 * @throws TypeError for bytes that are none
 * @example
 * ```ts
 * import { readReports } from "@feedpoint/core";
 *
 * const { reports } = readReports("time,tx,rx,band,snr\n2026-05-02 14:22,Q0AAA,Q0BBB,40m,-21\n");
 * reports[0]?.snrDb; // → -21
 * ```
 */
export function readReports(
  bytes: FileContent,
  { fileName = "input", transmitter }: ReadReportsOptions = {},
): ReadReports {
  const source = sourceText(bytesOf(bytes, "bytes"), fileName);
  const text = source.decode(0, source.bytes.length);
  return isAdif(text) ? reportsFromAdif(text, transmitter) : reportsFromTable(text, fileName, transmitter);
}
