import { spawnSync } from "node:child_process";
import { cpSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const cli = fileURLToPath(new URL("../../packages/cli/", import.meta.url));
const command = join(cli, "dist", "feedpoint.js");
const samples = fileURLToPath(new URL("../../samples", import.meta.url));

export interface Outcome {
  readonly stdout: string;
  readonly stderr: string;
  readonly exit: number | null;
}

interface Surroundings {
  readonly folder?: string;
}

/** Runs the built command in samples/ or another folder, as the README does, with nothing on a terminal. */
export const runCommand = (args: readonly string[], input = "", surroundings: Surroundings = {}): Outcome =>
  run(process.execPath, [command, ...args], input, surroundings);

/** What is to be run in one process with others. */
interface Run extends Surroundings {
  readonly args: readonly string[];
  readonly columns?: number;
}

/** Runs the built program, or a copy of it, once for each, in one process; in samples/ where no folder is named. */
export function runEach(runs: readonly Run[], program = join(cli, "dist", "program.js")): readonly Outcome[] {
  const driver = fileURLToPath(new URL("each-run.mjs", import.meta.url));
  const { stdout, stderr } = run(process.execPath, [driver, program], JSON.stringify(runs));
  if (stdout === "") throw new Error(stderr);
  return JSON.parse(stdout) as readonly Outcome[];
}

/** What each of some command lines prints, by the line. */
export function runLines(lines: readonly string[]): ReadonlyMap<string, Outcome> {
  const outcomes = runEach(lines.map((line) => ({ args: splitArguments(line) })));
  return new Map(lines.map((line, i) => [line, outcomes[i] as Outcome]));
}

/** Runs a line for the shell in samples/, where `feedpoint` is the built command and `node` the one that runs the tests. */
export const runShell = (line: string): Outcome =>
  run("sh", ["-c", `node() { "$0" "$@"; }; feedpoint() { node "$COMMAND" "$@"; }; ${line}`, process.execPath]);

function run(program: string, args: readonly string[], input = "", { folder = samples }: Surroundings = {}): Outcome {
  const { stdout, stderr, status } = spawnSync(program, args, {
    cwd: folder,
    encoding: "utf8",
    input,
    // A report of a folder is a megabyte; many runs in one are more.
    maxBuffer: 1 << 28,
    env: {
      ...process.env,
      NO_COLOR: "1",
      LC_ALL: "C.UTF-8",
      COMMAND: command,
    },
  });
  return { stdout, stderr, exit: status };
}

/** Copies the built command by itself, without the packages that it can do without, and returns what to run. */
export function copyCommand(folder: string): string {
  for (const part of ["dist", "package.json"]) cpSync(join(cli, part), join(folder, part), { recursive: true });
  return join(folder, "dist", "feedpoint.js");
}

/** Splits a command line at blanks; "…" and '…' hold blanks together. */
export function splitArguments(line: string): readonly string[] {
  return [...line.matchAll(/"([^"]*)"|'([^']*)'|(\S+)/g)].map(
    ([, double, single, plain]) => double ?? single ?? plain ?? "",
  );
}
