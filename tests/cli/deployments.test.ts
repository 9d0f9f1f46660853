/** Deployments of several files on the command line: folders, files named together, logs. All sweeps and notes are invented. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { CheckResult, DiffResult } from "@feedpoint/core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { runCommand } from "./run-command.js";

let place = "";
const BANDS = { "80m": [3.5, 3.8], "40m": [7, 7.2], "20m": [14, 14.35], "10m": [28, 29.7] } as const;

/** A resonance near each band; `shift` moves all of them, as a longer or shorter wire does. */
function sweepText(lowMHz: number, highMHz: number, points: number, shift = 1): string {
  const rows = Array.from({ length: points }, (_, i) => {
    const mhz = lowMHz + ((highMHz - lowMHz) * i) / (points - 1);
    const x = [3.65, 7.1, 14.2, 28.9].reduce((least, f) => {
      const each = 900 * (mhz / (f * shift) - (f * shift) / mhz);
      return Math.abs(each) < Math.abs(least) ? each : least;
    }, 1e4);
    // Γ of 40 Ω in series with X
    const [a, b, c] = [-10, x, 90];
    const size = c * c + b * b;
    return `${mhz.toFixed(5)} ${((a * c + b * b) / size).toFixed(6)} ${((b * c - a * b) / size).toFixed(6)}`;
  });
  return `# MHz S RI R 50\n${rows.join("\n")}\n`;
}

function put(path: string, text: string): void {
  mkdirSync(join(place, path, ".."), { recursive: true });
  writeFileSync(join(place, path), text);
}

function putBands(folder: string, shift = 1): void {
  for (const [name, [low, high]] of Object.entries(BANDS))
    put(`${folder}/${name}.s1p`, sweepText(low, high, 101, shift));
}

beforeAll(() => {
  place = mkdtempSync(join(tmpdir(), "feedpoint-deployments-"));
  putBands("season/2026-03-07");
  put("season/2026-03-07/wide.s1p", sweepText(1.8, 30, 565));
  put("season/2026-03-07/40m-again.s1p", sweepText(7, 7.2, 101, 1.00002));
  put("season/2026-03-07/photo.txt", "nothing to read here\n");
  putBands("season/2026-03-14", 1.02);
  putBands("season/2026-03-21/before");
  putBands("season/2026-03-21/after", 0.98);
  put("season/2026-03-28/readings.txt", "80m 2-3\n40m 1.5\n20m >5, needs tuner\n");
  for (const day of ["01", "02", "03"]) put(`flat/2026-04-${day}.s1p`, sweepText(1.8, 30, 301, 1 + Number(day) / 500));
});

afterAll(() => rmSync(place, { recursive: true, force: true }));

const run = (...args: string[]) => runCommand(args, "", { folder: place });
const json = <Result>(...args: string[]): Result =>
  JSON.parse(run(...args, "--plan", "itu-r1", "--json").stdout) as Result;

describe("a folder with a sweep a band, a wide one and a repeat", () => {
  test("is one answer of check, with one row a band", () => {
    const { stdout, stderr, exit } = run("check", "season/2026-03-07", "--plan", "itu-r1");
    expect([stderr.includes("photo.txt"), exit]).toEqual([true, 2]);
    expect(stdout.match(/^Band /gm)?.length).toBe(1);
    expect(stdout.match(/^(?:160|80|60|40|30|20|17|15|12|10)m /gm)?.length).toBe(10);
    expect(stdout.replaceAll(/\s+/g, " ")).toContain("40m.s1p (40m)");
    expect(stdout.replaceAll(/\s+/g, " ")).toContain("not needed: 40m-again.s1p");
  });

  test("tells each band as its own sweep does", () => {
    const all = json<CheckResult>("check", "season/2026-03-07");
    for (const band of Object.keys(BANDS)) {
      const own = json<CheckResult>("check", `season/2026-03-07/${band}.s1p`, "--bands", band);
      const [{ answeredBy: _, best: __, worst: ___, uncertainty: ____, ...alone } = { answeredBy: [] }] = own.bands;
      expect(all.bands.find((each) => each.band === band)).toMatchObject(alone);
    }
  });
});

describe("files named on the command line", () => {
  test("are one deployment where that is said, in any order", () => {
    const files = ["season/2026-03-14/40m.s1p", "season/2026-03-14/20m.s1p", "season/2026-03-28/readings.txt"];
    const one = json<CheckResult>("check", ...files, "--together");
    expect(one.parts.length).toBe(3);
    expect(one.bands.filter(({ best }) => best !== null).map(({ band, restsOn }) => [band, restsOn])).toEqual([
      ["80m", "stretch"],
      ["40m", "curve"],
      ["20m", "curve"],
    ]);
    expect(json<CheckResult>("check", ...files.toReversed(), "--together").bands).toEqual(one.bands);
  });

  test("are several where nothing is said", () => {
    const both = json<CheckResult[]>("check", "season/2026-03-14/40m.s1p", "season/2026-03-14/20m.s1p");
    expect(both.map(({ parts }) => parts.length)).toEqual([1, 1]);
  });

  test("with commas between them are one side of diff", () => {
    const side = (folder: string) => `season/${folder}/40m.s1p,season/${folder}/20m.s1p`;
    const { bands } = json<DiffResult>("diff", side("2026-03-21/before"), side("2026-03-21/after"));
    expect(bands.map(({ band }) => band)).toEqual(["40m", "20m"]);
  });
});

