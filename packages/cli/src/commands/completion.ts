import { Argument, Command } from "commander";
import { bashCompletion } from "../completion/bash.js";
import { fishCompletion } from "../completion/fish.js";
import { type OutlinedCommand, outlineOf } from "../completion/outline.js";
import { zshCompletion } from "../completion/zsh.js";

const SCRIPTS: Readonly<Record<string, (commands: readonly OutlinedCommand[]) => string>> = {
  bash: bashCompletion,
  zsh: zshCompletion,
  fish: fishCompletion,
};

/** @param everyCommand all commands of the program, which are loaded to be described */
export function completionCommand(everyCommand: () => Promise<readonly Command[]>): Command {
  return new Command("completion")
    .description("Prints a script by which a shell completes commands and options: source <(feedpoint completion bash)")
    .addArgument(new Argument("<shell>", "your shell").choices(Object.keys(SCRIPTS)))
    .action(async (shell: string) => {
      const program = new Command("feedpoint");
      for (const command of await everyCommand()) program.addCommand(command);
      process.stdout.write(SCRIPTS[shell]?.(outlineOf(program)) ?? "");
    });
}
