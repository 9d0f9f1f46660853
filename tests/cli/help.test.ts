/** The help names commands that work, and what a shell offers is what the help lists. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import { copyCommand, runCommand, runEach, splitArguments } from "./run-command.js";

const place = mkdtempSync(join(tmpdir(), "feedpoint-help-"));
afterAll(() => rmSync(place, { recursive: true }));
const samples = fileURLToPath(new URL("../../samples/", import.meta.url));
const program = join(dirname(copyCommand(join(place, "command"))), "program.js");

const helps = new Map<string, string>();
/** The help of a command, which is asked for once. */
function helpOf(...path: string[]): string {
  const key = path.join(" ");
  const help = helps.get(key) ?? runCommand([...path, "--help"]).stdout;
  helps.set(key, help);
  return help;
}
const commands = [...helpOf().matchAll(/^ {2}([a-z]+) .*/gm)]
  .map(([, name]) => name ?? "")
  .filter((name) => name !== "feedpoint" && name !== "help");

describe.each(commands)("the help of %s", (name) => {
  // Long ones go on in the next line.
  const help = helpOf(name).replaceAll(/ \\\n +/g, " ");
  const examples = [...help.matchAll(/^ {2}feedpoint (.*)$/gm)].map(([, line]) => line ?? "");

  test("ends with examples", () => {
    expect(examples.length).toBeGreaterThan(0);
  });

  // A folder that holds what the examples name.
  const folder = join(place, name);
  mkdirSync(folder, { recursive: true });
  const given = (to: string, from: string) => cpSync(join(samples, from), join(folder, to), { recursive: true });
  given("sweeps", "sweeps");
  if (examples.some((line) => line.startsWith("log init"))) rmSync(join(folder, "sweeps/deployments.csv"));
  given("sweep.s1p", "sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p");
  given("before.s1p", "sweeps/2026-03-14-heron-lock-sloper.s1p");
  given("after.s1p", "sweeps/2026-05-30-cuckoo-basin-counterpoise-deck.s1p");
  given("reports.csv", "reports/2026-09-05-gosling-lock-evening.csv");
  given("log.adi", "reports/2026-09-06-gosling-lock-morning.adi");
  given("deployments.csv", "reports/deployments.csv");
  given("line.s1p", "lines/2026-07-11-lantern-bridge-wet-feedline-short.s1p");
  const outcomes = runEach(
    examples.map((line) => ({ args: splitArguments(line), folder })),
    program,
  );

  test.each(examples.map((line, i) => [line, i] as const))("has an example that works: %s", (_, i) => {
    const { exit, stderr = "" } = outcomes[i] ?? {};
    expect({ exit, stderr: stderr.replaceAll(/^(feedpoint: (wrote|added|.* already)|\* | {2}).*\n/gm, "") }).toEqual({
      exit: 0,
      stderr: "",
    });
  });
});

/** What bash offers for the last of some words. */
function offeredByBash(...words: string[]): readonly string[] {
  const script = join(place, "feedpoint.bash");
  writeFileSync(script, runCommand(["completion", "bash"]).stdout);
  const { stdout } = spawnSync(
    "bash",
    [
      "-c",
      `source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _feedpoint; printf '%s\\n' "\${COMPREPLY[@]}"`,
      "bash",
      script,
      "feedpoint",
      ...words,
    ],
    { encoding: "utf8" },
  );
  return stdout.split("\n").filter((word) => word !== "");
}

const hasBash = spawnSync("bash", ["-c", ":"]).status === 0;

describe("completion", () => {
  test.skipIf(!hasBash)("bash offers commands, subcommands, options and values", () => {
    expect(offeredByBash("ch")).toEqual(["check", "chart"]);
    expect(offeredByBash("log", "")).toEqual(["init", "update"]);
    expect(offeredByBash("log", "init", "--f")).toEqual(["--force"]);
    expect(offeredByBash("check", "x.s1p", "--plan", "itu-r")).toEqual(["itu-r1", "itu-r2", "itu-r3"]);
    expect(offeredByBash("check", "--require", "")).toEqual(["pass", "partial"]);
    expect(offeredByBash("schema", "st")).toEqual(["station"]);
    // Nothing of its own: bash then offers the names of files.
    expect(offeredByBash("check", "swe")).toEqual([]);
    expect(offeredByBash("report", "x.s1p", "-o", "re")).toEqual([]);
  });

  test.each(["bash", "zsh", "fish"])("%s: every option of every command is there", (shell) => {
    const script = runCommand(["completion", shell]).stdout;
    for (const name of commands) {
      for (const [, option = ""] of helpOf(name).matchAll(/^ {2}(?:-\w, )?(--[a-z-]+)/gm)) {
        const form = shell === "fish" ? `-l ${option.slice(2)}` : option;
        if (option !== "--help") expect(script, `${name} ${option}`).toContain(form);
      }
    }
  });

  test.each(["bash", "zsh", "fish"])("%s finds nothing wrong with its script, where it is installed", (shell) => {
    const script = join(place, `script.${shell}`);
    writeFileSync(script, runCommand(["completion", shell]).stdout);
    const { status, stderr, error } = spawnSync(shell, ["-n", script], { encoding: "utf8" });
    if (error === undefined) expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  });
});

test.each([
  ["--modes", "constructor", "There is no mode"],
  ["--bands", "constructor", "There is no band"],
  ["--at", "toString", "is neither a frequency nor a common activity"],
  ["--columns", "__proto__", "is no column name"],
  ["--plan", "__proto__", "There is no plan"],
])("what every object has is no name: %s %s", (option, value, says) => {
  const { stderr, exit } = runCommand(["check", "sweeps/2026-03-14-heron-lock-sloper.s1p", option, value]);
  expect(exit).toBe(2);
  expect(stderr).toContain(says);
});
