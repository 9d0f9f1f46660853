import type { AdviseResult } from "@feedpoint/core";
import { Command } from "commander";
import { advisedBy } from "../advising.js";
import { withOptions } from "../options/declare.js";
import type { RawOptions } from "../options/options.js";
import { type Settings, settingsFrom } from "../options/settings.js";
import { jsonText, ndjsonText } from "../present/json.js";
import { tryCsv, tryMarkdown, tryText } from "../present/try.js";
import { onlyDeploymentFrom } from "../read-deployments.js";
import { talkOf } from "../words/severity.js";

export function tryCommand(): Command {
  const command = new Command("try")
    .description(
      "Says what to try next: wire, line, transformer, coil, capacitor, stub or network, and what to measure.",
    )
    .argument(
      "<file...>",
      "sweep: Touchstone or delimited text (- is standard input), or a folder that is one deployment",
    );
  return withOptions(command, "try").action(runTry);
}

async function runTry(files: readonly string[], raw: RawOptions<"try">): Promise<void> {
  const settings = await settingsFrom(raw);
  const deployment = await onlyDeploymentFrom(files, settings, raw);
  const result = advisedBy(settings, deployment, raw);
  process.stdout.write(`${render(result, settings)}\n`);
  if (settings.format === "csv")
    process.stderr.write(talkOf(result.sweep.label, [...result.sweep.findings, ...result.findings]));
}

function render(result: AdviseResult, settings: Settings): string {
  switch (settings.format) {
    case "json":
      return jsonText([result]);
    case "ndjson":
      return ndjsonText([result]);
    case "csv":
      return tryCsv(result);
    case "markdown":
      return tryMarkdown(result);
    case "table":
      return tryText(result, settings);
  }
}
