/** Grading while files appear: a line for each, once it has stopped growing, and a clean end. */
import { type ChildProcess, spawn } from "node:child_process";
import { appendFileSync, copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";

const command = fileURLToPath(new URL("../../packages/cli/dist/feedpoint.js", import.meta.url));
const sample = (name: string) => fileURLToPath(new URL(`../../samples/sweeps/${name}`, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "feedpoint-watch-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** What a process has written so far, and a wait for more of it; only the test's own limit ends that. */
function listening(child: ChildProcess) {
  const written = { stdout: "", stderr: "" };
  const waiting: (() => void)[] = [];
  for (const name of ["stdout", "stderr"] as const)
    child[name]?.setEncoding("utf8").on("data", (text: string) => {
      written[name] += text;
      for (const look of waiting) look();
    });
  const until = (name: keyof typeof written, wanted: RegExp) =>
    new Promise<void>((resolve) => {
      const look = () => wanted.test(written[name]) && resolve();
      waiting.push(look);
      look();
    });
  return { written, until };
}

test("watching tells each sweep that appears against the last and the best, and ends with 0 on Ctrl-C", async () => {
  copyFileSync(sample("2026-02-21-tansy-reach-untrimmed.s1p"), join(folder, "first.s1p"));
  const args = [command, "grade", "--watch", folder, "--plan", "itu-r1", "--bands", "40m", "--no-station"];
  const child = spawn(process.execPath, args, { env: { ...process.env, NO_COLOR: "1" } });
  const ended = new Promise<number | null>((resolve) => child.on("close", resolve));
  const { written, until } = listening(child);
  await until("stderr", /watching, 1 graded so far/);

  // One that grows while it is looked at is graded once, and whole.
  const whole = readFileSync(sample("2026-05-02-lantern-bridge-bridge-pole.s1p"), "utf8");
  const half = whole.lastIndexOf("\n", whole.length / 2) + 1;
  writeFileSync(join(folder, "second.s1p"), whole.slice(0, half));
  appendFileSync(join(folder, "second.s1p"), whole.slice(half));
  await until("stdout", /second/);
  copyFileSync(sample("2026-06-13-alder-bend-roof-low.csv"), join(folder, "third.csv"));
  await until("stdout", /third/);
  writeFileSync(join(folder, "broken.csv"), "nothing of a sweep\n");
  await until("stderr", /broken/);
  child.kill("SIGINT");

  expect(await ended).toBe(0);
  expect(written.stdout.trimEnd().split("\n")).toEqual([
    "second.s1p: 40m A 1.14 (was B 1.49, best so far)",
    "third.csv: 40m D 6.31 (was A 1.14, best A 1.14 of second.s1p)",
  ]);
});

test("watching takes nothing that asks for all sweeps at once", () => {
  // Typed wrong, it must end by itself.
  const child = spawn(process.execPath, [command, "grade", "--watch", folder, "--best", "40m"]);
  const { written } = listening(child);
  return new Promise<void>((resolve) =>
    child.on("close", (exit) => {
      expect(exit).toBe(2);
      expect(written.stderr).toContain("--watch");
      resolve();
    }),
  );
});
