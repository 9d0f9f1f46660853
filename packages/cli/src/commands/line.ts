import { type FeedlineKind, feedlineKindById, type LineResult, measureLine } from "@feedpoint/core";
import { Command, InvalidArgumentError } from "commander";
import { UsageError } from "../exit.js";
import { onlySweepIn } from "../files.js";
import { feedlineArgument, positiveArgument } from "../options/arguments.js";
import { addFormatOptions, addReadingOptions } from "../options/declare.js";
import type { RawOptions } from "../options/raw-options.js";
import { outputFrom, readingFrom } from "../options/settings.js";
import { jsonText } from "../present/json.js";
import { lineText } from "../present/line.js";

interface RawLineOptions extends RawOptions {
  readonly end: number;
  readonly kind?: string;
  readonly length?: number;
  readonly lineOhms?: number;
}

export function lineCommand(): Command {
  const command = new Command("line")
    .description(
      "Measures a feedline by a sweep of it with a known far end: its length, its loss, and whether it is still good.",
    )
    .argument("<file>", "sweep of the line alone, its far end open, shorted or on a resistor")
    .requiredOption("--end <what>", "what was at the far end: open, short, or ohms", endArgument)
    .option("--kind <kind>", "kind of line, to compare with (feedpoint feedlines lists them)", feedlineArgument)
    .option("--length <m>", "its length, where you know it: then the velocity factor is measured", positiveArgument)
    .option(
      "--line-ohms <ohms>",
      "its own impedance (default: the kind's, or the sweep's reference)",
      positiveArgument,
    );
  return addFormatOptions(addReadingOptions(command), ["table", "json"]).action(runLine);
}

function endArgument(text: string): number {
  if (text === "open") return Number.POSITIVE_INFINITY;
  if (text === "short") return 0;
  const ohms = Number(text);
  if (!(ohms >= 0 && Number.isFinite(ohms))) throw new InvalidArgumentError("It is open, short, or a number of ohms.");
  return ohms;
}

function runLine(file: string, raw: RawLineOptions): void {
  const { format, width } = outputFrom(raw);
  const sweep = onlySweepIn(file, readingFrom(raw), null);
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
