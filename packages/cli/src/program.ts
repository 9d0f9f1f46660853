import { commandsAsked } from "./commands.js";
import { run } from "./run.js";

/** Grades files in the thread of a worker. */
export async function gradeInThread(): Promise<void> {
  (await import("./grading/worker-thread.js")).answerBatches();
}

/** Does what the command line asks. */
export async function runProgram(): Promise<void> {
  await run(await commandsAsked(process.argv.slice(2)));
}
