import type { CheckResult, Sweep } from "@feedpoint/core";
import { drawnSweep } from "@feedpoint/core/for-command";
import { Command } from "commander";
import { checkedBy } from "../checking.js";
import { UsageError } from "../exit.js";
import { writeOutput } from "../files.js";
import { withOptions } from "../options/declare.js";
import { OPTIONS, type RawOptions } from "../options/options.js";
import { settingsFrom } from "../options/settings.js";
import type { ChartKind } from "../present/svg/picture.js";
import { onlyDeploymentFrom } from "../read-deployments.js";

export function chartCommand(): Command {
  const command = new Command("chart")
    .description("Draws one chart of a sweep as a picture: SVG, or PNG by the ending of the file's name.")
    .argument(
      "<file...>",
      "sweep: Touchstone or delimited text (- is standard input), or a folder that is one deployment",
    );
  return withOptions(command, "chart").action(runChart);
}

async function runChart(files: readonly string[], raw: RawOptions<"chart">): Promise<void> {
  const { what = OPTIONS.what.fallback, output, force = false } = raw;
  const ending =
    output === undefined || output === "-" ? "svg" : (/\.(svg|png)$/i.exec(output)?.[1]?.toLowerCase() ?? null);
  if (ending === null) throw new UsageError(`${output}: a picture ends in .svg or .png.`);
  const settings = await settingsFrom(raw);
  const deployment = await onlyDeploymentFrom(files, settings, raw);
  const svg = await draw(
    drawnSweep(deployment, settings.plan),
    checkedBy(settings, deployment),
    what,
    raw.note ?? null,
  );
  writeOutput(output, ending === "svg" ? svg : await png(svg), force);
}

async function draw(sweep: Sweep, result: CheckResult, what: ChartKind, note: string | null): Promise<string> {
  if (sweep.kind === "scalar" && what !== "swr" && what !== "return-loss")
    throw new UsageError(`This sweep knows only the size of the reflection; a ${what} chart needs its angle.`);
  if (what === "swr" && result.bands.length === 1 && result.bands[0]?.best === null)
    throw new UsageError(`${result.bands[0].band} was not swept.`);
  // Drawing is loaded where it is needed; the other commands start without it.
  const { picture } = await import("../present/svg/picture.js");
  return picture(sweep, result, what, note);
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
