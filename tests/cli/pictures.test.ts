/** Pictures that the command writes. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";
import { copyCommand, runCommand } from "./run-command.js";

const SWEEP = "sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p";
const folder = mkdtempSync(join(tmpdir(), "feedpoint-pictures-"));
const at = (name: string) => join(folder, name);
afterAll(() => rmSync(folder, { recursive: true }));

test("a PNG is twice as wide and high as the SVG", () => {
  expect(runCommand(["chart", SWEEP, "--what", "smith", "-o", at("smith.svg")]).exit).toBe(0);
  expect(runCommand(["chart", SWEEP, "--what", "smith", "-o", at("smith.png")]).exit).toBe(0);
  const [, width, height] = /<svg [^>]*width="(\d+)" height="(\d+)"/.exec(readFileSync(at("smith.svg"), "utf8")) ?? [];
  // Width and height stand in the first chunk of a PNG (ISO/IEC 15948, section 11.2.2).
  const png = readFileSync(at("smith.png"));
  expect(png.subarray(1, 4).toString("latin1")).toBe("PNG");
  expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([2 * Number(width), 2 * Number(height)]);
});

test("without the package that makes PNG the command says what to install, and writes nothing", () => {
  const alone = copyCommand(at("command"));
  const sweep = fileURLToPath(new URL(`../../samples/${SWEEP}`, import.meta.url));
  const args = [alone, "chart", sweep, "-o", at("none.png")];
  // A package manager may name the folders of other packages for what it runs.
  const env = { ...process.env, NODE_PATH: "" };
  const { stderr, status } = spawnSync(process.execPath, args, { encoding: "utf8", cwd: folder, env });
  expect(stderr).toContain("npm install @resvg/resvg-js");
  expect(status).toBe(2);
  expect(readdirSync(folder)).not.toContain("none.png");
});

test("a picture never takes the place of a file, unless it is told to", () => {
  const write = (...more: string[]) => runCommand(["chart", SWEEP, "-o", at("swr.svg"), ...more]).exit;
  expect([write(), write(), write("--force")]).toEqual([0, 2, 0]);
  expect(readdirSync(folder).filter((name) => name.includes(".part"))).toEqual([]);
});

const NOTE = "Invented demo data, computed from a model, not a measurement.";

test.each(["swr", "smith"])("the picture %s of the README is what is drawn today", (what) => {
  const args = ["--plan", "itu-r1", "--bands", "40m,20m,15m,10m", "--no-station", "--what", what, "--note", NOTE];
  const committed = readFileSync(new URL(`../../samples/pictures/${what}.svg`, import.meta.url), "utf8");
  expect(runCommand(["chart", SWEEP, ...args]).stdout).toBe(committed);
});
