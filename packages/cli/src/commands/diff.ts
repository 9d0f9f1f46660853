import { type DiffResult, type DiffVerdict, diff, type Sweep } from "@feedpoint/core";
import { Command, Option } from "commander";
import { EXIT, UsageError } from "../exit.js";
import { readForJudging } from "../files.js";
import {
  addJudgingOptions,
  addReadingOptions,
  addStationOptions,
  type RawOptions,
  type Settings,
  settingsFrom,
} from "../options.js";
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
  addReadingOptions(addStationOptions(addJudgingOptions(command))).addOption(
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

function onlySweep(file: string, settings: Settings): Sweep {
  const sweeps = readForJudging(file, settings.reading, settings.systemOhms);
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
