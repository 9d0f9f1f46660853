import type { Command, Option } from "commander";
import type { OptionRecord } from "../options/option.js";
import { OPTIONS } from "../options/options.js";

/** What can follow a command, for a shell to offer. */
export interface OutlinedCommand {
  /** "check", "log init" */
  readonly path: string;
  readonly description: string;
  readonly options: readonly OutlinedOption[];
  /** What its first argument may be, where that is one of a few */
  readonly choices: readonly string[];
  readonly isParent: boolean;
}

export interface OutlinedOption {
  /** "--output", and "-o" where there is a short form */
  readonly long: string;
  readonly short: string | null;
  readonly description: string;
  readonly takesValue: boolean;
  /** Values to offer; none: files */
  readonly values: readonly string[];
}

/** Every command and subcommand of a program, without the hidden ones. */
export const outlineOf = (program: Command): readonly OutlinedCommand[] =>
  program.commands.flatMap((command) => [
    outlined(command, command.name()),
    ...command.commands.map((inner) => outlined(inner, `${command.name()} ${inner.name()}`)),
  ]);

function outlined(command: Command, path: string): OutlinedCommand {
  return {
    path,
    description: command.description(),
    options: command.options.filter(({ hidden }) => !hidden).map(outlinedOption),
    choices: command.registeredArguments[0]?.argChoices ?? [],
    isParent: command.commands.length > 0,
  };
}

function outlinedOption(option: Option): OutlinedOption {
  const long = option.long ?? option.short ?? "";
  return {
    long,
    short: option.long === undefined ? null : (option.short ?? null),
    description: option.description,
    takesValue: option.required || option.optional,
    values: option.argChoices ?? valuesFor(option.attributeName()),
  };
}

/** Values that an option of a name may be offered beside others that it takes. */
const valuesFor = (name: string): readonly string[] =>
  Object.values<OptionRecord>(OPTIONS).find((record) => record.name === name)?.suggests ?? [];
