import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { checkedBy } from "@feedpoint/answers/judged/checking";
import type { ChartKind } from "@feedpoint/answers/svg/picture";
import { printable } from "@feedpoint/answers/text/escape";
import { type CheckResult, gradeSweep, type Sweep } from "@feedpoint/core";
import { drawnSweep } from "@feedpoint/core/for-command";
import { Command } from "commander";
import { writeOutput } from "../files.js";
import { withOptions } from "../options/declare.js";
import { OPTIONS, type RawOptions } from "../options/options.js";
import { type Settings, settingsFrom } from "../options/settings.js";
import { deploymentsFrom, onlyDeploymentFrom } from "../read-deployments.js";

export function chartCommand(): Command {
  const command = new Command("chart")
    .description("Draws one chart of a sweep as a picture: SVG, or PNG by the ending of the file's name.")
    .argument(
      "<file...>",
      "sweep: Touchstone or delimited text (- is standard input), or a folder that is one deployment; several for grid and curves",
    );
  return withOptions(command, "chart").action(runChart);
}

async function runChart(files: readonly string[], raw: RawOptions<"chart">): Promise<void> {
  const { what = OPTIONS.what.fallback, output, force = false } = raw;
  const ending =
    output === undefined || output === "-" ? "svg" : (/\.(svg|png)$/i.exec(output)?.[1]?.toLowerCase() ?? null);
  if (ending === null) throw new UsageError(`${output}: a picture ends in .svg or .png.`);
  const settings = await settingsFrom(raw);
  const svg =
    what === "grid" || what === "curves"
      ? await drawMany(files, raw, what, settings)
      : await drawOne(files, raw, what, settings);
  writeOutput(output, ending === "svg" ? svg : await png(svg), force);
}

/** The one deployment of files and folders. */
async function drawOne(
  files: readonly string[],
  raw: RawOptions<"chart">,
  what: ChartKind,
  settings: Settings,
): Promise<string> {
  const deployment = await onlyDeploymentFrom(files, settings, raw);
  return draw(drawnSweep(deployment, settings.plan), checkedBy(settings, deployment), what, raw.note ?? null);
}

/** All deployments of files and folders in one picture: band by band, or their curves on one band over each other. */
async function drawMany(
  files: readonly string[],
  raw: RawOptions<"chart">,
  what: "grid" | "curves",
  settings: Settings,
): Promise<string> {
  const { deployments, unreadable } = await deploymentsFrom(files, settings, raw);
  for (const { reason } of unreadable) process.stderr.write(`feedpoint: ${printable(reason)}\n`);
  if (deployments.length === 0) throw new UsageError(`There are no sweep files in ${files.join(", ")}.`);
  const { seasonCurvesPicture, seasonGridPicture } = await import("@feedpoint/answers/svg/season-pictures");
  const note = raw.note ?? null;
  if (what === "grid")
    return seasonGridPicture(
      deployments.map((each) => gradeSweep(each, settings)),
      settings.limits,
      note,
    );
  const [name, ...others] = settings.bands ?? [];
  const band = settings.plan.bands.find((each) => each.band === name);
  if (band === undefined || others.length > 0) throw new UsageError("Say on which one band: --bands 40m");
  const sweeps = deployments.map((each) => ({ name: each.label, sweep: drawnSweep(each, settings.plan) }));
  return seasonCurvesPicture(sweeps, band, settings.limits, note);
}

async function draw(sweep: Sweep, result: CheckResult, what: ChartKind, note: string | null): Promise<string> {
  if (sweep.kind === "scalar" && what !== "swr" && what !== "return-loss")
    throw new UsageError(`This sweep knows only the size of the reflection; a ${what} chart needs its angle.`);
  if (what === "swr" && result.bands.length === 1 && result.bands[0]?.best === null)
    throw new UsageError(`${result.bands[0].band} was not swept.`);
  // Drawing is loaded where it is needed; the other commands start without it.
  const { picture } = await import("@feedpoint/answers/svg/picture");
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
