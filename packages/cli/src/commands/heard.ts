import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { printable } from "@feedpoint/answers/text/escape";
import { heardCsv, heardMarkdown, heardText } from "@feedpoint/answers/text/heard";
import { jsonText, ndjsonText } from "@feedpoint/answers/text/json";
import { talkOf } from "@feedpoint/answers/words/severity";
import { type HeardResult, heard, onAirOf, type ReadReports, readReports } from "@feedpoint/core";
import { LOG_FILE } from "@feedpoint/core/for-command";
import { Command } from "commander";
import { reasonOf, writeOutput } from "../files.js";
import { isFolder } from "../find-files.js";
import { withOptions } from "../options/declare.js";
import { findLogs, readLog } from "../options/log-file.js";
import type { RawOptions } from "../options/options.js";
import { outputFrom } from "../options/settings.js";

export function heardCommand(): Command {
  const command = new Command("heard")
    .description("Says from reception reports who heard which deployment, and which of two was heard better.")
    .argument("<reports...>", "reception reports: ADIF (ADI, ADX) or tables with named columns, or folders of them");
  return withOptions(command, "heard").action(runHeard);
}

async function runHeard(paths: readonly string[], raw: RawOptions<"heard">): Promise<void> {
  const { format, width } = outputFrom(raw);
  const [logFile] = findLogs(raw.log, paths);
  const files = paths.flatMap(reportFilesIn).filter((file) => basename(file) !== LOG_FILE);
  if (logFile === undefined)
    throw new UsageError(
      "There is no log of what was up when. Name one with --log: a table with the columns deployment, up and down.",
    );
  const periods = onAirOf(readLog(logFile));
  if (periods.length === 0)
    throw new UsageError(`${logFile}: no row says under up, or date, when a deployment went up.`);
  const read = files.map((file) => readFile(file, raw.transmitter));
  const compare = raw.compare === undefined ? undefined : twoNames(raw.compare);
  const result = heardOf(
    read.flatMap(({ reports }) => reports),
    { periods, compare, transmitter: raw.transmitter, locator: raw.locator, bands: raw.bands },
  );
  if (raw.output !== undefined) {
    // Drawing is loaded where it is needed.
    const { heardReport } = await import("@feedpoint/answers/html/heard-report");
    if (writeOutput(raw.output, heardReport(result, "command"), raw.force === true))
      process.stderr.write(`feedpoint: wrote ${printable(raw.output)}\n`);
  } else process.stdout.write(`${render(result, format, width)}\n`);
  if (format === "csv") process.stderr.write(talkOf(null, result.findings));
  for (const [i, { leftOut, reports }] of read.entries()) {
    if (leftOut.length === 0) continue;
    const [first] = leftOut;
    process.stderr.write(
      `feedpoint: ${printable(files[i] ?? "")}: ${reports.length} reports, ${leftOut.length} left out, the first at ${first?.place} (${first?.reason}).\n`,
    );
  }
}

/** Names that a folder is searched for; a file that is named is read whatever it is called. */
const REPORT_NAMES = /\.(?:adi|adif|adx|csv|tsv|txt)$/i;

const reportFilesIn = (path: string): readonly string[] =>
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

type Asked = {
  readonly [Key in keyof Parameters<typeof heard>[1]]: Parameters<typeof heard>[1][Key] | undefined;
};

function heardOf(reports: ReadReports["reports"], { periods = [], ...asked }: Asked): HeardResult {
  const stated = Object.fromEntries(Object.entries(asked).filter(([, value]) => value !== undefined));
  try {
    return heard(reports, { periods, ...stated });
  } catch (error) {
    if (error instanceof RangeError)
      throw new UsageError(`${sentence(error.message)} --transmitter says which is yours.`);
    throw error;
  }
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

function twoNames(names: readonly string[]): readonly [string, string] {
  const [before, after, ...more] = names;
  if (before === undefined || after === undefined || more.length > 0)
    throw new UsageError("--compare takes the names of two deployments, such as sloper,vee.");
  return [before, after];
}

function render(result: HeardResult, format: ReturnType<typeof outputFrom>["format"], width: number): string {
  switch (format) {
    case "json":
      return jsonText([result]);
    case "ndjson":
      return ndjsonText([result]);
    case "csv":
      return heardCsv(result);
    case "markdown":
      return heardMarkdown(result);
    case "table":
      return heardText(result, width);
  }
}
