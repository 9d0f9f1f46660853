import { listOf } from "@feedpoint/answers/asked/arguments";
import type { OptionRecord } from "./option.js";

/** What is asked of reception reports, in the order of the help. */
export const HEARD_OPTIONS = {
  heardLog: {
    name: "log",
    flags: "--log <file>",
    help: "what was up when: a log with the columns deployment, up and down, in UTC (default: deployments.csv beside the reports)",
    of: ["heard"],
  },
  compare: {
    name: "compare",
    flags: "--compare <two>",
    help: "two deployments, such as sloper,vee (default: each with the next one that went up)",
    of: ["heard"],
    parse: listOf,
  },
  heardBands: {
    name: "bands",
    flags: "--bands <list>",
    help: "only these bands, such as 40m,20m",
    of: ["heard"],
    parse: listOf,
  },
  heardOutput: {
    name: "output",
    flags: "-o, --output <file>",
    help: "write a page with a map instead, such as heard.html (- is standard output)",
    of: ["heard"],
  },
  transmitter: {
    name: "transmitter",
    flags: "--transmitter <call>",
    help: "your call sign, where the reports leave open which station is yours",
    of: ["heard"],
  },
  locator: {
    name: "locator",
    flags: "--locator <locator>",
    help: "where you were, such as IO91wm (default: as the reports say)",
    of: ["heard"],
  },
} as const satisfies Readonly<Record<string, OptionRecord>>;
