import { printable } from "@feedpoint/answers/text/escape";
import type { Command } from "commander";

/** What the parser of arguments says, in the words of this command; anything else is left as it is. */
const REWORDED: readonly (readonly [RegExp, string])[] = [
  [/^error: missing required argument '.*'/, "Something is missing: USAGE"],
  [/^error: option '(?:-\w, )?(--[\w-]+)[^']*' argument '(.*?)' is invalid\. /s, '$1 "$2": '],
  [/^error: command-argument value '(.*?)' is invalid for argument '.*?'\. /, '"$1": '],
  [/Allowed choices are (.*)\./, "It must be one of $1."],
  [/^error: option '(?:-\w, )?(--[\w-]+) <(.*)>' argument missing/, "$1 needs a $2 behind it."],
  [/^error: /, ""],
];

/** A usage error as it is told. */
export function usageErrorText(text: string, command: Command): string {
  const path = command.parent?.parent ? `${command.parent.name()} ${command.name()}` : command.name();
  const usage = `feedpoint ${path} ${command.usage()}`;
  const reworded = REWORDED.reduce((before, [pattern, words]) => before.replace(pattern, words), text);
  return `feedpoint: ${reworded.replace("USAGE", () => usage)}`.split("\n").map(printable).join("\n");
}
