import { shortCautions } from "@feedpoint/answers/text/cautions";
import { Command } from "commander";
import { writeOutput } from "../files.js";
import { withOptions } from "../options/declare.js";
import type { RawOptions } from "../options/options.js";
import { outputFrom } from "../options/settings.js";
import { STATION_FILE } from "../options/station-file.js";

/**
 * A starting point: nothing in it counts. What can be stated stands under `$examples`, which is not read, so that no figure is
 * taken for the user's own before it was looked at.
 */
const STARTING_POINT = {
  $comment:
    "What you state once and for all. Nothing here counts yet: copy what you know from $examples to this level, and put in your own figures. feedpoint schema station tells all keys.",
  $examples: {
    licence: { $comment: "feedpoint plans lists the plans and their classes", plan: "uk", class: "foundation" },
    bands: ["80m", "40m", "20m"],
    modes: { cw: {}, ssb: {}, data: {} },
    limits: {
      $comment: "SWR up to which you transmit without a tuner, with the radio's own, with a separate one",
      swr: 2,
      builtInTunerSwr: 3,
      wideRangeTunerSwr: 10,
    },
    radio: {
      $comment: "see the radio's manual; reduction: full power up to fromSwr, evenly less to toW at toSwr",
      powerW: { ssb: 100, data: 25 },
      tuner: "none",
      reduction: { fromSwr: 1.7, toSwr: 3, toW: 25 },
    },
    antenna: {
      $comment: "ratings as the maker states them, with the SWR up to which they hold",
      wireLengthM: 20,
      ratedPowerW: { ssb: 100, cw: 50, data: 25 },
      ratedUpToSwr: 2,
    },
    feedline: {
      $comment: "feedpoint feedlines lists the kinds; loss of your own measurement goes before the kind's",
      kind: "rg-58",
      lengthM: 10,
    },
    parts: {
      $comment: "what feedpoint try may build from; values in H and F, or usual for any that is sold",
      lines: [{ kind: "rg-58", lengthM: 20 }],
      transformers: [{ ratio: 9 }],
      coils: "usual",
      capacitors: "usual",
      manualTuner: true,
    },
    people: {
      $comment: "the least distance of anybody from the wire, and the share of the worst half hour that you transmit",
      distanceM: 3,
      onAir: 0.5,
    },
    analyser: { $comment: "30 to 40 dB are common for hand-held ones", directivityDb: 35 },
    criteria: {
      $comment: "shares of a band that a grade asks for, where you want others than feedpoint grade --criteria prints",
      B: { withoutTuner: 0.5, withBuiltInTuner: 0.9 },
    },
    wantedHz: { "40m": 7_100_000 },
  },
};

export function stationCommand(): Command {
  return new Command("station")
    .description("The station file: what you state once and for all about licence, radio, antenna and feedline.")
    .addCommand(
      withOptions(
        new Command("init")
          .description(`Writes a starting point to fill in (default: ${STATION_FILE} in this folder).`)
          .argument("[file]", "where to write it", STATION_FILE),
        "station init",
      ).action(runInit),
    );
}

function runInit(file: string, { force = false }: RawOptions<"station init">): void {
  if (!writeOutput(file, `${JSON.stringify(STARTING_POINT, null, 2)}\n`, force)) return;
  process.stderr.write(
    `feedpoint: wrote ${file}. Nothing in it counts until you change it: copy what you know out of $examples; check, diff, grade, trim and try read it.\n`,
  );
  process.stderr.write(`${shortCautions(outputFrom({}).width, { hasHighVoltage: true })}\n`);
}
