import { type CheckResult, checkJudged, type Judgement, judge } from "@feedpoint/core";
import { Command, Option } from "commander";
import { UsageError } from "../exit.js";
import { onlySweepIn, writeOutput } from "../files.js";
import { addOutputOptions, addSettingOptions } from "../options/declare.js";
import type { RawOptions } from "../options/raw-options.js";
import { settingsFrom } from "../options/settings.js";
import type { ChartKind } from "../present/svg/picture.js";

const KINDS: readonly ChartKind[] = ["swr", "smith", "return-loss", "resistance", "reactance"];

interface RawChartOptions extends RawOptions {
  readonly what: ChartKind;
  readonly output?: string;
  readonly force?: boolean;
}

export function chartCommand(): Command {
  const command = new Command("chart")
    .description("Draws one chart of a sweep as a picture: SVG, or PNG by the ending of the file's name.")
    .argument("<file>", "sweep: Touchstone or delimited text (- is standard input)")
    .addOption(
      new Option("--what <chart>", "what to draw; swr of a single --bands is that band").choices(KINDS).default("swr"),
    );
  addOutputOptions(command, "the picture: .svg or .png (default: SVG to standard output)");
  return addSettingOptions(command).action(runChart);
}

async function runChart(file: string, raw: RawChartOptions): Promise<void> {
  const { what, output, force = false } = raw;
  const ending =
    output === undefined || output === "-" ? "svg" : (/\.(svg|png)$/i.exec(output)?.[1]?.toLowerCase() ?? null);
  if (ending === null) throw new UsageError(`${output}: a picture ends in .svg or .png.`);
  const settings = await settingsFrom(raw);
  const judgement = judge(onlySweepIn(file, settings.reading, settings.systemOhms), settings.limits);
  const svg = await draw(judgement, checkJudged(judgement, settings), what);
  writeOutput(output, ending === "svg" ? svg : await png(svg), force);
}

async function draw(judgement: Judgement, result: CheckResult, what: ChartKind): Promise<string> {
  if (judgement.curve.sweep.kind === "scalar" && what !== "swr" && what !== "return-loss")
    throw new UsageError(`This sweep knows only the size of the reflection; a ${what} chart needs its angle.`);
  if (what === "swr" && result.bands.length === 1 && result.bands[0]?.best === null)
    throw new UsageError(`${result.bands[0].band} was not swept.`);
  // Drawing is loaded where it is needed; the other commands start without it.
  const { picture } = await import("../present/svg/picture.js");
  return picture(judgement, result, what);
}

/** Pixels for a unit of the picture. */
const PNG_SCALE = 2;

/** Turns SVG into PNG by a package with binaries of its own, which may be missing. */
async function png(svg: string): Promise<Uint8Array> {
  let Resvg: typeof import("@resvg/resvg-js")["Resvg"];
  try {
    ({ Resvg } = await import("@resvg/resvg-js"));
  } catch {
    throw new UsageError(
      "PNG needs the package @resvg/resvg-js, which is not installed: npm install @resvg/resvg-js where feedpoint is installed, or write an .svg file.",
    );
  }
  return new Resvg(svg, { fitTo: { mode: "zoom", value: PNG_SCALE }, font: { defaultFontFamily: "sans-serif" } })
    .render()
    .asPng();
}
