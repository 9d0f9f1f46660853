import { checkCommand } from "./commands/check.js";
import { withExamples } from "./examples.js";
import { run } from "./run.js";

/** Does what the command line asks of the command that is called most; by itself it is loaded in less time than with all others. */
export const runProgram = (): Promise<void> => run([withExamples("check", checkCommand())]);
