/** What is done with the page in a browser, and what is held against the command. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect } from "vitest";

/** All headings and tables of a part of a page, as text. */
export const factsOf = (page: Page, part: string): Promise<readonly string[]> =>
  page.evaluate(
    (within) =>
      Array.from(
        document.querySelector(within)?.querySelectorAll("h1, table") ?? [],
        ({ textContent }) => textContent ?? "",
      ),
    part,
  );

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };

/** The headings and tables of a text of markup, as text. */
export const factsIn = (markup: string): readonly string[] =>
  Array.from(markup.matchAll(/<h1[ >].*?<\/h1>|<table[ >].*?<\/table>/gs), ([element]) =>
    element.replace(/<[^>]*>/g, "").replace(/&([a-z#0-9]+);/g, (_, name: string) => ENTITIES[name] ?? ""),
  );

/** The same words, and numbers that differ by no more than one engine's sine differs from another's. */
export function expectSameTable(table: string, other: string): void {
  const cellsOf = (text: string) => text.split(/[,\s]+/);
  const [cells, others] = [cellsOf(table), cellsOf(other)];
  expect(cells.length).toBe(others.length);
  for (const [i, cell] of cells.entries()) {
    const [value, wanted] = [Number(cell), Number(others[i])];
    if (Number.isNaN(value)) expect(cell).toBe(others[i]);
    else expect(Math.abs(value - wanted)).toBeLessThanOrEqual(1e-9 * Math.abs(wanted) + 1e-12);
  }
}

/** Waits until nothing goes on. */
export async function idle(page: Page): Promise<void> {
  await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 0)));
  await page.waitForFunction(() => !document.body.classList.contains("busy"));
}

export async function choose(page: Page, ...files: readonly string[]): Promise<void> {
  await page.setInputFiles("[data-change=open-files] >> nth=0", [...files]);
  await idle(page);
}

/** The text of the file that something saves. */
export async function downloaded(page: Page, act: () => Promise<unknown>): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent("download"), act()]);
  return readFileSync(await download.path(), "utf8");
}

export const saved = (page: Page, action: string): Promise<string> =>
  downloaded(page, () =>
    page.evaluate((name) => document.querySelector<HTMLElement>(`[data-do=${name}]`)?.click(), action),
  );

/** Presses Tab until what is wanted has the focus. */
export async function tabTo(
  page: Page,
  isWanted: (action: string, text: string, role: string) => boolean,
): Promise<void> {
  for (let presses = 0; presses < 200; presses++) {
    await page.keyboard.press("Tab");
    const [action = "", text = "", role = ""] = await page.evaluate(() => {
      const element = document.activeElement as HTMLElement | null;
      return [element?.dataset.do ?? "", element?.textContent ?? "", element?.getAttribute("role") ?? ""];
    });
    if (isWanted(action, text, role)) return;
  }
  throw new Error("The Tab key does not lead there.");
}
