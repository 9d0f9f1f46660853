/** A folder of small sweeps, and the built command run in it, for the tests of grading. */
import { spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { copyCommand } from "./run-command.js";

/** Each test file has its own, and removes it. */
export const place = mkdtempSync(join(tmpdir(), "feedpoint-grading-"));

// A copy, so that another user can run it too; see "an unreadable folder".
export const command = copyCommand(join(place, "command"));
chmodSync(place, 0o755);

export const SAMPLES = fileURLToPath(new URL("../../samples/sweeps/", import.meta.url));

export interface Running {
  readonly cwd?: string;
  readonly nodeOptions?: string;
  readonly user?: number;
}

export function run(args: readonly string[], { cwd = place, nodeOptions, user }: Running = {}) {
  const { stdout, stderr, status } = spawnSync(process.execPath, [command, ...args], {
    cwd,
    encoding: "utf8",
    maxBuffer: 1 << 28,
    env: { ...process.env, ...(nodeOptions === undefined ? {} : { NODE_OPTIONS: nodeOptions }) },
    ...(user === undefined ? {} : { uid: user, gid: user }),
  });
  return { stdout, stderr, exit: status };
}

export interface Line {
  readonly sweep: { readonly file: string };
  readonly grade: string | null;
  readonly bands: readonly Record<string, unknown>[];
}

export const linesOf = (stdout: string): readonly Line[] =>
  stdout.split("\n").flatMap((line) => (line === "" ? [] : [JSON.parse(line) as Line]));
export const namesOf = (stdout: string) => linesOf(stdout).map(({ sweep }) => sweep.file);

export function folder(name: string): string {
  mkdirSync(join(place, name));
  return join(place, name);
}

/** A small sweep: a dip at a place of its own within 40 m. */
export const sweepText = (i: number) => {
  const rows = Array.from({ length: 21 }, (_, k) => {
    const real = 0.05 + Math.abs(7050 + (i % 100) - (6900 + 20 * k)) / 500;
    return `${6900 + 20 * k} ${real.toFixed(6)} 0`;
  });
  return `# kHz S RI R 50\n${rows.join("\n")}\n`;
};
