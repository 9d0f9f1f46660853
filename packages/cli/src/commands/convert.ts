import { delimitedText, type Sweep, touchstoneText } from "@feedpoint/core";
import { Command, Option } from "commander";
import { UsageError } from "../exit.js";
import { onlySweepIn, writeOutput } from "../files.js";
import { addReadingOptions } from "../options/declare.js";
import type { RawOptions } from "../options/raw-options.js";
import { readingFrom } from "../options/settings.js";

type Target = "touchstone" | "csv";

export function convertCommand(): Command {
  const command = new Command("convert")
    .description("Writes a sweep out clean, as Touchstone or CSV; reading it back gives exactly the same numbers.")
    .argument("<file>", "sweep: Touchstone or delimited text (- is standard input)")
    .addOption(new Option("--to <format>", "what to write").choices(["touchstone", "csv"]).makeOptionMandatory())
    .option("-o, --output <file>", "where to write it (default: standard output)")
    .option("--force", "write over a file that is there");
  return addReadingOptions(command).action(runConvert);
}

function runConvert(file: string, raw: RawOptions & { to: Target; output?: string; force?: boolean }): void {
  const sweep = onlySweepIn(file, readingFrom(raw), null);
  const text = render(sweep, raw.to, file);
  if (raw.to === "csv" && sweep.referenceOhms !== 50) {
    process.stderr.write(
      `feedpoint: CSV states no reference impedance; read it back with --reference-ohms ${sweep.referenceOhms}.\n`,
    );
  }
  writeOutput(raw.output, text, raw.force === true);
}

function render(sweep: Sweep, target: Target, file: string): string {
  if (target === "csv") return delimitedText(sweep);
  if (sweep.kind === "vector") return touchstoneText(sweep);
  throw new UsageError(`${file} knows only the size of the reflection; Touchstone needs its angle. Use --to csv.`);
}
