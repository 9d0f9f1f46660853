/** One log for sweeps and for reports: what they say together. */
import { cpSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import { present } from "../support/sweeps.js";
import { runCommand, runLines } from "./run-command.js";

const samples = fileURLToPath(new URL("../../samples/", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "feedpoint-heard-"));
afterAll(() => rmSync(folder, { recursive: true }));

const DRY = "2026-05-02-lantern-bridge-bridge-pole.s1p";
const WET = "2026-07-11-lantern-bridge-wet-feedline.csv";
for (const name of [DRY, WET]) cpSync(join(samples, "sweeps", name), join(folder, name));

const ORDER = ["dry", "wet", "wet", "dry", "dry", "wet", "wet", "dry"];
const minute = (slot: number) => `2026-07-11 18:${String(2 * slot).padStart(2, "0")}`;

/** Eight receivers that hear the second by so many dB better. */
function reports(name: string, better: number): string {
  const rows = [..."ABCDEFGH"].flatMap((letter, i) =>
    ORDER.map(
      (on, slot) => `${minute(slot)},Q0AAA,Q1${letter}X,20m,WSPR,${-8 + (on === "wet" ? better : 0) + (i % 2)}`,
    ),
  );
  writeFileSync(join(folder, name), `time,tx,rx,band,mode,snr\n${rows.join("\n")}\n`);
  return join(folder, name);
}

const turns = ORDER.map(
  (on, slot) => `${slot > 1 ? "" : on === "dry" ? DRY : WET},${on},,${minute(slot)},${minute(slot + 1)}`,
);
writeFileSync(join(folder, "deployments.csv"), `file,deployment,date,up,down\n${turns.join("\n")}\n`);

describe("more loss on the way", () => {
  test.each([
    [-3, "loss-confirmed", "the drop confirms the loss"],
    [0, "loss-not-heard", "the loss is not heard"],
  ])("and %i dB on the air: %s", (better, agreement, words) => {
    const heard = reports(`heard${better}.txt`, better);
    const args = [
      "grade",
      join(folder, DRY),
      join(folder, WET),
      "--log",
      join(folder, "deployments.csv"),
      "--heard",
      heard,
    ];
    const [beside] = JSON.parse(runCommand([...args, "--json"]).stdout).onAir;
    expect(beside).toMatchObject({ before: "dry", after: "wet", band: "20m", agreement });
    expect(beside.loss.at10MHzDb).toBeGreaterThan(0.8);
    expect(runCommand(args).stdout).toContain(words);
  });
});

test("a report has the same table", () => {
  const heard = reports("heard.txt", -3);
  const files = [join(folder, DRY), join(folder, WET)];
  const { stdout } = runCommand([
    "report",
    ...files,
    "--log",
    join(folder, "deployments.csv"),
    "--heard",
    heard,
    "-o",
    "-",
  ]);
  expect(stdout).toContain("the drop confirms the loss");
});

test("without a log of what was up there is nothing to put together", () => {
  const { exit, stderr } = runCommand(["grade", join(folder, DRY), "--no-log", "--heard", join(folder, "heard.txt")]);
  expect(exit).toBe(2);
  expect(stderr).toContain("--heard needs a log");
});

test("the page of who heard what has a map and is no page over another", () => {
  const page = join(folder, "heard.html");
  expect(runCommand(["heard", "reports", "-o", page]).exit).toBe(0);
  expect(runCommand(["heard", "reports", "-o", page]).stderr).toContain("exists already");
  expect(runCommand(["heard", "reports", "-o", "-"]).stdout.match(/class="chart map"/g)).toHaveLength(2);
});

const REFUSED = [
  ["heard reports --compare sloper", "--compare takes the names of two deployments"],
  ["heard reports --compare sloper,loop", 'No report is of "loop"; reports are of sloper, vee.'],
  ["heard reports --bands 160m", "There is no report of"],
  [
    "heard sweeps/2026-02-21-tansy-reach-trimmed.txt --log reports/deployments.csv",
    "no line names the columns of a table of reports",
  ],
  ["heard nowhere.csv --log reports/deployments.csv", "there is no such file or folder"],
] as const;
const refusals = runLines(REFUSED.map(([line]) => line));

test.each(REFUSED)("%s says what is wrong", (line, words) => {
  const { exit, stderr } = present(refusals.get(line), line);
  expect(exit).toBe(2);
  expect(stderr).toContain(words);
});
