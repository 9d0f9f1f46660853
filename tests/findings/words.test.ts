/** The words of findings stand once, are free of the command, and what the command adds is of codes that there are. */
import { readdirSync, readFileSync } from "node:fs";
import { FINDING_CODES } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { finding, placed } from "../../packages/core/src/sweep/finding.js";

const words = new URL("../../packages/core/src/sweep/finding-words/", import.meta.url);

describe.each(readdirSync(words))("the words in %s", (name) => {
  const text = readFileSync(new URL(name, words), "utf8");

  test("name no option and no command", () => {
    expect(text.match(/--[a-z]|feedpoint [a-z]+|station file/g)).toBeNull();
  });
});

test("no other file of the library makes a message of its own", () => {
  const core = new URL("../../packages/core/src/", import.meta.url);
  const makers = readdirSync(core, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts") && !name.includes("finding-words"))
    .filter((name) => /finding\(\s*"?\w+"?,\s*"[a-z0-9-]+",\s*[`"]/.test(readFileSync(new URL(name, core), "utf8")));
  expect(makers).toEqual([]);
});

test("a finding holds its code, its numbers, its words and what it is about", () => {
  const made = finding("caution", "dip-on-few-samples", { band: "40m", samples: 1, stepHz: 2000 }, { band: "40m" });
  expect(made).toEqual({
    code: "dip-on-few-samples",
    severity: "caution",
    params: { band: "40m", samples: 1, stepHz: 2000 },
    message: "The dip on 40m rests on 1 sample; a step of 2 kHz would tell more.",
    band: "40m",
  });
  expect(placed(made, { side: "before" })).toEqual({
    ...made,
    side: "before",
    message: "Before: The dip on 40m rests on 1 sample; a step of 2 kHz would tell more.",
  });
});

test("every code has a meaning of one sentence", () => {
  for (const meaning of Object.values(FINDING_CODES)) expect(meaning).toMatch(/^[A-Z].*\.$/);
});
