import { DEFAULT_LIMITS, MODE_NAMES, planIds } from "@feedpoint/core";
import { type Command, Option } from "commander";
import {
  columnsArgument,
  feedlineArgument,
  listOf,
  modesArgument,
  placesArgument,
  positiveArgument,
  swrArgument,
  wholeNumberArgument,
} from "./arguments.js";
import { FORMATS, type Format } from "./raw-options.js";

/** Adds everything that the commands share which judge sweeps. */
export function addJudgingOptions(command: Command): Command {
  return addSettingOptions(addFormatOptions(command, FORMATS));
}

/** The same without the choice of output formats. */
export function addSettingOptions(command: Command): Command {
  return addReadingOptions(addStationOptions(addPlanOptions(command)));
}

/** Adds charts in the terminal. */
export function addChartOptions(command: Command): Command {
  return command
    .option("--chart", "draw the SWR over each band")
    .option("--ascii", "draw with plain ASCII, as is done where the locale is not UTF-8");
}

/** Adds what is asked over many sweeps. */
export function addSeasonOptions(command: Command): Command {
  return command
    .option("--sort <key>", "order of the rows: name, date, grade, or a band such as 40m (default: as found)")
    .option("--best <band>", "rank all deployments for one band")
    .option("--log <file>", "deployment log (default: deployments.csv beside the sweeps, if there)")
    .option("--no-log", "leave the deployment log alone")
    .option("--group-by <column>", "compare groups by a column of the log, such as counterpoise")
    .option("--over-time [column]", "follow the dips by date; a column of the log tells deployments apart");
}

/** Adds dial frequencies to be judged. */
export function addDialOptions(command: Command): Command {
  return command.option(
    "--at <list>",
    "dial frequencies in MHz, or a common activity: 14.074,7.030,ft8",
    placesArgument,
  );
}

/** Adds where to write. */
export function addOutputOptions(command: Command, what: string): Command {
  return command
    .option("-o, --output <file>", `where to write ${what}`)
    .option("--force", "write over a file that is there");
}

/** Adds the choice of output formats. */
export function addFormatOptions(command: Command, formats: readonly Format[]): Command {
  return command
    .addOption(new Option("--format <format>", "how to print the result (default: table)").choices(formats))
    .option("--json", "short for --format json");
}

function addPlanOptions(command: Command): Command {
  return command
    .option("--plan <name>", `band plan: ${planIds().join(", ")}, or a file such as ./mine.json`)
    .option("--class <class>", "licence class, where the plan knows classes")
    .option("--bands <list>", "bands to judge, such as 40m,20m (default: all of the plan)", listOf)
    .option("--modes <list>", `judge only where these may be sent: ${MODE_NAMES.join(", ")}`, modesArgument)
    .option(
      "--limit <swr>",
      `SWR up to which you transmit without a tuner (default ${DEFAULT_LIMITS.swr})`,
      swrArgument,
    )
    .option(
      "--built-in-tuner <swr>",
      `SWR that a built-in tuner matches (default ${DEFAULT_LIMITS.builtInTunerSwr})`,
      swrArgument,
    )
    .option(
      "--wide-range-tuner <swr>",
      `SWR that a wide-range tuner matches (default ${DEFAULT_LIMITS.wideRangeTunerSwr})`,
      swrArgument,
    );
}

function addStationOptions(command: Command): Command {
  return command
    .option("--station <file>", "what you state once and for all (default: station.json in this folder, if there)")
    .option("--no-station", "leave station.json alone")
    .option("--system-ohms <ohms>", "judge the SWR against this impedance instead of the file's own", positiveArgument)
    .option(
      "--directivity <dB>",
      "corrected directivity of the analyser (30 to 40 for hand-held ones)",
      positiveArgument,
    );
}

/** Adds the line between the place of measurement and the antenna. */
export function addFeedlineOptions(command: Command): Command {
  return command
    .option(
      "--feedline <kind>",
      "kind of line between analyser and antenna (feedpoint feedlines lists them)",
      feedlineArgument,
    )
    .option("--no-feedline", "the sweep was taken at the antenna: leave the station file's line alone")
    .option("--feedline-length <m>", "its length in metres", positiveArgument);
}

/** Adds what limits power. */
export function addPowerOptions(command: Command): Command {
  return command
    .option("--power <W>", "greatest output of the radio, W PEP", positiveArgument)
    .addOption(
      new Option("--tuner <which>", "what stands between radio and feedline").choices([
        "none",
        "built-in",
        "wide-range",
      ]),
    );
}

/** Adds the options that say how a file is to be read. */
export function addReadingOptions(command: Command): Command {
  return command
    .option("--port <number>", "port of a file with several (default 1)", wholeNumberArgument)
    .option("--reference-ohms <ohms>", "reference impedance of a file that states none (default 50)", positiveArgument)
    .addOption(
      new Option("--delimiter <name>", "what splits the columns").choices(["comma", "semicolon", "tab", "space"]),
    )
    .addOption(new Option("--decimal <mark>", "decimal mark").choices(["point", "comma"]))
    .addOption(new Option("--unit <unit>", "unit of frequency").choices(["Hz", "kHz", "MHz", "GHz"]))
    .option(
      "--columns <list>",
      "what the columns hold, such as frequency:MHz,r,x or frequency:Hz,skip,swr",
      columnsArgument,
    )
    .option("--signed-reactance", "the reactance has its sign although it is nowhere negative");
}
