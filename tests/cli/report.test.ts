/** What the report command writes, and when it does not. */
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { check, planById, readSweeps } from "@feedpoint/core";
import { afterAll, expect, test } from "vitest";
import { checkColumns, RANGE_KEY, sweptRows } from "../../packages/answers/src/tables/check-columns.js";
import { shown } from "../../packages/answers/src/tables/column.js";
import { runCommand } from "./run-command.js";

const SWEEP = "sweeps/2026-03-14-heron-lock-sloper.s1p";
const folder = mkdtempSync(join(tmpdir(), "feedpoint-report-"));
const at = (name: string) => join(folder, name);
afterAll(() => rmSync(folder, { recursive: true }));

test("the same sweep gives the same page, byte for byte", () => {
  for (const name of ["one.html", "two.html"]) expect(runCommand(["report", SWEEP, "-o", at(name)]).exit).toBe(0);
  expect(readFileSync(at("one.html"), "utf8")).toBe(readFileSync(at("two.html"), "utf8"));
});

test("a file that cannot be read is named in the page, and the exit code says so", () => {
  mkdirSync(at("mixed"));
  copyFileSync(fileURLToPath(new URL(`../../samples/${SWEEP}`, import.meta.url)), at("mixed/good.s1p"));
  writeFileSync(at("mixed/bad.csv"), "shopping\nmilk\n");
  const { exit, stderr } = runCommand(["report", at("mixed"), "-o", at("mixed.html")]);
  expect(exit).toBe(2);
  expect(stderr).toContain("bad.csv");
  const page = readFileSync(at("mixed.html"), "utf8");
  expect(page).toContain("<h2>Not read</h2>");
  expect(page).toMatch(/<li>[^<]*bad\.csv/);
  expect(page).toContain("good.s1p");
});

test("a page that cannot be written leaves nothing behind", () => {
  const before = readdirSync(folder);
  expect(runCommand(["report", SWEEP, "-o", at("no-such-folder/page.html")]).exit).toBe(2);
  expect(readdirSync(folder)).toEqual(before);
});

test("the cautions stand whole in every report", () => {
  const page = readFileSync(at("one.html"), "utf8");
  const { cautions } = JSON.parse(runCommand(["check", SWEEP, "--json"]).stdout) as { cautions: string[] };
  expect(cautions.length).toBeGreaterThan(3);
  for (const caution of cautions) expect(page).toContain(caution.replaceAll("'", "&#39;"));
});

test("a folder's report holds what its deployment log teaches, as grade tells it", () => {
  const asked = ["sweeps", "--plan", "itu-r1", "--bands", "20m", "--group-by", "counterpoise", "--best", "20m"];
  expect(runCommand(["report", ...asked, "--over-time", "mooring", "-o", at("season.html")]).exit).toBe(0);
  const page = readFileSync(at("season.html"), "utf8");
  for (const title of ["Ranking for 20m", "By counterpoise", "Over time"]) expect(page).toContain(`<h2>${title}</h2>`);
  // What the log says of a sweep stands at its head.
  expect(page).toContain("<dt>counterpoise</dt><dd>4 m in water</dd>");
  const { ranking } = JSON.parse(runCommand(["grade", ...asked, "--json"]).stdout) as {
    ranking: { rank: number; graded: { sweep: { label: string } } }[];
  };
  const rows = [...page.matchAll(/<tr><th scope="row" class="n">(\d+)<\/th><td(?: class="long")?>([^<]*)/g)];
  expect(rows.map(([, rank, name]) => `${rank} ${name}`)).toEqual(
    ranking.map(({ rank, graded }) => `${rank} ${graded.sweep.label}`),
  );
});

test("the bands at a glance leave out the ends of each band, which the segments have", () => {
  const sweep = readSweeps(readFileSync(new URL(`../../samples/${SWEEP}`, import.meta.url)), {})[0];
  const plan = planById("itu-r1");
  if (sweep === undefined || plan === null) throw new Error("no sample");
  const result = check(sweep, { plan, bands: ["40m"] });
  const { columns } = shown(checkColumns(result.limits), sweptRows(result));
  // Found by its key, whatever its title.
  expect(columns.filter(({ key }) => key === RANGE_KEY)).toEqual([expect.objectContaining({ title: "MHz" })]);
  const [, glance = ""] =
    /<caption>The bands at a glance<\/caption>([\s\S]*?)<\/thead>/.exec(readFileSync(at("one.html"), "utf8")) ?? [];
  const titles = [...glance.matchAll(/<th [^>]*>([^<]*)/g)].map(([, title]) => title);
  expect(titles).toEqual(columns.filter(({ key }) => key !== RANGE_KEY).map(({ title }) => title));
});

test("dial frequencies stand in the report of a sweep", () => {
  expect(runCommand(["report", SWEEP, "--at", "14.074", "--modes", "data", "-o", at("dial.html")]).exit).toBe(0);
  expect(readFileSync(at("dial.html"), "utf8")).toContain("14.0740");
});
