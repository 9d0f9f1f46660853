/**
 * Times feedpoint against named baselines in one run, alternating, and prints ratios of medians: `pnpm bench`.
 *
 * Nothing here decides a test; machines differ and are busy. Needs awk (the table names which) for one row.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { check, planById, readSweeps } from "@feedpoint/core";
import Papa from "papaparse";

const ROUNDS = 9;
const FILES = 200;
const POINTS = 1001;
const command = fileURLToPath(new URL("../../packages/cli/dist/feedpoint.js", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "feedpoint-bench-"));

/** A sweep of a series resonance at 7.1 MHz behind a line, with a little deterministic unrest, as rows of f, Γ, Z, SWR. */
function rowsOf(seed) {
  let state = seed + 1;
  const unrest = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state / 2 ** 32 - 0.5) * 0.002;
  };
  return Array.from({ length: POINTS }, (_, i) => {
    const megahertz = 1 + (29 * i) / (POINTS - 1);
    const x = 12 * 60 * (megahertz / 7.1 - 7.1 / megahertz);
    const size = (60 + 50) ** 2 + x * x;
    const angle = -0.9 * megahertz;
    const re = ((60 - 50) * (60 + 50) + x * x) / size;
    const im = (x * (60 + 50) - x * (60 - 50)) / size;
    return {
      megahertz,
      re: re * Math.cos(angle) - im * Math.sin(angle) + unrest(),
      im: re * Math.sin(angle) + im * Math.cos(angle) + unrest(),
    };
  });
}

function impedanceOf({ re, im }) {
  const size = (1 - re) ** 2 + im ** 2;
  return { r: (50 * (1 - re * re - im * im)) / size, x: (50 * 2 * im) / size };
}

const touchstone = [];
const delimited = [];
for (let file = 0; file < FILES; file++) {
  const rows = rowsOf(file);
  const name = join(folder, `${String(file).padStart(4, "0")}.s1p`);
  writeFileSync(
    name,
    `! bench\n# MHz S RI R 50\n${rows.map(({ megahertz, re, im }) => `${megahertz.toFixed(6)} ${re.toFixed(6)} ${im.toFixed(6)}`).join("\n")}\n`,
  );
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

/** What is timed, each against its baseline. */
const comparisons = [
  {
    what: `Touchstone bytes to Sweep, ${FILES} files of ${POINTS} points`,
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
    ours: () => run(process.execPath, [command, "check", touchstone[0]]),
    theirs: () => run(process.execPath, ["-e", "0"]),
  },
];

const median = (numbers) => numbers.toSorted((a, b) => a - b)[numbers.length >> 1];
const timed = (work) => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

console.log(
  `Node ${process.version}; ratio of medians over ${ROUNDS} alternating rounds; below 1 is faster than the baseline.`,
);
for (const { what, against, ours, theirs } of comparisons) {
  const times = { ours: [], theirs: [] };
  for (let round = -1; round < ROUNDS; round++) {
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
