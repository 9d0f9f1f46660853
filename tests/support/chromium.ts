import { existsSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BrowserContext, chromium } from "playwright-core";

const PLACES = [process.env.CHROMIUM ?? "", "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

/** The browser that pages are looked at with; undefined where there is none. */
export const chromiumPath = PLACES.find((place) => place !== "" && existsSync(place));

if (chromiumPath === undefined) {
  const message = "NO CHROMIUM: the tests of the report in a browser ARE SKIPPED. Install one, or name it in CHROMIUM.";
  if (process.env.REQUIRE_CHROMIUM) throw new Error(message);
  console.warn(`\n${"!".repeat(message.length)}\n${message}\n${"!".repeat(message.length)}\n`);
}

/** Ends what hangs; how fast a machine starts a browser, or draws a page, must not decide a test. */
const LONGEST_MS = 10 * 60_000;

/** Starts the browser with a new, empty profile, and nothing in it that talks to anyone. */
export async function startChromium(): Promise<BrowserContext> {
  const browser = await chromium.launchPersistentContext(mkdtempSync(join(tmpdir(), "feedpoint-browser-")), {
    ...(chromiumPath === undefined ? {} : { executablePath: chromiumPath }),
    headless: true,
    timeout: LONGEST_MS,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
  browser.setDefaultTimeout(LONGEST_MS);
  return browser;
}
