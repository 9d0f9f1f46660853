import { shareArgument } from "@feedpoint/answers/asked/arguments";
import { wishesArgument } from "@feedpoint/answers/asked/wishes";
import { LEAST_ARRIVING } from "@feedpoint/core";
import { handArgument } from "./hand.js";
import type { OptionRecord } from "./option.js";

/** Options of what to try next, in the order of the help. */
export const TRY_OPTIONS = {
  want: {
    name: "want",
    flags: "--want <list>",
    help: 'what is wanted: bands, modes on them, ranges in MHz, such as "40m,20m ft8,7.0-7.1"; 40m*2 counts twice',
    of: ["try", "report"],
    parse: wishesArgument,
  },
  have: {
    name: "have",
    flags: "--have <list>",
    help: 'parts at hand: "rg-58:20,rg-6,9:1,2.2uH,470pF,coils,capacitors,tuner" (default: the usual ones)',
    of: ["try", "report"],
    parse: handArgument,
    station: { key: "parts", read: ({ parts }) => parts },
  },
  arriving: {
    name: "arriving",
    flags: "--arriving <share>",
    help: `share of the power that has to arrive at the antenna for a frequency to count (default ${LEAST_ARRIVING})`,
    of: ["try", "report"],
    parse: shareArgument,
    fallback: LEAST_ARRIVING,
  },
} as const satisfies Readonly<Record<string, OptionRecord>>;
