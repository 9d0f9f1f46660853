import { type DiffResult, type DiffVerdict, diff, type Sweep } from "@feedpoint/core";
import { Command, Option } from "commander";
import { EXIT, UsageError } from "../exit.js";
import { readFile } from "../files.js";
import { addJudgingOptions, addReadingOptions, type RawOptions, type Settings, settingsFrom } from "../options.js";
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
  addReadingOptions(addJudgingOptions(command)).addOption(
    new Option("--require <verdict>", "exit with 1 unless every band compared meets this").choices([
      "no-worse",
      "improved",
    ]),
  );
  return command.action(runDiff);
}

async function runDiff(before: string, after: string, raw: RawOptions & { require?: Requirement }): Promise<void> {
  const settings = await settingsFrom(raw);
  const result = diff(onlySweep(before, settings), onlySweep(after, settings), settings);
  process.stdout.write(`${render(result, settings)}\n`);
  if (raw.require === undefined) return;
  const accepted = MEETS[raw.require];
  const holds = result.bands.length > 0 && result.bands.every(({ verdict }) => accepted.includes(verdict));
  if (!holds) process.exitCode = EXIT.required;
}

function onlySweep(file: string, settings: Settings): Sweep {
  const sweeps = readFile(file, settings.reading);
  const [sweep] = sweeps;
  if (sweep === undefined || sweeps.length > 1) {
    throw new UsageError(
      `${file} holds ${sweeps.length} sweeps of the same range; put the one to compare into a file of its own.`,
    );
  }
  return sweep;
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
