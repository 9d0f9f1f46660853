import { hintedMessage } from "@feedpoint/answers/asked/usage-error";
import { type Command, InvalidArgumentError, Option } from "commander";
import type { CommandName, OptionRecord } from "./option.js";
import { optionsOf } from "./options.js";

/** Declares the options of a command, in the order of their records. */
export function withOptions(command: Command, name: CommandName): Command {
  for (const record of optionsOf(name)) {
    command.addOption(declared(record));
    if (record.negated !== undefined) command.addOption(new Option(negatedFlag(record), record.negated));
  }
  return command;
}

function declared({ flags, help, choices, parse, isRequired = false }: OptionRecord): Option {
  const option = new Option(flags, help);
  if (choices !== undefined) option.choices(choices);
  if (parse !== undefined) option.argParser((text) => parsed(parse, text));
  return option.makeOptionMandatory(isRequired);
}

/** What is wrong with a value is told by commander, which names the option. */
function parsed(parse: (text: string) => unknown, text: string): unknown {
  try {
    return parse(text);
  } catch (error) {
    throw new InvalidArgumentError(hintedMessage(error));
  }
}

const negatedFlag = ({ flags }: OptionRecord) => flags.replace(/^--([a-z-]+).*$/, "--no-$1");
