import type { Station } from "@feedpoint/core";

/** Every command that takes options. */
export type CommandName =
  | "check"
  | "diff"
  | "grade"
  | "trim"
  | "try"
  | "line"
  | "heard"
  | "report"
  | "page"
  | "chart"
  | "show"
  | "convert"
  | "log init"
  | "plans"
  | "feedlines"
  | "station init";

/** All that is to be known of one option: what declares it, settles it, completes it and lists it in the guide reads this. */
export interface OptionRecord {
  /** As it is handed over: the long form in camel case */
  readonly name: string;
  /** As it is typed: "--limit <swr>", "-o, --output <file>" */
  readonly flags: string;
  readonly help: string;
  readonly of: readonly CommandName[];
  /** What the same with --no- before it does; the value is then false */
  readonly negated?: string;
  /** Checks what is typed. @throws UsageError */
  readonly parse?: (text: string) => unknown;
  /** The only values that it takes */
  readonly choices?: readonly string[];
  /** Values that a shell may offer beside others */
  readonly suggests?: readonly string[];
  /** Where the station file states the same: the key's path, and the value */
  readonly station?: { readonly key: string; readonly read: (station: Station) => unknown };
  /** What holds where nothing is stated */
  readonly fallback?: string | number;
  readonly isRequired?: boolean;
}

type TypedValue<Record extends OptionRecord> = Record extends { choices: readonly (infer Value)[] }
  ? Value
  : Record extends { parse: (text: string) => infer Value }
    ? Value
    : Record["flags"] extends `${string}...>`
      ? readonly string[]
      : Record["flags"] extends `${string}<${string}`
        ? string
        : Record["flags"] extends `${string}[${string}`
          ? string | true
          : boolean;

/** What an option is as it is handed over. */
export type ValueOf<Record extends OptionRecord> =
  | TypedValue<Record>
  | (Record extends { negated: string } ? false : never);

type OfCommand<Record extends OptionRecord, Name extends CommandName> = Record extends OptionRecord
  ? Name extends Record["of"][number]
    ? Record
    : never
  : never;

/** The options of a command as commander hands them over; each but the required ones may have been left out. */
export type RawOf<Record extends OptionRecord, Name extends CommandName> = {
  readonly [Each in OfCommand<Record, Name> as Each extends { isRequired: true } ? Each["name"] : never]: ValueOf<Each>;
} & {
  readonly [Each in OfCommand<Record, Name> as Each extends { isRequired: true }
    ? never
    : Each["name"]]?: ValueOf<Each>;
};
