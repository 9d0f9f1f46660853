import { bandName } from "@feedpoint/answers/asked/find-plan";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { trimCsv, trimMarkdown, trimText } from "@feedpoint/answers/text/trim";
import { trim } from "@feedpoint/core";
import { Command } from "commander";
import { EXIT } from "../exit.js";
import { withOptions } from "../options/declare.js";
import type { RawOptions } from "../options/options.js";
import { type Settings, settingsFrom } from "../options/settings.js";
import { printOne } from "../print-one.js";
import { onlyDeploymentFrom } from "../read-deployments.js";

type RawTrimOptions = RawOptions<"trim">;

export function trimCommand(): Command {
  const command = new Command("trim")
    .description("Says how much to lengthen or shorten a wire for a band, and what that should do to all bands.")
    .argument(
      "<file...>",
      "sweep: Touchstone or delimited text (- is standard input), or a folder that is one deployment",
    );
  return withOptions(command, "trim").action(runTrim);
}

async function runTrim(files: readonly string[], raw: RawTrimOptions): Promise<void> {
  const settings = await settingsFrom(raw);
  const band = wantedBand(raw, settings);
  const wantedHz = raw.to ?? settings.station.wantedHz?.[band];
  const { wireLengthM, fixed } = settings.equipment.antenna ?? {};
  const deployment = await onlyDeploymentFrom(files, settings, raw);
  const result = trim(deployment, {
    ...settings,
    isAtAntenna: raw.feedline === false,
    // A wire is trimmed for one band, and what that does to the others matters.
    ...(raw.bands === undefined ? { bands: settings.plan.bands.map((each) => each.band) } : {}),
    band,
    ...(wantedHz === undefined ? {} : { wantedHz }),
    ...(wireLengthM === undefined ? {} : { wireLengthM }),
    ...(fixed === undefined ? {} : { fixed }),
  });
  printOne(result, settings, { csv: trimCsv, markdown: trimMarkdown, text: trimText });
  if (result.dip === null) process.exitCode = EXIT.input;
}

/** The band that was named, or the one that the wanted frequency lies in. */
function wantedBand({ band, to }: RawTrimOptions, { plan, station }: Settings): string {
  if (band !== undefined) return bandName(band, plan);
  if (to !== undefined) {
    const found = plan.bands.find(({ lowHz, highHz }) => to >= lowHz && to <= highHz);
    if (found !== undefined) return found.band;
    throw new UsageError(`${to / 1e6} MHz lies in no band of ${plan.id}. Name the band to judge with --band.`);
  }
  const [only, ...others] = Object.keys(station.wantedHz ?? {});
  if (only !== undefined && others.length === 0) return bandName(only, plan);
  throw new UsageError("Say for which band: --band 40m, or where the dip is wanted: --to 7.1");
}
