import { type DiffResult, type DiffVerdict, diff } from "@feedpoint/core";
import { Command, Option } from "commander";
import { EXIT } from "../exit.js";
import { onlySweepIn } from "../files.js";
import { addJudgingOptions } from "../options/declare.js";
import type { RawOptions } from "../options/raw-options.js";
import { type Settings, settingsFrom } from "../options/settings.js";
import { diffCsv, diffMarkdown, diffText } from "../present/diff.js";
import { jsonText, ndjsonText } from "../present/json.js";

type Requirement = "no-worse" | "improved";

const MEETS: Readonly<Record<Requirement, readonly DiffVerdict[]>> = {
  "no-worse": ["improved", "unchanged"],
  improved: ["improved"],
};

export function diffCommand(): Command {
  const command = new Command("diff")
    .description("Says what a change did: better, worse or no difference on each band, and the likely cause.")
    .argument("<before>", "sweep before the change")
    .argument("<after>", "sweep after the change");
  addJudgingOptions(command).addOption(
    new Option("--require <verdict>", "exit with 1 unless every band compared meets this").choices([
      "no-worse",
      "improved",
    ]),
  );
  return command.action(runDiff);
}

async function runDiff(before: string, after: string, raw: RawOptions & { require?: Requirement }): Promise<void> {
  const settings = await settingsFrom(raw);
  const read = (file: string) => onlySweepIn(file, settings.reading, settings.systemOhms);
  const result = diff(read(before), read(after), settings);
  process.stdout.write(`${render(result, settings)}\n`);
  if (result.bands.length === 0) {
    process.exitCode = EXIT.input;
    return;
  }
  if (raw.require === undefined) return;
  const accepted = MEETS[raw.require];
  const missed = result.bands.filter(({ verdict }) => !accepted.includes(verdict));
  if (missed.length === 0) return;
  process.stderr.write(
    `feedpoint: required ${raw.require}; not so: ${missed.map(({ band, verdict }) => `${band} ${verdict}`).join(", ")}\n`,
  );
  process.exitCode = EXIT.required;
}

function render(result: DiffResult, settings: Settings): string {
  switch (settings.format) {
    case "json":
      return jsonText([result]);
    case "ndjson":
      return ndjsonText([result]);
    case "csv":
      return diffCsv(result);
    case "markdown":
      return diffMarkdown(result);
    case "table":
      return diffText(result, settings);
  }
}
