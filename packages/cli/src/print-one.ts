import { jsonText, ndjsonText } from "@feedpoint/answers/text/json";
import { talkOf } from "@feedpoint/answers/words/severity";
import type { Finding, SweepInfo } from "@feedpoint/core";
import type { Settings } from "./options/settings.js";

/** How the one result of a job is written in the formats that are not data. */
interface Forms<Result> {
  readonly csv: (result: Result) => string;
  readonly markdown: (result: Result) => string;
  readonly text: (result: Result, settings: Settings) => string;
}

/** Prints the one result of a job in the format that was asked for; what a table of numbers has no room for goes to stderr. */
export function printOne<Result extends { readonly sweep: SweepInfo; readonly findings: readonly Finding[] }>(
  result: Result,
  settings: Settings,
  forms: Forms<Result>,
): void {
  process.stdout.write(`${inFormat(result, settings, forms)}\n`);
  if (settings.format === "csv")
    process.stderr.write(talkOf(result.sweep.label, [...result.sweep.findings, ...result.findings]));
}

function inFormat<Result>(result: Result, settings: Settings, { csv, markdown, text }: Forms<Result>): string {
  switch (settings.format) {
    case "json":
      return jsonText([result]);
    case "ndjson":
      return ndjsonText([result]);
    case "csv":
      return csv(result);
    case "markdown":
      return markdown(result);
    case "table":
      return text(result, settings);
  }
}
