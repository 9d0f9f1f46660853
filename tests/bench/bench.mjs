/**
 * Times feedpoint against named baselines in one run, alternating, and prints ratios of medians: `pnpm bench`.
 *
 * Nothing here decides a test; machines differ and are busy. Needs awk (the table names which) for one row.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { check, planById, readSweeps } from "@feedpoint/core";
import Papa from "papaparse";
import { rowsOf, touchstoneText } from "./made-sweeps.mjs";

const ROUNDS = 9;
/** Short runs, which a busy machine disturbs most. */
const START_ROUNDS = 41;
const FILES = 200;
const SEASON_ROUNDS = 3;
/** Files of the last rows; FEEDPOINT_BENCH_FILES=10000 takes its time. */
const SEASON_FILES = Number(process.env.FEEDPOINT_BENCH_FILES ?? 2000);
const command = fileURLToPath(new URL("../../packages/cli/dist/feedpoint.js", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "feedpoint-bench-"));

function impedanceOf({ re, im }) {
  const size = (1 - re) ** 2 + im ** 2;
  return { r: (50 * (1 - re * re - im * im)) / size, x: (50 * 2 * im) / size };
}

const touchstone = [];
const delimited = [];
for (let file = 0; file < FILES; file++) {
  const rows = rowsOf(file);
  const name = join(folder, `${String(file).padStart(4, "0")}.s1p`);
  writeFileSync(name, touchstoneText(rows));
  touchstone.push(name);
  delimited.push(
    Buffer.from(
      `Frequency (MHz),R (ohm),X (ohm)\n${rows
        .map((row) => ({ ...row, ...impedanceOf(row) }))
        .map(({ megahertz, r, x }) => `${megahertz.toFixed(6)},${r.toFixed(4)},${x.toFixed(4)}`)
        .join("\n")}\n`,
    ),
  );
}

const LEAST_S11 =
  "!/^[!#]/ { m = $2 * $2 + $3 * $3; if (!(FILENAME in least) || m < least[FILENAME]) least[FILENAME] = m } END { for (f in least) print f, sqrt(least[f]) }";
const run = (program, args) => {
  const { status } = spawnSync(program, args, { stdio: ["ignore", "ignore", "inherit"] });
  if (status !== 0) throw new Error(`${program} ended with ${status}`);
};
const buffers = touchstone.map((name) => readFileSync(name));
const texts = delimited.map((bytes) => bytes.toString());
const sweeps = buffers.map((bytes) => readSweeps(bytes, { fileName: "bench.s1p" })[0]);
const plan = planById("itu-r1");

const season = mkdtempSync(join(tmpdir(), "feedpoint-season-"));
const seasonFiles = Array.from({ length: SEASON_FILES }, (_, i) => join(season, `${String(i).padStart(6, "0")}.s1p`));
for (const [i, name] of seasonFiles.entries()) writeFileSync(name, touchstoneText(rowsOf(i)));
const gradeSeason = (jobs) =>
  run(process.execPath, [command, "grade", season, "--format", "ndjson", "--jobs", String(jobs)]);
const LEAST_SWR = LEAST_S11.replace("sqrt(least[f])", "(1 + sqrt(least[f])) / (1 - sqrt(least[f]))");

/** What is timed, each against its baseline. */
const comparisons = [
  {
    what: `Touchstone bytes to Sweep, ${FILES} files of 1,001 points`,
    against: "one awk process finding the least |S11| per file",
    ours: () => {
      for (const bytes of buffers) readSweeps(bytes, { fileName: "bench.s1p" });
    },
    theirs: () => run("awk", [LEAST_S11, ...touchstone]),
  },
  {
    what: "the same with the files read from the disk",
    against: "the same awk process",
    ours: () => {
      for (const name of touchstone) readSweeps(readFileSync(name), { fileName: name });
    },
    theirs: () => run("awk", [LEAST_S11, ...touchstone]),
  },
  {
    what: "CSV bytes to Sweep",
    against: "papaparse splitting the same text into strings",
    ours: () => {
      for (const bytes of delimited) readSweeps(bytes, { fileName: "bench.csv" });
    },
    theirs: () => {
      for (const text of texts) Papa.parse(text, { delimiter: ",", newline: "\n" });
    },
  },
  {
    what: "check of sweeps in memory",
    against: "reading them from Touchstone bytes",
    ours: () => {
      for (const sweep of sweeps) check(sweep, { plan });
    },
    theirs: () => {
      for (const bytes of buffers) readSweeps(bytes, { fileName: "bench.s1p" });
    },
  },
  {
    what: "feedpoint check of one file, whole command",
    against: "node -e 0",
    rounds: START_ROUNDS,
    ours: () => run(process.execPath, [command, "check", touchstone[0]]),
    theirs: () => run(process.execPath, ["-e", "0"]),
  },
  {
    what: `feedpoint grade --format ndjson, whole command, ${SEASON_FILES} files, one thread for each processor`,
    against: "one awk process finding the least SWR per file",
    rounds: SEASON_ROUNDS,
    ours: () => gradeSeason(availableParallelism()),
    theirs: () => run("awk", [LEAST_SWR, ...seasonFiles]),
  },
  {
    what: "the same with two workers",
    against: "one",
    rounds: SEASON_ROUNDS,
    ours: () => gradeSeason(2),
    theirs: () => gradeSeason(1),
  },
];

const median = (numbers) => numbers.toSorted((a, b) => a - b)[numbers.length >> 1];
const timed = (work) => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

console.log(
  `Node ${process.version}; ratio of medians over ${ROUNDS} alternating rounds (${START_ROUNDS} for check, ${SEASON_ROUNDS} for grade); below 1 is faster than the baseline.`,
);
for (const { what, against, rounds = ROUNDS, ours, theirs } of comparisons) {
  const times = { ours: [], theirs: [] };
  for (let round = -1; round < rounds; round++) {
    const mine = timed(ours);
    const other = timed(theirs);
    if (round < 0) continue; // the first round warms up
    times.ours.push(mine);
    times.theirs.push(other);
  }
  const ratio = median(times.ours) / median(times.theirs);
  console.log(`${ratio.toFixed(2).padStart(6)}  ${what}, against ${against}`);
}
rmSync(folder, { recursive: true });
rmSync(season, { recursive: true });
