/** The page as a user has it: opened from disk in Chromium, and held against what the command says. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { runCommand, runEach } from "../cli/run-command.js";
import { chromiumPath, startChromium } from "../support/chromium.js";
import { type Opened, open, violationsOf, widthOf } from "../support/looked-at.js";
import { choose, downloaded, expectSameTable, factsIn, factsOf, idle, saved, tabTo } from "../support/used-page.js";

const SAMPLES = fileURLToPath(new URL("../../samples/", import.meta.url));
const SWEEPS = readdirSync(join(SAMPLES, "sweeps")).filter((name) => name !== "deployments.csv");
const DRY = "2026-05-02-lantern-bridge-bridge-pole.s1p";
const WET = "2026-07-11-lantern-bridge-wet-feedline.csv";
/** Of few points, where those do not matter. */
const SHORT = "2026-02-21-tansy-reach-trimmed.txt";
const PHONE = { width: 360, height: 740 };

const folder = mkdtempSync(join(tmpdir(), "feedpoint-page-"));
const at = (name: string) => join(folder, name);
const FILE = at("feedpoint.html");
const made = runCommand(["page", "-o", FILE]);

function written(name: string, content: string | Uint8Array): string {
  writeFileSync(at(name), content);
  return at(name);
}

test("the page of the command is the page of the build, small enough for a slow line", () => {
  expect(made).toMatchObject({ exit: 0, stdout: "" });
  const page = readFileSync(FILE);
  expect(page.equals(readFileSync(new URL("../../packages/page/dist/feedpoint.html", import.meta.url)))).toBe(true);
  expect(gzipSync(page, { level: 9 }).length).toBeLessThan(450_000);
});

