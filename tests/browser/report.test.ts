import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { reflectionAt } from "@feedpoint/core";
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { runCommand } from "../cli/run-command.js";
import { chromiumPath, startChromium } from "../support/chromium.js";
import { open, violationsOf, widthOf } from "../support/looked-at.js";
import { curveFrom, expectOnCurve, numbersIn } from "../support/readout.js";
import { present } from "../support/sweeps.js";

const SWEEP = "sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p";
const WET = "sweeps/2026-07-11-lantern-bridge-wet-feedline.csv";
const HOSTILE = `<img src=x onerror="window.struck=1">'"</title></script><script>window.struck=1</script>`;

const folder = mkdtempSync(join(tmpdir(), "feedpoint-report-"));
const at = (name: string) => join(folder, name);

/** Writes a report and says where. */
function report(name: string, args: readonly string[]): string {
  const { exit, stderr } = runCommand(["report", ...args, "-o", at(name), "--force"]);
  expect(stderr).toContain(`wrote ${at(name)}`);
  expect(exit).toBe(0);
  return at(name);
}

describe.skipIf(chromiumPath === undefined)("the report in a browser", () => {
  let browser: BrowserContext;
  const pages: Record<string, string> = {};

  beforeAll(async () => {
    browser = await startChromium();
    pages.sweep = report("sweep.html", [SWEEP, "--plan", "itu-r1"]);
    pages.change = report("change.html", ["--before", SWEEP, "--after", WET, "--plan", "itu-r1"]);
    pages.several = report("several.html", [SWEEP, WET, "--plan", "itu-r1", "--bands", "40m,20m"]);
    pages.scalar = report("scalar.html", ["sweeps/2026-06-13-alder-bend-roof-low.csv", "--plan", "us-part97"]);
    pages.station = report("station.html", [SWEEP, "--station", "stations/canal-boat.json"]);
  });
  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true });
  });

  test.each([
    ["sweep", "light"],
    ["change", "dark"],
    ["several", "light"],
    ["scalar", "light"],
    ["station", "dark"],
  ] as const)(
    "%s opens from disk, asks for nothing else, fits a phone, and keeps nobody out in the %s",
    async (name, colorScheme) => {
      const file = pages[name] ?? "";
      const { page, heard } = await open(browser, file);
      await page.locator("svg[data-values]").first().hover();
      expect(heard.filter((line) => !line.startsWith("request: data:"))).toEqual([
        `request: ${pathToFileURL(file).href}`,
      ]);
      await page.setViewportSize({ width: 390, height: 800 });
      expect(await widthOf(page)).toBeLessThanOrEqual(390);
      await page.emulateMedia({ colorScheme });
      expect(await violationsOf(page)).toEqual([]);
      await page.close();
    },
  );

  test("the readout tells what the curve does where the pointer is", async () => {
    const { page } = await open(browser, pages.sweep ?? "");
    const chart = page.locator("figure.wide svg");
    await chart.scrollIntoViewIfNeeded();
    const box = present(await chart.boundingBox(), "chart");
    const [low, high, left, right] = await Promise.all(
      ["low", "high", "left", "right"].map(async (name) => Number(await chart.getAttribute(`data-${name}`))),
    );
    const along = (7.144 - (low ?? 0)) / ((high ?? 0) - (low ?? 0));
    const x = (left ?? 0) + along * ((right ?? 0) - (left ?? 0));
    await page.mouse.move(box.x + (x * box.width) / 1000, box.y + box.height / 2);
    const told = numbersIn(await textOf(page, "figure.wide .readout"));
    expect(told.megahertz).toBeGreaterThan(7.1);
    expect(told.megahertz).toBeLessThan(7.19);
    expectOnCurve(told, curveFrom(SWEEP));
    await page.close();
  });

  test("the arrow keys walk along the curve from sample to sample", async () => {
    const { page } = await open(browser, pages.sweep ?? "");
    const chart = page.locator("figure.wide svg");
    await chart.focus();
    await page.keyboard.press("Home");
    expect(Number(await chart.getAttribute("aria-valuenow"))).toBe(3);
    await page.keyboard.press("ArrowRight");
    const told = numbersIn(present(await chart.getAttribute("aria-valuetext"), "text"));
    expect(told.megahertz).toBeGreaterThan(3);
    expectOnCurve(told, curveFrom(SWEEP));
    await page.keyboard.press("End");
    expect(Number(await chart.getAttribute("aria-valuenow"))).toBe(30);
    await page.close();
  });

  test("on the Smith chart the readout tells the nearest point of the curve", async () => {
    const { page } = await open(browser, pages.sweep ?? "");
    const chart = page.locator("svg[data-smith]");
    await chart.scrollIntoViewIfNeeded();
    const box = present(await chart.boundingBox(), "chart");
    const [centreX, centreY, radius] = await Promise.all(
      ["x", "y", "radius"].map(async (name) => Number(await chart.getAttribute(`data-${name}`))),
    );
    const curve = curveFrom(SWEEP);
    const reflection = present(reflectionAt(curve, 21.2e6), "Γ");
    const scale = box.width / 480;
    await page.mouse.move(
      box.x + ((centreX ?? 0) + (radius ?? 0) * reflection.real) * scale,
      box.y + ((centreY ?? 0) - (radius ?? 0) * reflection.imaginary) * scale,
    );
    const told = numbersIn(await textOf(page, "figure:has(svg[data-smith]) .readout"));
    const there = present(reflectionAt(curve, told.megahertz * 1e6), "Γ");
    expect(Math.hypot(there.real - reflection.real, there.imaginary - reflection.imaginary)).toBeLessThan(0.01);
    expectOnCurve(told, curve);
    await page.close();
  });

  test("a change is told on both sides at once", async () => {
    const { page } = await open(browser, pages.change ?? "");
    await page.locator("figure.wide svg").hover();
    const lines = (await textOf(page, "figure.wide .readout")).split(/(?=after:)/);
    expect(lines.map((line) => line.split(":")[0])).toEqual(["before", "after"]);
    expectOnCurve(numbersIn(lines[0] ?? ""), curveFrom(SWEEP));
    expectOnCurve(numbersIn(lines[1] ?? ""), curveFrom(WET));
    await page.close();
  });

  test.each([
    ["sweep", "A4", 595, 794],
    ["sweep", "Letter", 612, 816],
    ["change", "A4", 595, 794],
    ["station", "Letter", 612, 816],
  ])("%s prints on %s with nothing beyond its edge", async (name, format, points, pixels) => {
    const { page } = await open(browser, pages[name] ?? "", { width: pixels - 106, height: 1000 });
    const pdf = (await page.pdf({ format, preferCSSPageSize: false })).toString("latin1");
    expect(pdf.startsWith("%PDF")).toBe(true);
    expect(Math.abs(Number(/\/MediaBox ?\[0 0 ([\d.]+)/.exec(pdf)?.[1]) - points)).toBeLessThan(1.5);
    await page.emulateMedia({ media: "print" });
    const widths = await page.evaluate(() =>
      Array.from(document.querySelectorAll("table, svg"), (element) => element.getBoundingClientRect().right),
    );
    expect(Math.max(...widths)).toBeLessThanOrEqual(pixels - 106 + 1);
    await page.close();
  });

  test("what a file says stays text", async () => {
    const lines = readFileSync(new URL(`../../samples/${SWEEP}`, import.meta.url), "utf8");
    const file = at(`a <b onmouseover=alert(1)>&amp;.s1p`);
    writeFileSync(file, `! ${HOSTILE}\n${lines}`);
    const { page, heard } = await open(browser, report("hostile.html", [file]));
    expect(await page.evaluate("window.struck")).toBeUndefined();
    expect(await page.locator("img, b[onmouseover]").count()).toBe(0);
    expect(await page.locator("script").count()).toBe(1);
    expect(await page.locator(".comments li").first().textContent()).toBe(HOSTILE);
    expect(await page.title()).toContain("<b onmouseover=alert(1)>&amp;.s1p");
    expect(heard.filter((line) => !line.startsWith("request:"))).toEqual([]);
    await page.close();
  });

  test("ten sweeps of 1,001 points stay below 1 MB", async () => {
    const files = Array.from({ length: 10 }, (_, number) => {
      const rows = Array.from({ length: 1001 }, (_, i) => {
        const megahertz = 1 + (29 * i) / 1000;
        const reactance = 900 * (megahertz / (7 + number / 50) - (7 + number / 50) / megahertz);
        return `${megahertz.toFixed(6)},${(60 + 30 * Math.sin(megahertz)).toFixed(3)},${reactance.toFixed(3)}`;
      });
      const file = at(`invented-${number}.csv`);
      writeFileSync(file, `frequency (MHz),R,X\n${rows.join("\n")}\n`);
      return file;
    });
    const page = report("ten.html", [...files, "--plan", "itu-r1", "--signed-reactance"]);
    expect(readFileSync(page).length).toBeLessThan(1e6);
    const { page: opened, heard } = await open(browser, page);
    expect(await opened.locator("h1").allTextContents()).toHaveLength(11);
    expect(heard.filter((line) => !line.startsWith("request:"))).toEqual([]);
    await opened.close();
  });
});

const textOf = async (page: Page, place: string) => (await page.locator(place).textContent()) ?? "";
