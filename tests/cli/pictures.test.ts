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

interface Making {
  readonly PICTURES: readonly { readonly name: string; readonly args: readonly string[] }[];
}

const making = new URL("../../samples/making/pictures.mjs", import.meta.url).href;
const { PICTURES }: Making = await import(making);

test.each(PICTURES)("the picture $name of the README is what is drawn today", ({ name, args }) => {
  const committed = readFileSync(new URL(`../../samples/pictures/${name}.svg`, import.meta.url), "utf8");
  expect(runCommand(args).stdout).toBe(committed);
});

const POLE = "sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p";
const WET = "sweeps/2026-07-11-lantern-bridge-wet-feedline.csv";
const MANY = ["--plan", "itu-r1", "--no-station"];

test("the grid has a row a deployment, filled as far as the band is within the limit, with the best SWR", () => {
  const bands = ["--bands", "40m,20m"];
  const { stdout } = runCommand(["chart", POLE, WET, ...MANY, ...bands, "--what", "grid"]);
  const graded = JSON.parse(runCommand(["grade", POLE, WET, ...MANY, ...bands, "--no-log", "--json"]).stdout);
  const cells = graded.sweeps.flatMap((each: { bands: readonly object[] }) => each.bands);
  expect(cells).toHaveLength(4);
  const shares = [...stdout.matchAll(/<rect class="share"[^>]* width="([\d.]+)"/g)].map(([, width]) => Number(width));
  const frames = [...stdout.matchAll(/<rect class="frame"[^>]* width="([\d.]+)"/g)].map(([, width]) => Number(width));
  for (const [i, { bestSwr, withinLimitFraction }] of cells.entries()) {
    expect((shares[i] ?? 0) / (frames[i] ?? 1)).toBeCloseTo(withinLimitFraction, 2);
    expect(stdout).toContain(`>${bestSwr.toFixed(2)}</text>`);
  }
});

test("the curves of one band lie over each other, each named, and take one band", () => {
  const args = ["chart", POLE, WET, ...MANY, "--what", "curves"];
  const { stdout } = runCommand([...args, "--bands", "40m"]);
  expect(stdout.match(/<path class="line b\d" style="[^"]*" d="M[^"]{100,}"/g)).toHaveLength(2);
  expect(stdout).toMatch(/1 2026-05-02-lantern.*2 2026-07-11-lantern/s);
  for (const bands of [[], ["--bands", "40m,20m"]]) {
    const { stderr, exit } = runCommand([...args, ...bands]);
    expect([stderr, exit]).toEqual([expect.stringContaining("--bands 40m"), 2]);
  }
});

test("a report of several opens with the grid, and draws what goes over time where that is asked", () => {
  const report = (...more: string[]) =>
    runCommand(["report", POLE, WET, ...MANY, "--bands", "40m", ...more, "-o", "-"]).stdout;
  expect(report()).toMatch(/At a glance[\s\S]*<svg class="chart season"[\s\S]*Grades/);
  expect(report()).not.toContain("<h2>Over time</h2>");
  expect(report("--over-time")).toContain("<h2>Over time</h2>");
});
