import { filledLines, wrap } from "@feedpoint/answers/text/table";
import { Help, type HelpConfiguration } from "commander";
import { terminalWidth } from "./terminal-width.js";

/** Where there is no terminal to ask, help is as wide as most are. */
const UNKNOWN_WIDTH = 80;

export const helpWidth = (stream: { readonly columns?: number }): number =>
  terminalWidth(process.env, stream, UNKNOWN_WIDTH);

/** With less room than this beside a term, what it means stands below it. */
const LEAST_ROOM = 24;

/** The layout of help, on which nothing is wider than the terminal. */
export const HELP_LAYOUT: HelpConfiguration = {
  minWidthToWrap: 0,
  commandUsage(command) {
    return wrap(Help.prototype.commandUsage.call(this, command), (this.helpWidth ?? UNKNOWN_WIDTH) - 7, "    ");
  },
  formatItem(term, termWidth, description, helper) {
    const width = helper.helpWidth ?? UNKNOWN_WIDTH;
    if (width - termWidth - 4 >= LEAST_ROOM)
      return Help.prototype.formatItem.call(helper, term, termWidth, description, helper);
    const below = description === "" ? "" : `\n      ${wrap(description, width - 6, "      ")}`;
    return `  ${wrap(term, width - 2, "    ")}${below}`;
  },
};

/** Examples to be typed; long ones go on in the next line, as a shell takes them. */
export function examplesText(examples: readonly string[]): string {
  const width = helpWidth(process.stdout);
  const lines = examples.map((example) => {
    const words = `feedpoint ${example}`.match(/(?:[^\s"]|"[^"]*")+/g) ?? [];
    return `  ${filledLines(words, width - 4, "    ").join(" \\\n")}`;
  });
  return ["Examples:", ...lines].join("\n");
}
