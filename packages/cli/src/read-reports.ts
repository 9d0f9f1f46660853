import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { heardBy } from "@feedpoint/answers/judged/hearing";
import {
  type DeploymentLog,
  type HeardOptions,
  type HeardResult,
  onAirOf,
  type ReadReports,
  readReports,
} from "@feedpoint/core";
import { LOG_FILE } from "@feedpoint/core/for-command";
import { reasonOf } from "./files.js";
import { isFolder } from "./find-files.js";

/** Names that a folder is searched for; a file that is named is read whatever it is called. */
const REPORT_NAMES = /\.(?:adi|adif|adx|csv|tsv|txt)$/i;

/** A file of reports, with what it holds. */
export interface ReportFile extends ReadReports {
  readonly file: string;
}

/** The reception reports of files and folders; a log beside them is none. @throws UsageError or ReadError */
export const readReportFiles = (paths: readonly string[], transmitter: string | undefined): readonly ReportFile[] =>
  paths
    .flatMap(filesIn)
    .filter((file) => basename(file) !== LOG_FILE)
    .map((file) => ({ file, ...readFile(file, transmitter) }));

const filesIn = (path: string): readonly string[] =>
  isFolder(path)
    ? readdirSync(path)
        .filter((name) => REPORT_NAMES.test(name))
        .sort()
        .map((name) => join(path, name))
    : [path];

function readFile(file: string, transmitter: string | undefined): ReadReports {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(file === "-" ? 0 : file);
  } catch (error) {
    throw new UsageError(`${file}: ${reasonOf(error)}.`);
  }
  return readReports(bytes, { fileName: file, ...(transmitter === undefined ? {} : { transmitter }) });
}

/** What was heard of the deployments of a log; null where no reports were named. @throws UsageError where there is no such log */
export function heardFor(paths: readonly string[] | undefined, log: DeploymentLog | null): HeardResult | null {
  if (paths === undefined) return null;
  const periods = log === null ? [] : onAirOf(log);
  if (periods.length === 0)
    throw new UsageError("--heard needs a log that says under up and down, or date, what was up when.");
  return heardIn(readReportFiles(paths, undefined), { periods });
}

/** What is asked of reports, as far as it was. */
type Asked = { readonly [Key in keyof HeardOptions]?: HeardOptions[Key] | undefined };

/** What the reports of files tell. @throws UsageError for what cannot be asked of them */
export function heardIn(files: readonly ReportFile[], { periods = [], ...asked }: Asked): HeardResult {
  const stated = Object.fromEntries(Object.entries(asked).filter(([, value]) => value !== undefined));
  const reports = files.flatMap((file) => file.reports);
  return heardBy(reports, { periods, ...stated }, " --transmitter names it.");
}
