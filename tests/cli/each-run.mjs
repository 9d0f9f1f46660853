/**
 * Runs the built program many times in one process, and writes what came of it as JSON: starting Node for each would take a
 * quarter of the whole test run. Argument: the program; on standard input, as JSON, a list of runs: the arguments of the
 * command, perhaps the folder that it runs in and the columns of the terminal.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const [program] = process.argv.slice(2);
const runs = JSON.parse(readFileSync(0, "utf8"));
const { runProgram } = createRequire(import.meta.url)(program);
// Each run adds one that waits for a closed pipe.
process.stdout.setMaxListeners(0);

const home = process.cwd();
const write = process.stdout.write.bind(process.stdout);
const outcomes = [];
for (const { args, folder = home, columns = "" } of runs) {
  const stdout = [];
  const stderr = [];
  process.stdout.write = (text) => stdout.push(text) > 0;
  process.stderr.write = (text) => stderr.push(text) > 0;
  process.argv = [process.execPath, program, ...args];
  process.env.COLUMNS = String(columns);
  process.exitCode = 0;
  process.chdir(folder);
  await runProgram();
  outcomes.push({ stdout: stdout.join(""), stderr: stderr.join(""), exit: process.exitCode });
}
process.exitCode = 0;
write(JSON.stringify(outcomes));