describe.skipIf(chromiumPath === undefined)("the page in a browser", () => {
  let browser: BrowserContext;

  beforeAll(async () => {
    browser = await startChromium();
  });
  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true });
  });

  async function openPage(size?: { readonly width: number; readonly height: number }): Promise<Opened> {
    const opened = await open(browser, FILE, size);
    await opened.page.waitForSelector("#plan option", { state: "attached" });
    return opened;
  }

  let shared: Page | null = null;

  /** One page for all tests that leave nothing behind but files, a station and a wish: to open it takes longer than most of them. */
  async function emptyPage(): Promise<Page> {
    if (shared === null) {
      shared = (await openPage()).page;
      return shared;
    }
    await shared.evaluate(() => {
      for (const action of ["forget-station", "close-typing", "clear"])
        document.querySelector<HTMLElement>(`[data-do=${action}]`)?.click();
      const wanted = document.querySelector<HTMLInputElement>("#wanted");
      if (wanted !== null) wanted.value = "";
      wanted?.dispatchEvent(new Event("change", { bubbles: true }));
    });
    await idle(shared);
    return shared;
  }

  test("asks for nothing but itself, and is not permitted to", async () => {
    const { page, heard } = await openPage();
    await page.click("[data-do=sample]");
    await idle(page);
    expect(heard.filter((line) => !/^request: (data|blob):/.test(line))).toEqual([
      `request: ${pathToFileURL(FILE).href}`,
    ]);
    const asked = await page.evaluate(() =>
      fetch("https://example.org/").then(
        () => "answered",
        () => "refused",
      ),
    );
    expect(asked).toBe("refused");
    await page.close();
  });

  test("every sample says the same as the command, to the last digit", async () => {
    const page = await emptyPage();
    await page.selectOption("#plan", "itu-r1");
    await choose(page, ...SWEEPS.map(sample));
    await page.fill("#wanted", "ft8");
    await page.press("#wanted", "Enter");
    const args = ["--plan", "itu-r1", "--at", "ft8", "--force"];
    const reports = SWEEPS.map((name) => at(`${name}.html`));
    runEach(SWEEPS.map((name, i) => ({ args: ["report", `sweeps/${name}`, ...args, "-o", reports[i] ?? ""] })));
    for (const [i, name] of SWEEPS.entries()) {
      await page.click(`#open-${i}`);
      await idle(page);
      expect(await factsOf(page, "#answer"), name).toEqual(factsIn(readFileSync(reports[i] ?? "", "utf8")));
    }
  });

  test("with a station and a question the same as the command with both", async () => {
    const page = await emptyPage();
    await page.setInputFiles("[data-change=load-station]", join(SAMPLES, "stations/canal-boat.json"));
    await idle(page);
    await choose(page, sample(SHORT));
    const station = ["--station", "stations/canal-boat.json"];
    expect(await factsOf(page, "#answer")).toEqual(reported([`sweeps/${SHORT}`, ...station]));
    expectSameTable(
      await saved(page, "save-csv"),
      runCommand(["check", `sweeps/${SHORT}`, ...station, "--format", "csv"]).stdout.replaceAll(
        `sweeps/${SHORT}`,
        SHORT,
      ),
    );
    await page.fill("#wanted", "40m");
    await page.press("#wanted", "Enter");
    await idle(page);
    await page.click("[data-do=advise]");
    await idle(page);
    expectSameTable(
      await saved(page, "save-csv"),
      runCommand(["try", `sweeps/${SHORT}`, ...station, "--want", "40m", "--format", "csv"]).stdout.replaceAll(
        `sweeps/${SHORT}`,
        SHORT,
      ),
    );
  });

  test.each([
    [DRY, WET],
    ["2026-02-21-tansy-reach-untrimmed.s1p", "2026-02-21-tansy-reach-trimmed.txt"],
  ])("%s against %s says the same as the command", async (before, after) => {
    const page = await emptyPage();
    await page.selectOption("#plan", "itu-r1");
    await choose(page, sample(before), sample(after));
    const args = ["--before", `sweeps/${before}`, "--after", `sweeps/${after}`, "--plan", "itu-r1"];
    expect(await factsOf(page, "#answer")).toEqual(reported(args));
  });

  test("a folder with its log says the same as the command", async () => {
    const page = await emptyPage();
    await page.selectOption("#plan", "itu-r1");
    await choose(page, ...SWEEPS.map(sample), sample("deployments.csv"));
    await page.selectOption("#best", "20m");
    await page.selectOption("#group-by", "counterpoise");
    await page.check("#over-time");
    await idle(page);
    const asked = ["--for", "20m", "--group-by", "counterpoise", "--over-time"];
    const all = reported(["sweeps", "--plan", "itu-r1", ...asked], /<article>.*?<\/article>/s);
    expect(await factsOf(page, "#answer")).toEqual(all);
  });

  test("reports of reception say the same as the command", async () => {
    const page = await emptyPage();
    await choose(page, ...readdirSync(join(SAMPLES, "reports")).map((name) => join(SAMPLES, "reports", name)));
    expect(runCommand(["heard", "reports", "-o", at("heard.html")]).exit).toBe(0);
    expect(await factsOf(page, "#answer")).toEqual(factsIn(readFileSync(at("heard.html"), "utf8")));
  });

  test("eleven readings that were typed tell where FT8 may be sent", async () => {
    const page = await emptyPage();
    await page.click("[data-do=type]");
    const lines = [
      "160m 6-9",
      "80m 2-3",
      "60m 4.5",
      "40m 1.3",
      "30m 2.4",
      "20m 1.4-1.9",
      "17m 3.2",
      "15m 2.1",
      "12m 2.8",
      "10m 1.6",
      "6m 5",
    ];
    await page.fill("#typed-text", lines.join("\n"));
    await page.click("form[data-submit=typed] button.main");
    await idle(page);
    expect(await page.textContent("#answer h1")).toContain("all of 40m, 20m and 10m");
    await page.fill("#wanted", "ft8");
    await page.press("#wanted", "Enter");
    await idle(page);
    const dials = await page.locator("table", { hasText: "Dial MHz" }).locator("tbody tr").allTextContents();
    expect(dials.filter((row) => /^(7\.074|14\.074|28\.074)/.test(row) && row.includes("no tuner"))).toHaveLength(3);
  });

  test("nothing keeps anyone out, from the empty page to an answer, in the light and in the dark", async () => {
    const { page } = await openPage(PHONE);
    await page.emulateMedia({ colorScheme: "light" });
    await page.click("[data-do=type]");
    expect(await violationsOf(page)).toEqual([]);
    const unclear = written("unnamed.csv", "7.0 1.5 3\n7.05 1.3 4\n7.1 1.2 5\n7.2 1.4 6\n");
    await choose(page, sample(SHORT), sample("2026-02-21-tansy-reach-untrimmed.s1p"), unclear);
    expect(await violationsOf(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: "dark" });
    await page.click("#open-0");
    await idle(page);
    expect(await violationsOf(page)).toEqual([]);
    await page.click("[data-do=advise]");
    await idle(page);
    expect(await violationsOf(page)).toEqual([]);
    expect(await widthOf(page)).toBeLessThanOrEqual(PHONE.width);
    await page.close();
  });

  test("the keyboard alone goes from nothing to a value of the curve", async () => {
    const { page } = await openPage();
    await tabTo(page, (name) => name === "type");
    await page.keyboard.press("Enter");
    await page.keyboard.type("7.0 1.4\n7.1 1.2\n7.2 1.5");
    await tabTo(page, (_, text) => text === "Read it");
    await page.keyboard.press("Enter");
    await idle(page);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("answer");
    await tabTo(page, (_, __, role) => role === "slider");
    await page.keyboard.press("Home");
    expect(await page.evaluate(() => document.activeElement?.getAttribute("aria-valuetext"))).toContain(
      "7 MHz, SWR 1.40",
    );
    await page.close();
  });

  test("what a file leaves open is asked, and the answer read by", async () => {
    const page = await emptyPage();
    await choose(page, written("two-columns.csv", "a,b\n7000000,1.5\n7100000,1.2\n7200000,1.6\n"));
    expect(await page.textContent(".unread li")).not.toContain("--");
    expect(await page.inputValue(".unread [name=columns]")).toBe("frequency:Hz,swr");
    await page.fill(".unread [name=columns]", "swr,nonsense");
    await page.click(".unread button.main");
    await idle(page);
    expect(await page.textContent(".unread li")).toContain("nonsense");
    await page.fill(".unread [name=columns]", "frequency:Hz,swr");
    await page.click(".unread button.main");
    await idle(page);
    expect(await page.textContent("#answer h1")).toContain("all of 40m");
  });

  test("what was taken wrongly can be said", async () => {
    const page = await emptyPage();
    await choose(page, sample(DRY));
    await page.click(".how summary");
    await page.fill(".how [name=port]", "7");
    await page.click(".how button.main");
    await idle(page);
    expect(await page.textContent(".unread")).toContain("port 7");
  });

  test("hostile files are read as the command reads them, and nothing of them is run", async () => {
    const strike = `<img src=x onerror="window.struck=1">'"</script><script>window.struck=1</script>`;
    const lines = readFileSync(sample(DRY), "utf8");
    const files = [
      written("a <b onmouseover=alert(1)>&amp;.s1p", `! ${strike}\n${lines}`),
      written("empty.csv", ""),
      written("packed.csv", Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0, 0, 0)),
      written("zeros.csv", new Uint8Array(5000)),
      written("prose.txt", `${strike}\n`.repeat(50)),
      written("long.csv", "7".repeat(100_000)),
      written("deployments.csv", `${strike}\n"open`),
    ];
    const { page, heard } = await openPage();
    await choose(page, ...files);
    const told = await page.locator(".unread li > p:first-child").allTextContents();
    for (const file of files.slice(1, 6)) {
      const [, reason = ""] = /^feedpoint: .*?: (.*)$/m.exec(runCommand(["check", file]).stderr) ?? [];
      expect(told.some((each) => reason.includes(each.replace(/^[^:]*: /, "").slice(0, 40)))).toBe(true);
    }
    await page.click("#open-0");
    await idle(page);
    expect(await page.locator(".comments li").first().textContent()).toBe(strike);
    expect(await page.locator("img, b[onmouseover]").count()).toBe(0);
    expect(await page.evaluate("window.struck")).toBeUndefined();
    expect(heard.filter((line) => !line.startsWith("request:"))).toEqual([]);
    await page.close();
  });

  test("a file of 50 MB is refused at once, in words", async () => {
    const page = await emptyPage();
    await page.setInputFiles("[data-change=open-files] >> nth=0", written("huge.csv", new Uint8Array(50e6)));
    await page.waitForSelector(".unread");
    expect(await page.textContent(".unread")).toContain("huge.csv: 50 MB is more than a sweep holds");
  });

  test("what goes on can be stopped, and what was read before stays", async () => {
    const { page } = await openPage();
    await choose(page, sample(SHORT));
    const rows = Array.from({ length: 250_000 }, (_, i) => `${(3 + i / 1e5).toFixed(5)},${1.2 + (i % 100) / 50}`);
    await page.setInputFiles("[data-change=open-files] >> nth=0", written("slow.csv", `MHz,SWR\n${rows.join("\n")}\n`));
    await page.click("[data-do=stop]");
    await idle(page);
    expect(await page.textContent("#status")).toContain("Stopped.");
    expect(await page.locator(".deployments li").count()).toBe(1);
    await page.click("#open-0");
    await idle(page);
    expect(await page.textContent("#answer h1")).toContain("all of 40m");
    await page.close();
  });

  test("the station form states what a station file states, and is kept only where that was said", async () => {
    const { page } = await openPage();
    await page.click(".station > summary");
    await page.click("summary:text('Radio and tuner')");
    await page.fill("[name='radio.powerW']", "ssb: 100, data: 25");
    await page.selectOption("[name='radio.tuner']", "wide-range");
    await page.click("summary:text('Modes')");
    await page.fill("[name=modes]", "ssb, data");
    await page.click("form[data-submit=station] button.main");
    await idle(page);
    const stated = JSON.parse(await downloaded(page, () => page.click("[data-do=save-station]")));
    expect(stated).toEqual({
      radio: { powerW: { ssb: 100, data: 25 }, tuner: "wide-range" },
      modes: { ssb: {}, data: {} },
    });

    await page.reload();
    await page.waitForSelector("#plan option", { state: "attached" });
    await page.click(".station > summary");
    await page.click("summary:text('Radio and tuner')");
    expect(await page.inputValue("[name='radio.powerW']")).toBe("");

    await page.fill("[name='radio.powerW']", "a lot");
    await page.click("form[data-submit=station] button.main");
    await idle(page);
    expect(await page.textContent("#status")).toContain("Power, W PEP: expected a number");
    expect(await page.getAttribute("[name='radio.powerW']", "aria-invalid")).toBe("true");

    await page.fill("[name='radio.powerW']", "40");
    await page.click("form[data-submit=station] button.main");
    await page.check("#keep");
    await page.reload();
    await page.waitForSelector("#keep:checked");
    await idle(page);
    expect(await page.inputValue("[name='radio.powerW']")).toBe("40");
    await page.uncheck("#keep");
    expect(await page.evaluate(() => localStorage.length)).toBe(0);
    await page.close();
  });

  test("every field of the station file that comes along survives the form", async () => {
    const page = await emptyPage();
    const file = join(SAMPLES, "stations/every-field.json");
    const { licence: _, ...whole } = JSON.parse(readFileSync(file, "utf8"));
    await page.setInputFiles(
      "[data-change=load-station]",
      written("station.json", JSON.stringify({ licence: { plan: "uk" }, ...whole })),
    );
    await idle(page);
    const before = JSON.parse(
      await downloaded(page, () =>
        page.evaluate(() => document.querySelector<HTMLElement>("[data-do=save-station]")?.click()),
      ),
    );
    await page.evaluate(() => document.querySelector<HTMLFormElement>("form[data-submit=station]")?.requestSubmit());
    await idle(page);
    const after = JSON.parse(
      await downloaded(page, () =>
        page.evaluate(() => document.querySelector<HTMLElement>("[data-do=save-station]")?.click()),
      ),
    );
    expect(after).toEqual(before);
    expect(Object.keys(before).sort()).toEqual(["licence", ...Object.keys(whole)].sort());
  });

  test("a station that cannot be used is refused in words, and what was shown stays", async () => {
    const page = await emptyPage();
    await choose(page, sample(SHORT));
    const before = await factsOf(page, "#answer");
    for (const [stated, words] of [
      [{ bands: ["abc"] }, 'no band "abc"'],
      [{ licence: { plan: "itu-r1", class: "nobody" } }, "knows no licence classes"],
      [{ licence: { plan: "./mine.json" } }, "not the file ./mine.json"],
      [{ radioo: {} }, "radioo"],
    ] as const) {
      await page.setInputFiles("[data-change=load-station]", written("station.json", JSON.stringify(stated)));
      await idle(page);
      expect(await page.textContent("#status")).toContain(words);
      expect(await factsOf(page, "#answer")).toEqual(before);
    }
  });

  test("a wish that means nothing is said to, and one band's dial is one band's", async () => {
    const page = await emptyPage();
    await choose(page, sample(SHORT));
    const want = async (text: string) => {
      await page.fill("#wanted", text);
      await page.press("#wanted", "Enter");
      await idle(page);
    };
    await want("nonsense");
    expect(await page.textContent("#status")).toContain("nonsense");
    await want("40m ft8");
    const dials = await page.locator("table", { hasText: "Dial MHz" }).locator("tbody th").allTextContents();
    expect(dials.every((dial) => dial.startsWith("7.0"))).toBe(true);
    expect(await page.textContent("#answer header")).toContain("40m FT8: no tuner");
    await want("ft8");
    await page.click("[data-do=advise]");
    await idle(page);
    expect(await page.textContent("#status")).toContain("named without a band");
  });

  test("files picked together keep the dates of their own names", async () => {
    const page = await emptyPage();
    const names = ["2026-08-08-moorhen-wharf-poor-joint.csv", "2026-03-21-heron-lock-sloper-again.csv"];
    await choose(page, ...names.map(sample));
    expect(await page.locator(".deployments b").allTextContents()).toEqual(names);
    await page.click("#open-1");
    await idle(page);
    expect(await page.locator("#answer dl.facts").last().textContent()).toContain("Taken2026-03-21");
  });

  test("a sweep saved clean reads back the same", async () => {
    const page = await emptyPage();
    await choose(page, sample(WET));
    for (const [action, name] of [
      ["save-cleaned-touchstone", "clean.s1p"],
      ["save-cleaned-csv", "clean.csv"],
    ] as const) {
      const file = written(name, await saved(page, action));
      const to = name.endsWith(".csv") ? "csv" : "touchstone";
      expectSameTable(readFileSync(file, "utf8"), runCommand(["convert", `sweeps/${WET}`, "--to", to]).stdout);
    }
  });

  test("prints the answer and nothing of the page around it", async () => {
    const page = await emptyPage();
    await choose(page, sample(SHORT));
    await page.emulateMedia({ media: "print" });
    for (const part of [".top", ".chosen", "#terms", "footer"])
      expect(await page.locator(part).isVisible()).toBe(false);
    expect(await page.locator("#answer h1").isVisible()).toBe(true);
    await page.emulateMedia({ media: "screen" });
  });

  /** The same of the report that the command writes, or of a part of it. */
  function reported(args: readonly string[], part = /.*/s): readonly string[] {
    const report = at("report.html");
    expect(runCommand(["report", ...args, "-o", report, "--force"]).exit).toBe(0);
    return factsIn(part.exec(readFileSync(report, "utf8"))?.[0] ?? "");
  }
});

const sample = (name: string) => join(SAMPLES, "sweeps", name);
