/** Files good and bad, whatever their names, and the options over a whole season. */
import { chmodSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { present } from "../support/sweeps.js";
import { folder, type Line, linesOf, namesOf, place, run, SAMPLES, sweepText } from "./grading-folder.js";

afterAll(() => rmSync(place, { recursive: true }));

describe("a folder of good and bad files", () => {
  const mixed = folder("mixed");
  const good = [
    "-dash.s1p",
    "=cmd.s1p",
    "a+b.s1p",
    "escape\u001B[31m\u009B31m.s1p",
    "line\nend.s1p",
    "mark\u202Egnp.s1p",
    "дом.s1p",
    "שלום.s1p",
    "日本.s1p",
  ];
  for (const [i, name] of good.entries()) writeFileSync(join(mixed, name), sweepText(i));
  mkdirSync(join(mixed, "sub", "folder.s1p"), { recursive: true });
  writeFileSync(join(mixed, "sub", "deep.s1p"), sweepText(3));
  symlinkSync("deep.s1p", join(mixed, "sub", "link.s1p"));
  symlinkSync("..", join(mixed, "sub", "up"));
  symlinkSync("loop.s1p", join(mixed, "loop.s1p"));
  symlinkSync("gone.s1p", join(mixed, "dangling.s1p"));
  writeFileSync(join(mixed, "broken.s1p"), "not a sweep\n");
  writeFileSync(join(mixed, "empty.csv"), "");
  writeFileSync(join(mixed, "notes.md"), "not looked at");
  const wanted = [...good, "sub/deep.s1p", "sub/link.s1p"].map((name) => `mixed/${name}`).sort();
  const bad = ["broken.s1p", "dangling.s1p", "empty.csv", "loop.s1p"];

  test.each([["mixed"], ["mixed/**"], ["mixed", "./mixed/sub", "mixed/sub/../sub/deep.s1p"]])(
    "has the good ones graded once and the bad ones named: %s",
    (...paths) => {
      const { stdout, stderr, exit } = run(["grade", ...paths, "--format", "ndjson"]);
      const named = stderr
        .trimEnd()
        .split("\n")
        .filter((line) => !line.includes("notes.md"));
      expect([...namesOf(stdout)].sort()).toEqual(wanted);
      expect(named.map((line) => /^feedpoint: mixed\/([^:,]+)/.exec(line)?.[1])).toEqual(bad);
      expect(exit).toBe(2);
    },
  );

  // With more text than control characters, so that it is a text at all.
  const hostileLog = `file,col\u001B[1m\nдом.s1p,\u009B31m \u202E text\nx\u0007,${"=1+1 ".repeat(50)}\n`;

  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  const STEERING = /[\u0000-\u0009\u000B-\u001F\u007F-\u009F\u202A-\u202E\u2066-\u2069]/;

  test.each(["table", "json", "ndjson", "csv", "markdown"])("prints nothing that steers a terminal: %s", (format) => {
    writeFileSync(join(mixed, "deployments.csv"), hostileLog);
    const { stdout, stderr } = run(["grade", "mixed", "--format", format]);
    expect(stdout).not.toMatch(STEERING);
    expect(stderr).not.toMatch(STEERING);
    expect(stdout).toContain("дом.s1p");
    rmSync(join(mixed, "deployments.csv"));
  });

  test("gives a spreadsheet no formulas", () => {
    const cells = run(["grade", "mixed", "--format", "csv"]).stdout.split(/[\n,]/);
    expect(cells.filter((cell) => /^[=+@]|^-[^\d]/.test(cell))).toEqual([]);
    expect(cells).toContain("'=cmd.s1p");
  });

  test("has a log written by log init that finds each file again", () => {
    expect(run(["log", "init", "mixed"]).exit).toBe(0);
    const log = readFileSync(join(mixed, "deployments.csv"), "utf8");
    writeFileSync(join(mixed, "deployments.csv"), log.replaceAll(/^(?!file)([^,]*,[^,]*,[^,]*),/gm, "$1,somewhere"));
    const { stdout } = run(["grade", "mixed", "--format", "json"]);
    const { sweeps, findings } = JSON.parse(stdout) as {
      sweeps: { log: Record<string, string> | null }[];
      findings: { code: string; message: string }[];
    };
    expect(sweeps.map(({ log: row }) => row?.shape)).toEqual(wanted.map(() => "somewhere"));
    expect(findings.filter(({ code }) => code === "log-row-missing")).toEqual([]);
    rmSync(join(mixed, "deployments.csv"));
  });

  test.each([
    [",", "\n"],
    [";", "\r\n"],
  ])("has rows added to its log by log update, which leaves the rest as it is (%j, %j)", (delimiter, lineEnd) => {
    const place = join(mixed, "deployments.csv");
    const first = "rising/a.s1p";
    const text = [
      ["\uFEFFDate", "", "file", "place"],
      ["2026-05-02", "x", first, "somewhere"],
    ]
      .map((cells) => cells.join(delimiter))
      .join(lineEnd);
    writeFileSync(place, text);
    expect(run(["log", "update", "mixed"])).toMatchObject({ exit: 0, stdout: "" });
    const updated = readFileSync(place, "utf8");
    expect(updated.startsWith(text + lineEnd)).toBe(true);
    expect(
      updated
        .trimEnd()
        .split(lineEnd)
        .every((line) => line.split(delimiter).length === 4),
    ).toBe(true);
    const { findings } = JSON.parse(run(["grade", "mixed", "--json"]).stdout) as { findings: { code: string }[] };
    expect(findings.filter(({ code }) => code === "log-row-missing")).toEqual([]);
    run(["log", "update", "mixed"]);
    expect(readFileSync(place, "utf8")).toBe(updated);
    rmSync(place);
  });

  test("that nobody may read is named, like a file that nobody may", () => {
    const shut = folder("shut");
    for (const name of ["in", "in/side"]) mkdirSync(join(shut, name));
    writeFileSync(join(shut, "good.s1p"), sweepText(1));
    writeFileSync(join(shut, "secret.s1p"), sweepText(1));
    chmodSync(join(shut, "secret.s1p"), 0);
    chmodSync(join(shut, "in"), 0);
    // To root nothing is unreadable.
    const { stdout, stderr, exit } = run(["grade", "shut", "--format", "ndjson"], {
      ...(process.getuid?.() === 0 ? { user: 65_534 } : {}),
    });
    chmodSync(join(shut, "in"), 0o755);
    expect(namesOf(stdout)).toEqual(["shut/good.s1p"]);
    expect(stderr).toBe(
      "feedpoint: shut/in: reading it is not permitted.\nfeedpoint: shut/secret.s1p: reading it is not permitted.\n",
    );
    expect(exit).toBe(2);
  });

  test("one of which vanishes has the rest graded", () => {
    const vanishing = folder("vanishing");
    for (const name of ["a.s1p", "b.s1p", "c.s1p"]) writeFileSync(join(vanishing, name), sweepText(1));
    const thief = join(place, "thief.cjs");
    writeFileSync(
      thief,
      `const fs = require("node:fs");
       const open = fs.openSync;
       fs.openSync = (path, ...more) => {
         if (String(path).endsWith("a.s1p")) fs.rmSync("vanishing/b.s1p", { force: true });
         return open(path, ...more);
       };
       require("node:module").syncBuiltinESMExports();`,
    );
    const { stdout, stderr, exit } = run(["grade", "vanishing", "--format", "ndjson"], {
      nodeOptions: `--require ${thief}`,
    });
    expect(namesOf(stdout)).toEqual(["vanishing/a.s1p", "vanishing/c.s1p"]);
    expect(stderr).toBe("feedpoint: vanishing/b.s1p: there is no such file or folder.\n");
    expect(exit).toBe(2);
  });

  test("of broken files alone, and an empty one, say so", () => {
    const broken = folder("only-broken");
    writeFileSync(join(broken, "a.s1p"), "nothing\n");
    expect(run(["grade", "only-broken"])).toMatchObject({
      stdout: "0 sweeps graded, 1 file, 1 unreadable.\n",
      exit: 2,
    });
    folder("hollow");
    expect(run(["grade", "hollow"])).toMatchObject({
      stdout: "",
      stderr: "feedpoint: There are no sweep files (.s1p, .csv, .tsv, .txt, .dat) in hollow.\n",
      exit: 2,
    });
  });
});

describe("the options over a whole season", () => {
  interface Report {
    readonly sweeps: readonly Line[];
    readonly ranking: readonly unknown[];
    readonly groups: readonly { readonly groups: readonly { readonly sweeps: number }[] }[];
    readonly totals: { readonly graded: number };
  }
  const season = (...options: readonly string[]) => {
    const { stdout, exit } = run(["grade", ".", "--plan", "itu-r1", "--bands", "40m,20m", "--json", ...options], {
      cwd: SAMPLES,
    });
    return { report: JSON.parse(stdout) as Report, exit };
  };
  const files = ({ sweeps }: Report) => sweeps.map(({ sweep }) => sweep.file);

  const found = files(season().report);

  test.each(["name", "date", "grade", "40m", "20"])("--sort %s orders the same sweeps", (key) => {
    const sorted = files(season("--sort", key).report);
    expect(sorted.toSorted()).toEqual(found.toSorted());
    const first = { name: found[0], date: found[0], grade: "2026-02-21-tansy-reach-trimmed.txt" }[key];
    const onBand = { "40m": "2026-07-11-lantern-bridge-wet-feedline.csv", "20": "2026-06-13-alder-bend-roof-low.csv" }[
      key
    ];
    expect(sorted[0]).toBe(present(first ?? onBand, "the first"));
  });

  test("--min-grade leaves the same sweeps out of NDJSON, each with its row of the log", () => {
    const args = ["grade", SAMPLES, "--min-grade", "A", "--require", "A", "--format"];
    const { stdout, exit } = run([...args, "ndjson"]);
    const report = JSON.parse(run([...args, "json"]).stdout) as Report;
    expect(linesOf(stdout)).toMatchObject(report.sweeps);
    expect(stdout).toContain('"log":{"file":');
    expect(report.sweeps.length).toBeGreaterThan(0);
    expect(exit).toBe(1);
  });

  test("--min-grade leaves sweeps out of what is printed, not out of groups, counts and --require", () => {
    const { report, exit } = season("--min-grade", "A", "--require", "A", "--group-by", "shape");
    expect(new Set(report.sweeps.map(({ grade }) => grade))).toEqual(new Set(["A"]));
    expect(report.totals.graded).toBe(14);
    expect(report.groups[0]?.groups.reduce((sum, { sweeps }) => sum + sweeps, 0)).toBe(14);
    expect(exit).toBe(1);
  });
});
