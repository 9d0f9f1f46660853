/** A page in the browser, and what it says, asks for and keeps people out by. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";
import type { BrowserContext, Page } from "playwright-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** A page that was opened, with all that it said and asked for since. */
export interface Opened {
  readonly page: Page;
  readonly heard: readonly string[];
}

/** Opens a file from disk and keeps what it says and asks for. */
export async function open(
  browser: BrowserContext,
  file: string,
  size = { width: 1366, height: 900 },
): Promise<Opened> {
  const page = await browser.newPage();
  await page.setViewportSize(size);
  const heard: string[] = [];
  page.on("console", (message) => heard.push(`console: ${message.text()}`));
  page.on("pageerror", (error) => heard.push(`error: ${error.message}`));
  page.on("dialog", (dialog) => heard.push(`dialog: ${dialog.message()}`));
  page.on("request", (request) => heard.push(`request: ${request.url()}`));
  await page.goto(pathToFileURL(file).href);
  return { page, heard };
}

/** Rows of one table beyond these are like those before them, and take most of the time to look at. */
const ROWS_LOOKED_AT = 20;

/** What keeps people out of a page, by the rules of axe, with all of it unfolded. */
export async function violationsOf(page: Page): Promise<readonly string[]> {
  await page.evaluate((most) => {
    for (const details of document.querySelectorAll("details")) details.open = true;
    for (const { rows } of document.querySelectorAll("tbody")) for (const row of [...rows].slice(most)) row.remove();
  }, ROWS_LOOKED_AT);
  await page.evaluate(axe);
  return page.evaluate<string[]>(
    "axe.run().then(({ violations }) => violations.map(({ id, nodes }) => id + ' ' + nodes[0].html))",
  );
}

/** How wide all of a page is, px. */
export const widthOf = (page: Page): Promise<number> => page.evaluate(() => document.documentElement.scrollWidth);
