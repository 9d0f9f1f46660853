import { jsonText } from "@feedpoint/answers/text/json";
import { showJson, showText } from "@feedpoint/answers/text/show";
import { Command } from "commander";
import { readWithLedger } from "../files.js";
import { withOptions } from "../options/declare.js";
import { OPTIONS, type RawOptions } from "../options/options.js";
import { outputFrom, readingFrom } from "../options/settings.js";

export function showCommand(): Command {
  const command = new Command("show")
    .description("Says how a file was understood: format, columns, units, range, what was assumed, and its first rows.")
    .argument("<file>", "sweep: Touchstone or delimited text (- is standard input, a.csv+b.csv two parts of one)");
  return withOptions(command, "show").action(runShow);
}

function runShow(file: string, raw: RawOptions<"show">): void {
  const { rows = OPTIONS.rows.fallback } = raw;
  const output = outputFrom(raw);
  const { sweeps, ledger } = readWithLedger(file, readingFrom(raw));
  const text =
    output.format === "json"
      ? jsonText(sweeps.map((sweep) => showJson(sweep, rows, ledger)))
      : sweeps.map((sweep) => showText(sweep, rows, ledger, output.width)).join("\n\n");
  process.stdout.write(`${text}\n`);
}
