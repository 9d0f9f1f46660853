/** Deployment logs where there are several, or where the log is a link; and patterns that name a file again. */
import {
  chmodSync,
  copyFileSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
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

test("lines that the log tells are taken out where two sweeps have different ones", () => {
  const lines = folder("lines");
  const samples = fileURLToPath(new URL("../../samples/sweeps/", import.meta.url));
  const [before, after] = ["2026-04-11-nettle-winding-inverted-l.s1p", "2026-07-25-nettle-winding-extra-feedline.s1p"];
  for (const name of [before, after]) copyFileSync(join(samples, name), join(lines, name));
  const diffOf = (first: string, second: string) => {
    writeFileSync(join(lines, "deployments.csv"), `file,feedline\n${before},${first}\n${after},${second}\n`);
    const { stdout } = run(["diff", `lines/${before}`, `lines/${after}`, "--plan", "itu-r1", "--json"]);
    const { bands, findings } = JSON.parse(stdout) as {
      bands: { verdict: string }[];
      findings: { code: string; message: string }[];
    };
    const said = findings.find(({ code }) => code === "lines-taken-out")?.message ?? null;
    return { verdicts: [...new Set(bands.map(({ verdict }) => verdict))], said };
  };
  expect(diffOf("rg-58:12", "21 m of RG58")).toMatchObject({
    verdicts: ["unchanged"],
    said: expect.stringMatching(/before: 12 m.*after: 21 m.*explains it/),
  });
  // Not of both sides known, or the same on both: compared as it was swept.
  for (const [first, second] of [
    ["rg-58:12", "21 m"],
    ["rg-58:12", "rg-58:12"],
  ] as const) {
    expect(diffOf(first, second)).toEqual({ verdicts: ["not-comparable"], said: null });
  }
});
