/** Many files: workers, shards and runs that are broken off. */
import { spawn } from "node:child_process";
import { mkdirSync, readdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { fc } from "../support/property.js";
import { command, folder, type Line, linesOf, place, run, SAMPLES, sweepText } from "./grading-folder.js";

afterAll(() => rmSync(place, { recursive: true }));

/** More files than it takes to start workers. */
const MANY = 1040;
const many = folder("many");
for (let i = 0; i < MANY; i++) writeFileSync(join(many, `${String(i).padStart(4, "0")}.s1p`), sweepText(i));
const whole = run(["grade", "many", "--format", "ndjson", "--jobs", "1"]);

describe("the grades of a folder", () => {
  test("are the numbers of check on each file, to the last digit", () => {
    const samples = readdirSync(SAMPLES).filter((name) => name !== "deployments.csv");
    const plan = ["--plan", "us-part97", "--format", "ndjson"];
    const graded = linesOf(run(["grade", ".", ...plan], { cwd: SAMPLES }).stdout);
    const checked = linesOf(run(["check", ...samples.sort(), ...plan], { cwd: SAMPLES }).stdout);
    expect(graded.map(({ sweep }) => sweep.file)).toEqual(samples);
    const bandsOf = ({ bands }: Line) =>
      bands.map(({ band, bestSwr, bestHz, withinLimitFraction, sweptFraction, need }) => ({
        band,
        bestSwr,
        bestHz,
        withinLimitFraction,
        sweptFraction,
        need,
      }));
    type CheckBand = { best: { swr: number; frequencyHz: number } | null; withinLimit: { fraction: number } } & Record<
      string,
      unknown
    >;
    const wanted = checked.map(({ bands }) =>
      (bands as readonly CheckBand[]).map(({ band, best, withinLimit, sweptFraction, need }) => ({
        band,
        bestSwr: best?.swr ?? null,
        bestHz: best?.frequencyHz ?? null,
        withinLimitFraction: withinLimit.fraction,
        sweptFraction,
        need,
      })),
    );
    expect(graded.map(bandsOf)).toEqual(wanted);
  });

  test("are the same to the byte in every run, whatever --jobs", () => {
    expect(linesOf(whole.stdout)).toHaveLength(MANY);
    expect(whole.exit).toBe(0);
    for (const jobs of ["2", "5"]) {
      expect(run(["grade", "many", "--format", "ndjson", "--jobs", jobs])).toEqual(whole);
    }
  });

  test("are put together from shards, each file in one", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5 }), (of) => {
        const parts = Array.from({ length: of }, (_, i) =>
          run(["grade", "many", "--format", "ndjson", "--jobs", "1", "--shard", `${i + 1}/${of}`]).stdout.split("\n"),
        );
        expect(parts.flat().sort()).toEqual([...whole.stdout.split("\n"), ...Array(of - 1).fill("")].sort());
      }),
      { numRuns: 2 },
    );
    const few = run(["grade", "many/0000.s1p", "many/0001.s1p", "--format", "ndjson", "--shard", "3/3"]);
    expect(few).toEqual({ stdout: "", stderr: "", exit: 0 });
  });

  test("lose no file but the one that kills its worker", () => {
    const killer = join(place, "killer.cjs");
    writeFileSync(
      killer,
      `const fs = require("node:fs");
       const { isMainThread } = require("node:worker_threads");
       const open = fs.openSync;
       if (!isMainThread) {
         fs.openSync = (path, ...more) => (String(path).endsWith("0100.s1p") ? process.exit(3) : open(path, ...more));
         require("node:module").syncBuiltinESMExports();
       }`,
    );
    const { stdout, stderr, exit } = run(["grade", "many", "--format", "ndjson", "--jobs", "2"], {
      nodeOptions: `--require ${killer}`,
    });
    const wanted = whole.stdout.split("\n").filter((line) => !line.includes("0100.s1p"));
    expect(stdout.split("\n")).toEqual(wanted);
    expect(stderr).toBe("feedpoint: many/0100.s1p: the thread that read it ended.\n");
    expect(exit).toBe(2);
  });
});

describe("a run that is broken off", () => {
  /** Runs until the first output, then does something to it. */
  function runUntilOutput(args: readonly string[], then: (child: ReturnType<typeof spawn>) => void) {
    return new Promise<{ stdout: string; stderr: string; exit: number | null }>((resolve) => {
      const child = spawn(process.execPath, [command, ...args], { cwd: place, stdio: ["ignore", "pipe", "pipe"] });
      let [stdout, stderr] = ["", ""];
      child.stdout.once("data", () => then(child));
      child.stdout.on("data", (data) => {
        stdout += data;
      });
      child.stderr.on("data", (data) => {
        stderr += data;
      });
      child.on("close", (exit) => resolve({ stdout, stderr, exit }));
    });
  }

  /** The same files again and again under other names: a run long enough to be interrupted. */
  const long = ["grade", ...Array.from({ length: 40 }, (_, i) => `long/${i}`), "--format", "ndjson"];
  mkdirSync(join(place, "long"));
  for (let i = 0; i < 40; i++) {
    mkdirSync(join(place, "long", String(i)));
    for (let k = 0; k < 20; k++) symlinkSync(join(many, "0000.s1p"), join(place, "long", String(i), `${k}.s1p`));
  }

  test.each(["1", "2"])(
    "by Ctrl-C has written whole lines, says how far it came and exits with 130 (--jobs %s)",
    async (jobs) => {
      const { stdout, stderr, exit } = await runUntilOutput([...long, "--jobs", jobs], (child) => child.kill("SIGINT"));
      const done = linesOf(stdout).length;
      expect(stdout.endsWith("\n")).toBe(true);
      expect(done).toBeLessThan(800);
      expect(stderr).toBe(`feedpoint: interrupted after ${done} of 800 files.\n`);
      expect(exit).toBe(130);
    },
  );

  test("by its reader ends in silence", async () => {
    const { stderr, exit } = await runUntilOutput([...long, "--jobs", "2"], (child) => child.stdout?.destroy());
    expect(stderr).toBe("");
    expect(exit).toBe(0);
  });
});