describe("two folders", () => {
  test("that are a deployment each are one comparison", () => {
    const { stdout, exit } = run("diff", "season/2026-03-21/before", "season/2026-03-21/after", "--plan", "itu-r1");
    expect(exit).toBe(0);
    expect(stdout.match(/^Band /gm)?.length).toBe(1);
    expect(stdout.match(/^Likely cause:/gm)?.length).toBe(1);
    expect(stdout.match(/^(?:80|40|20|10)m /gm)?.length).toBe(4);
  });

  test("may hold readings on one side", () => {
    const { bands } = json<DiffResult>("diff", "season/2026-03-14", "season/2026-03-28");
    expect(bands.map(({ band }) => band)).toEqual(["80m", "40m", "20m"]);
  });
});

describe("grade of a season", () => {
  const rows = (...args: string[]) =>
    (
      JSON.parse(run("grade", ...args, "--plan", "itu-r1", "--format", "json").stdout) as {
        sweeps: { sweep: { label: string } }[];
      }
    ).sweeps.map(({ sweep }) => sweep.label);

  test("has a row a deployment, nested ones by themselves", () => {
    expect(rows("season")).toEqual(["2026-03-07", "2026-03-14", "2026-03-21/after", "2026-03-21/before", "2026-03-28"]);
    expect(run("grade", "season").stdout).toContain("5 deployments graded");
  });

  test("has a row a file where that is asked for", () => {
    expect(rows("season", "--each").length).toBe(6 + 4 + 4 + 4 + 1);
  });

  test("leaves sweeps of one range apart", () => {
    expect(rows("flat")).toEqual(["2026-04-01.s1p", "2026-04-02.s1p", "2026-04-03.s1p"]);
  });

  test("counts deployments over time and in groups", () => {
    expect(run("log", "init", "season").exit).toBe(0);
    const log = join(place, "season", "deployments.csv");
    const lines = readFileSync(log, "utf8").trim().split("\n");
    expect(lines.slice(1).map((line) => line.split(",")[0])).toEqual([
      "2026-03-07",
      "2026-03-14",
      "2026-03-21/after",
      "2026-03-21/before",
      "2026-03-28/readings.txt",
    ]);
    const filled = lines.map((line, i) => (i === 0 ? line : line.replace(/,,,/, `,,${i % 2 ? "bent" : "straight"},`)));
    writeFileSync(log, `${filled.join("\n")}\n`);
    const grouped = run("grade", "season", "--plan", "itu-r1", "--group-by", "shape", "--bands", "40m", "--over-time");
    expect(grouped.stdout).toMatch(/40m +bent +3/);
    expect(grouped.stdout).toMatch(/all +40m +2/);
    rmSync(log);
  });

  test("takes rows of the log with one deployment for one", () => {
    writeFileSync(
      join(place, "flat", "deployments.csv"),
      "file,deployment\n2026-04-01.s1p,garden\n2026-04-02.s1p,garden\n2026-04-03.s1p,roof\n",
    );
    // On another day it is another one.
    expect(rows("flat")).toEqual(["2026-04-01.s1p", "2026-04-02.s1p", "2026-04-03.s1p"]);
    writeFileSync(
      join(place, "flat", "deployments.csv"),
      "file,date,deployment\n2026-04-01.s1p,2026-04-01,garden\n2026-04-02.s1p,2026-04-01,garden\n2026-04-03.s1p,2026-04-01,roof\n",
    );
    expect(rows("flat")).toEqual(["garden", "2026-04-03.s1p"]);
    rmSync(join(place, "flat", "deployments.csv"));
  });
});

describe("a page, a picture, a trim", () => {
  test("take a folder for what it is", () => {
    expect(
      run("trim", "season/2026-03-07/40m.s1p", "season/2026-03-07/20m.s1p", "--together", "--band", "40m").exit,
    ).toBe(0);
    expect(run("chart", "season/2026-03-14", "-o", "all.svg").exit).toBe(0);
    expect(run("report", "season/2026-03-14", "--plan", "itu-r1", "-o", "one.html").exit).toBe(0);
    expect(readFileSync(join(place, "one.html"), "utf8")).toContain("80m.s1p (80m)");
  });
});

test("lists noted by hand go through check, diff and grade, with power and tuner stated", () => {
  const lists = JSON.parse(readFileSync(new URL("../reading/noted-lists.json", import.meta.url), "utf8")) as {
    text: string;
  }[];
  const notes = lists.filter((_, i) => i !== 35 && i !== 70).slice(0, 40);
  for (const [i, { text }] of notes.entries()) put(`lists/list-${String(i).padStart(2, "0")}.txt`, text);
  put(
    "station.json",
    JSON.stringify({
      radio: { powerW: 100, tuner: "built-in" },
      antenna: { ratedPowerW: { ssb: 200, cw: 100, data: 50 } },
    }),
  );
  const checked = run(
    "check",
    "lists",
    "--station",
    "station.json",
    "--modes",
    "ssb,cw,data",
    "--plan",
    "us-part97",
    "--class",
    "general",
    "--bands",
    "80m,40m,20m",
    "--json",
  );
  const results = JSON.parse(checked.stdout) as CheckResult[];
  expect([checked.exit, results.length]).toEqual([0, 40]);
  const judged = results.flatMap(({ bands }) => bands.filter(({ restsOn }) => restsOn === "stretch"));
  expect(judged.length).toBeGreaterThan(60);
  // Whatever is within the tuner's reach has a power, and nothing else has.
  for (const { power, worst, limits } of judged.map((band) => ({ ...band, limits: 3 }))) {
    const isReached = (worst?.swr ?? Infinity) <= limits && worst?.isAtLeast === false;
    expect(power.some(({ watts }) => watts !== null)).toBe(isReached && power.length > 0);
  }
  expect(run("grade", "lists", "--plan", "itu-r1").stdout).toContain("40 sweeps graded");
  expect(run("diff", "lists/list-00.txt", "lists/list-01.txt", "--plan", "itu-r1").exit).toBe(0);
});
