import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { printable } from "@feedpoint/answers/text/escape";
import { heardCsv, heardMarkdown, heardText } from "@feedpoint/answers/text/heard";
import { jsonText, ndjsonText } from "@feedpoint/answers/text/json";
import { talkOf } from "@feedpoint/answers/words/severity";
import { type HeardResult, onAirOf } from "@feedpoint/core";
import { Command } from "commander";
import { writeOutput } from "../files.js";
import { withOptions } from "../options/declare.js";
import { findLogs, readLog } from "../options/log-file.js";
import type { RawOptions } from "../options/options.js";
import { outputFrom } from "../options/settings.js";
import { heardIn, type ReportFile, readReportFiles } from "../read-reports.js";

export function heardCommand(): Command {
  const command = new Command("heard")
    .description("Says from reception reports who heard which deployment, and which of two was heard better.")
    .argument("<reports...>", "reception reports: ADIF (ADI, ADX) or tables with named columns, or folders of them");
  return withOptions(command, "heard").action(runHeard);
}

async function runHeard(paths: readonly string[], raw: RawOptions<"heard">): Promise<void> {
  const { format, width } = outputFrom(raw);
  const [logFile] = findLogs(raw.log, paths);
  if (logFile === undefined)
    throw new UsageError(
      "There is no log of what was up when. Name one with --log: a table with the columns deployment, up and down.",
    );
  const periods = onAirOf(readLog(logFile));
  if (periods.length === 0)
    throw new UsageError(`${logFile}: no row says under up, or date, when a deployment went up.`);
  const files = readReportFiles(paths, raw.transmitter);
  const compare = raw.compare === undefined ? undefined : twoNames(raw.compare);
  sayLeftOut(files);
  const result = heardIn(files, {
    periods,
    compare,
    transmitter: raw.transmitter,
    locator: raw.locator,
    bands: raw.bands,
  });
  if (raw.output !== undefined) {
    // Drawing is loaded where it is needed.
    const { heardReport } = await import("@feedpoint/answers/html/heard-report");
    if (writeOutput(raw.output, heardReport(result, "command"), raw.force === true))
      process.stderr.write(`feedpoint: wrote ${printable(raw.output)}\n`);
  } else process.stdout.write(`${render(result, format, width)}\n`);
  if (format === "csv") process.stderr.write(talkOf(null, result.findings));
}

/** Said before anything is asked of the rest, which may be nothing. */
function sayLeftOut(files: readonly ReportFile[]): void {
  for (const { file, leftOut, reports } of files) {
    const [first] = leftOut;
    if (first !== undefined)
      process.stderr.write(
        `feedpoint: ${printable(file)}: ${reports.length} reports, ${leftOut.length} left out, the first at ${first.place} (${first.reason}).\n`,
      );
  }
}

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
