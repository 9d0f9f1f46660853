/** Deployment logs where there are several, or where the log is a link; and patterns that name a file again. */
import { chmodSync, lstatSync, mkdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { folder, place, run, sweepText } from "./grading-folder.js";

afterAll(() => rmSync(place, { recursive: true }));

interface Report {
  readonly sweeps: readonly { readonly log: { readonly mooring: string } | null }[];
  readonly findings: readonly { readonly code: string; readonly message: string }[];
}
const reportOf = (...args: readonly string[]) => JSON.parse(run(["grade", ...args, "--json"]).stdout) as Report;

test("of the logs of two folders the first is read, and that the other is not, is said", () => {
  for (const [i, name] of ["spring", "autumn"].entries()) {
    const season = folder(name);
    writeFileSync(join(season, "a.s1p"), sweepText(i));
    writeFileSync(join(season, "deployments.csv"), `file,mooring\na.s1p,${name}\n`);
  }
  const { findings } = reportOf("spring", "autumn");
  const messages = Object.fromEntries(findings.map(({ code, message }) => [code, message]));
  expect(messages["log-not-read"]).toContain("Only spring/deployments.csv was read; autumn/deployments.csv was not.");
  expect(messages["log-row-shared"]).toContain("a.s1p (2 files)");
  for (const name of ["spring", "autumn"]) {
    const alone = reportOf(name);
    expect(alone.sweeps.map(({ log }) => log?.mooring)).toEqual([name]);
    expect(alone.findings.filter(({ code }) => code.startsWith("log-"))).toEqual([]);
  }
  expect(reportOf("spring", "autumn", "--no-log").findings.filter(({ code }) => code.startsWith("log-"))).toEqual([]);
});

test("a log that is a link stays one when it is updated, and its file keeps its permissions", () => {
  const linked = folder("linked");
  const kept = folder("kept");
  const file = join(kept, "log.csv");
  writeFileSync(join(linked, "a.s1p"), sweepText(1));
  writeFileSync(file, "file,mooring\n");
  chmodSync(file, 0o600);
  symlinkSync(file, join(linked, "deployments.csv"));
  expect(run(["log", "update", "linked"])).toMatchObject({ exit: 0 });
  expect(lstatSync(join(linked, "deployments.csv")).isSymbolicLink()).toBe(true);
  expect(readFileSync(file, "utf8")).toContain("a.s1p");
  expect(statSync(file).mode & 0o777).toBe(0o600);
});

test("a pattern whose files were named before matches them all the same", () => {
  const again = folder("again");
  mkdirSync(join(again, "sub"));
  for (const name of ["a.s1p", "sub/b.s1p"]) writeFileSync(join(again, name), sweepText(1));
  const { stderr, exit, stdout } = run(["grade", "again", "again/**/*.s1p", "--format", "ndjson"]);
  expect({ stderr, exit }).toEqual({ stderr: "", exit: 0 });
  expect(stdout.trimEnd().split("\n")).toHaveLength(2);
});
