import type { Station } from "@feedpoint/core";
import { COMMAND_OPTIONS } from "./command-options.js";
import { COMMON_OPTIONS } from "./common-options.js";
import { HEARD_OPTIONS } from "./heard-options.js";
import type { CommandName, OptionRecord, RawOf, ValueOf } from "./option.js";
import { SEASON_OPTIONS } from "./season-options.js";
import { TRY_OPTIONS } from "./try-options.js";

/** Every option of the command. */
export const OPTIONS = { ...COMMON_OPTIONS, ...SEASON_OPTIONS, ...TRY_OPTIONS, ...HEARD_OPTIONS, ...COMMAND_OPTIONS };

type KnownOption = (typeof OPTIONS)[keyof typeof OPTIONS];

/** What a command's options are as they are handed over. */
export type RawOptions<Name extends CommandName> = RawOf<KnownOption, Name>;

/** The options that a command takes, in the order of its help. */
export const optionsOf = (name: CommandName): readonly OptionRecord[] =>
  Object.values<OptionRecord>(OPTIONS).filter(({ of }) => of.includes(name));

/** Options that several commands share, as they are handed over; each command has some of them. */
export type RawCommon = RawOf<(typeof COMMON_OPTIONS)[keyof typeof COMMON_OPTIONS], CommandName>;

/** What an option is in the station file. */
type InStation<Known> = Known extends { station: { read: (station: Station) => infer Value } } ? Value : undefined;

/** What was typed, or else what the station file says; undefined where neither states it. */
export function stated<Known extends KnownOption>(
  option: Known,
  typed: ValueOf<Known> | undefined,
  station: Station,
): ValueOf<Known> | InStation<Known> | undefined {
  const { station: inStation }: OptionRecord = option;
  return typed ?? (inStation?.read(station) as InStation<Known>);
}
