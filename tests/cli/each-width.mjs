/**
 * Runs the built program once for each width, in one process, and writes what it printed as JSON: 90 starts of Node would
 * take a tenth of the whole test run. Arguments: the program, the widths as JSON, the arguments of the command.
 */
import { createRequire } from "node:module";

const [program, widths, ...args] = process.argv.slice(2);
const { runProgram } = createRequire(import.meta.url)(program);
process.argv = [process.execPath, program, ...args];

const write = process.stdout.write.bind(process.stdout);
const outcomes = [];
for (const columns of JSON.parse(widths)) {
  const printed = [];
  process.stdout.write = (text) => printed.push(text) > 0;
  process.env.COLUMNS = String(columns);
  process.exitCode = 0;
  await runProgram();
  outcomes.push([columns, { stdout: printed.join(""), exit: process.exitCode }]);
}
process.exitCode = 0;
write(JSON.stringify(outcomes));
