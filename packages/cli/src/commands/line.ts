import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { jsonText } from "@feedpoint/answers/text/json";
import { lineText } from "@feedpoint/answers/text/line";
import { type FeedlineKind, feedlineKindById, type LineResult, measureLine } from "@feedpoint/core";
import { Command } from "commander";
import { onlySweepIn } from "../files.js";
import { withOptions } from "../options/declare.js";
import type { RawOptions } from "../options/options.js";
import { outputFrom, readingFrom } from "../options/settings.js";

export function lineCommand(): Command {
  const command = new Command("line")
    .description(
      "Measures a feedline by a sweep of it with a known far end: its length, its loss, and whether it is still good.",
    )
    .argument("<file>", "sweep of the line alone, its far end open, shorted or on a resistor");
  return withOptions(command, "line").action(runLine);
}

function runLine(file: string, raw: RawOptions<"line">): void {
  const { format, width } = outputFrom(raw);
  const sweep = onlySweepIn(file, { reading: readingFrom(raw) });
  const kind: FeedlineKind | null = raw.kind === undefined ? null : feedlineKindById(raw.kind);
  let result: LineResult;
  try {
    result = measureLine(sweep, {
      endOhms: raw.end,
      kind,
      ...(raw.length === undefined ? {} : { lengthM: raw.length }),
      ...(raw.lineOhms === undefined ? {} : { characteristicOhms: raw.lineOhms }),
    });
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(`${file}: ${error.message}.`);
    throw error;
  }
  process.stdout.write(`${format === "json" ? jsonText([result]) : lineText(result, kind, width)}\n`);
}
