import { Command } from "commander";
import { writeOutput } from "../files.js";
import { withOptions } from "../options/declare.js";
import type { RawOptions } from "../options/options.js";
import { outputFrom } from "../options/settings.js";
import { STATION_FILE } from "../options/station-file.js";
import { shortCautions } from "../present/cautions.js";

/**
 * A starting point: everything that can be stated, with usual values, each part with a comment. JSON knows no comments of its
 * own, so they stand under "$comment", as JSON Schema has it.
 */
const STARTING_POINT = {
  $comment:
    "What you state once and for all. Change it to what you have, and delete what you do not know. feedpoint schema station tells all keys.",
  licence: { $comment: "feedpoint plans lists the plans and their classes", plan: "itu-r1" },
  bands: ["80m", "40m", "20m"],
  modes: {
    cw: {},
    ssb: {},
    data: { dutyFactor: 1 },
  },
  limits: {
    $comment: "SWR up to which you transmit without a tuner, with the radio's own, with a separate one",
    swr: 2,
    builtInTunerSwr: 3,
    wideRangeTunerSwr: 10,
  },
  radio: {
    $comment: "reduction: full power up to fromSwr, evenly less to toW at toSwr; see the radio's manual",
    powerW: 100,
    tuner: "none",
    reduction: { fromSwr: 1.7, toSwr: 3, toW: 25 },
  },
  antenna: {
    $comment: "ratings as the maker states them; voice 100 %, Morse 50 %, data 25 % is a common pattern",
    wireLengthM: 20,
    ratedPowerW: { ssb: 100, cw: 50, data: 25 },
  },
  feedline: {
    $comment: "feedpoint feedlines lists the kinds; loss of your own measurement goes before the kind's",
    kind: "rg-58",
    lengthM: 10,
  },
  analyser: { $comment: "30 to 40 dB are common for hand-held ones", directivityDb: 35 },
  criteria: {
    $comment: "shares of a band that a grade asks for, where you want others than feedpoint grade --criteria prints",
    B: { withoutTuner: 0.5, withBuiltInTuner: 0.9 },
  },
  wantedHz: { "40m": 7_100_000 },
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
  process.stderr.write(`feedpoint: wrote ${file}. Change it to what you have; check, diff, grade and trim read it.\n`);
  process.stderr.write(`${shortCautions(outputFrom({}).width, { hasHighVoltage: true })}\n`);
}
