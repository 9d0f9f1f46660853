import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { delimitedText, type Sweep, touchstoneText } from "@feedpoint/core";
import { Command } from "commander";
import { onlySweepIn, writeOutput } from "../files.js";
import { withOptions } from "../options/declare.js";
import type { OPTIONS, RawOptions } from "../options/options.js";
import { readingFrom } from "../options/settings.js";

type Target = (typeof OPTIONS.convertTo.choices)[number];

export function convertCommand(): Command {
  const command = new Command("convert")
    .description("Writes a sweep out clean, as Touchstone or CSV; reading it back gives exactly the same numbers.")
    .argument("<file>", "sweep: Touchstone or delimited text (- is standard input)");
  return withOptions(command, "convert").action(runConvert);
}

function runConvert(file: string, raw: RawOptions<"convert">): void {
  const sweep = onlySweepIn(file, { reading: readingFrom(raw) });
  const text = render(sweep, raw.to, file);
  writeOutput(raw.output, text, raw.force === true);
}

function render(sweep: Sweep, target: Target, file: string): string {
  if (target === "csv") return delimitedText(sweep);
  if (sweep.kind === "vector") return touchstoneText(sweep);
  throw new UsageError(`${file} knows only the size of the reflection; Touchstone needs its angle. Use --to csv.`);
}
