import { isMainThread } from "node:worker_threads";
import { Command, CommanderError } from "commander";
import { checkCommand } from "./commands/check.js";
import { convertCommand } from "./commands/convert.js";
import { diffCommand } from "./commands/diff.js";
import { feedlinesCommand } from "./commands/feedlines.js";
import { gradeCommand } from "./commands/grade.js";
import { lineCommand } from "./commands/line.js";
import { logCommand } from "./commands/log.js";
import { plansCommand } from "./commands/plans.js";
import { schemaCommand } from "./commands/schema.js";
import { showCommand } from "./commands/show.js";
import { stationCommand } from "./commands/station.js";
import { trimCommand } from "./commands/trim.js";
import { EXIT, UsageError } from "./exit.js";
import { runWorker } from "./grading/worker.js";
import { printable } from "./present/escape.js";

if (isMainThread) await runProgram();
else runWorker();

async function runProgram(): Promise<void> {
  const program = new Command("feedpoint")
    .description("Tells what an antenna sweep means: where you may transmit, what a change did, how deployments rank.")
    .version("0.1.0")
    .addCommand(checkCommand())
    .addCommand(diffCommand())
    .addCommand(gradeCommand())
    .addCommand(trimCommand())
    .addCommand(lineCommand())
    .addCommand(showCommand())
    .addCommand(convertCommand())
    .addCommand(logCommand())
    .addCommand(plansCommand())
    .addCommand(feedlinesCommand())
    .addCommand(stationCommand())
    .addCommand(schemaCommand())
    .showHelpAfterError("(feedpoint --help shows what can be asked)")
    .addHelpText(
      "before",
      `Examples:
  feedpoint check sweep.s1p --plan itu-r1
  feedpoint diff before.csv after.csv --bands 40m,20m
  feedpoint grade sweeps/
  feedpoint trim sweep.s1p --to 7.1 --wire-length 20
`,
    );

  // A reader that closes the pipe early (head, less) has seen what it wanted.
  process.stdout.on("error", (error: NodeJS.ErrnoException) =>
    process.exit(error.code === "EPIPE" ? EXIT.done : EXIT.input),
  );

  for (const command of [program, ...program.commands, ...program.commands.flatMap(({ commands }) => commands)]) {
    command.exitOverride();
    command.configureOutput({ outputError: (text, write) => write(text.replace(/^error: /, "feedpoint: ")) });
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
  const message = error instanceof Error ? error.message : String(error);
  process.stderr.write(`feedpoint: ${printable(message)}\n`);
  if (!(error instanceof UsageError) && process.env.FEEDPOINT_DEBUG)
    process.stderr.write(`${String((error as Error).stack)}\n`);
  return EXIT.input;
}
