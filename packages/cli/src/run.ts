import { hintedMessage, UsageError } from "@feedpoint/answers/asked/usage-error";
import { printable } from "@feedpoint/answers/text/escape";
import { VERSION } from "@feedpoint/answers/version";
import { Command, CommanderError } from "commander";
import { EXIT } from "./exit.js";
import { reasonOf } from "./files.js";
import { examplesText, HELP_LAYOUT, helpWidth } from "./present/help.js";
import { usageErrorText } from "./present/usage-error.js";

/** What to begin with, at the head of the help. */
const EXAMPLES = [
  "check sweep.s1p --plan itu-r1",
  "diff before.csv after.csv --bands 40m,20m",
  "grade sweeps/",
  "trim sweep.s1p --to 7.1 --wire-length 20",
  "report sweep.s1p --plan itu-r1 -o report.html",
];

/** Does what the command line asks of some commands; the exit code tells what came of it. */
export async function run(commands: readonly Command[]): Promise<void> {
  const program = new Command("feedpoint")
    .description("Tells what an antenna sweep means: where you may transmit, what a change did, how deployments rank.")
    .version(VERSION)
    .showHelpAfterError("(feedpoint --help shows what can be asked)")
    .addHelpText("before", () => `${examplesText(EXAMPLES)}\n`);

  for (const command of commands) program.addCommand(command);

  // A reader that closes the pipe early (head, less) has seen what it wanted.
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") process.exit(EXIT.done);
    process.stderr.write(`feedpoint: standard output: ${reasonOf(error, "writing")}.\n`);
    process.exit(EXIT.input);
  });

  for (const command of [program, ...program.commands, ...program.commands.flatMap(({ commands }) => commands)]) {
    command.exitOverride();
    command.configureHelp(HELP_LAYOUT);
    command.configureOutput({
      getOutHelpWidth: () => helpWidth(process.stdout),
      getErrHelpWidth: () => helpWidth(process.stderr),
      outputError: (text, write) => write(usageErrorText(text, command)),
    });
  }
  try {
    await program.parseAsync();
  } catch (error) {
    process.exitCode = report(error);
  }
}

/** Says what went wrong in one line, never with a stack trace, and returns the exit code. */
function report(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.input;
  process.stderr.write(`feedpoint: ${printable(hintedMessage(error))}\n`);
  if (!(error instanceof UsageError) && process.env.FEEDPOINT_DEBUG)
    process.stderr.write(`${String((error as Error).stack)}\n`);
  return EXIT.input;
}
