/** Where commands write what they make: standard output, files, and links to files. */
import {
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import { runCommand } from "./run-command.js";

const SWEEP = "sweeps/2026-03-14-heron-lock-sloper.s1p";
const folder = mkdtempSync(join(tmpdir(), "feedpoint-writing-"));
const at = (name: string) => join(folder, name);
afterAll(() => rmSync(folder, { recursive: true }));

describe("- is standard output", () => {
  for (const [args, start] of [
    [["report", SWEEP, "-o", "-"], "<!doctype html>"],
    [["report", SWEEP, "--output", "-"], "<!doctype html>"],
    [["page", "-o", "-"], "<!doctype html>"],
    [["chart", SWEEP, "-o", "-"], "<svg"],
    [["chart", SWEEP, "--output=-"], "<svg"],
    [["convert", SWEEP, "--to", "csv", "-o", "-"], "# "],
    [["station", "init", "-"], "{"],
  ] as const) {
    test(`for ${args.filter((word) => word !== SWEEP).join(" ")}`, () => {
      const { stdout, stderr, exit } = runCommand(args);
      expect(stdout.slice(0, start.length).toLowerCase()).toBe(start);
      expect(stderr).toBe("");
      expect(exit).toBe(0);
      expect(existsSync(fileURLToPath(new URL("../../samples/-", import.meta.url)))).toBe(false);
    });
  }

  test("and the page is the one that is written into a file", () => {
    expect(runCommand(["report", SWEEP, "-o", at("page.html")]).stderr).toBe(`feedpoint: wrote ${at("page.html")}\n`);
    expect(runCommand(["report", SWEEP, "-o", "-"]).stdout).toBe(readFileSync(at("page.html"), "utf8"));
  });
});

describe("a link that leads to no file", () => {
  const convert = (target: string, ...more: string[]) =>
    runCommand(["convert", SWEEP, "--to", "csv", "-o", at(target), ...more]);

  test("is left as it is without --force", () => {
    symlinkSync("not-yet.csv", at("refused.csv"));
    const { stderr, exit } = convert("refused.csv");
    expect(stderr).toBe(`feedpoint: ${at("refused.csv")} exists already. Say --force to write over it.\n`);
    expect(exit).toBe(2);
    expect(lstatSync(at("refused.csv")).isSymbolicLink()).toBe(true);
    expect(existsSync(at("not-yet.csv"))).toBe(false);
  });

  test("is followed with --force, from link to link, and goes on leading there", () => {
    mkdirSync(at("drawer"));
    symlinkSync("drawer/between.csv", at("followed.csv"));
    symlinkSync("made.csv", at("drawer/between.csv"));
    expect(convert("followed.csv", "--force")).toMatchObject({ stderr: "", exit: 0 });
    for (const link of ["followed.csv", "drawer/between.csv"]) expect(lstatSync(at(link)).isSymbolicLink()).toBe(true);
    expect(readFileSync(at("drawer/made.csv"), "utf8")).toBe(runCommand(["convert", SWEEP, "--to", "csv"]).stdout);
  });

  test("is told of with --force where the folder that it leads to is not there", () => {
    symlinkSync("gone/away.csv", at("astray.csv"));
    const before = readdirSync(folder);
    const { stderr, exit } = convert("astray.csv", "--force");
    expect(stderr).toBe(
      `feedpoint: ${at("astray.csv")} is a link to ${at("gone/away.csv")}, and the folder of that is not there.\n`,
    );
    expect(exit).toBe(2);
    expect(readdirSync(folder)).toEqual(before);
  });

  test("is told of with --force where it leads in a circle", () => {
    symlinkSync("circle.csv", at("circle.csv"));
    expect(convert("circle.csv", "--force")).toMatchObject({
      stderr: `feedpoint: ${at("circle.csv")}: its links lead in a circle.\n`,
      exit: 2,
    });
  });
});

test("a file is kept without --force and replaced with it", () => {
  writeFileSync(at("kept.csv"), "mine");
  const args = ["convert", SWEEP, "--to", "csv", "-o", at("kept.csv")];
  expect(runCommand(args).exit).toBe(2);
  expect(readFileSync(at("kept.csv"), "utf8")).toBe("mine");
  expect(runCommand([...args, "--force"]).exit).toBe(0);
  expect(readFileSync(at("kept.csv"), "utf8")).not.toBe("mine");
});
