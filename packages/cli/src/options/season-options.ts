import { listOf } from "@feedpoint/answers/asked/arguments";
import { wishesArgument } from "@feedpoint/answers/asked/wishes";
import type { CommandName, OptionRecord } from "./option.js";

const OF_SEASONS = ["grade", "report"] as const satisfies readonly CommandName[];

/** What is asked over many sweeps, in the order of the help. */
export const SEASON_OPTIONS = {
  sort: {
    name: "sort",
    flags: "--sort <key>",
    help: "order of the rows: name, date, grade, or a band such as 40m (default: as found)",
    of: OF_SEASONS,
  },
  best: { name: "best", flags: "--best <band>", help: "rank all deployments for one band", of: OF_SEASONS },
  log: {
    name: "log",
    flags: "--log <file>",
    help: "deployment log (default: deployments.csv beside the sweeps, if there)",
    of: OF_SEASONS,
    negated: "leave the deployment log alone",
  },
  groupBy: {
    name: "groupBy",
    flags: "--group-by <column>",
    help: "compare groups by a column of the log, such as counterpoise",
    of: OF_SEASONS,
  },
  overTime: {
    name: "overTime",
    flags: "--over-time [column]",
    help: "follow dips and loss by date; a column of the log tells deployments apart",
    of: OF_SEASONS,
  },
  against: {
    name: "against",
    flags: "--against <sweep>",
    help: "with --over-time: the sweep that loss is held against, by its name in the table (default: the first one)",
    of: OF_SEASONS,
  },
  events: {
    name: "events",
    flags: "--events <column>",
    help: "with --over-time: the column of the log that says what happened on a date (default: event, if there)",
    of: OF_SEASONS,
  },
  heard: {
    name: "heard",
    flags: "--heard <paths>",
    help: "reception reports, files or folders with commas between: SWR and the air side by side, by the log's up and down",
    of: OF_SEASONS,
    parse: listOf,
  },
  factors: {
    name: "factors",
    flags: "--factors <list>",
    help: "columns of the log, such as weather,height,counterpoise: what each does with the others held equal",
    of: OF_SEASONS,
    parse: listOf,
  },
  for: {
    name: "for",
    flags: "--for <list>",
    help: 'rank all deployments for what you want tonight, such as "40m ft8,20m ssb"',
    of: OF_SEASONS,
    parse: wishesArgument,
  },
} as const satisfies Readonly<Record<string, OptionRecord>>;
