import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { FINDING_CODES } from "@feedpoint/core";
import { expect, test } from "vitest";
import { runCommand, runEach, runLines, runShell, splitArguments } from "./run-command.js";

/** `UPDATE_CASES=1` writes what is printed now into the pages; read the difference before committing it. */
const root = new URL("../../", import.meta.url);
const GUIDE = "packages/cli/guide/";
const guidePages = readdirSync(new URL(GUIDE, root)).filter((name) => name.endsWith(".md"));
const pages = ["README.md", ...guidePages.map((name) => GUIDE + name)];
const textOf = (page: string) => readFileSync(new URL(page, root), "utf8");

/** An indented command, or lines for the shell in a block of their own, with the output in a fenced block below. */
const example = /^(?: {4}feedpoint (.+)|```sh\n(feedpoint (?:.+\n)+?)```)\n\n```\n([\s\S]*?)\n```$/gm;
type Example = readonly [shown: string, line: string | undefined, script: string | undefined, output: string];
const examplesIn = (text: string) => [...text.matchAll(example)].map((match) => [...match] as unknown as Example);

const outcomes = runLines([
  ...new Set(pages.flatMap((page) => examplesIn(textOf(page)).flatMap(([, line]) => line ?? []))),
]);

function printed([, line, script = ""]: Example): string {
  if (line === undefined) return runShell(script).stdout.trimEnd();
  return withoutCautions(outcomes.get(line)?.stdout ?? "");
}

/** The pages leave out the cautions, which the README has in a section of their own. */
const withoutCautions = (stdout: string) => (stdout.split("\n* ")[0] ?? "").trimEnd();

if (process.env.UPDATE_CASES) {
  for (const page of pages) {
    let text = textOf(page);
    for (const found of examplesIn(text)) {
      const [shown, , , output] = found;
      const head = shown.slice(0, shown.length - output.length - "\n```".length);
      text = text.replace(shown, () => `${head}${printed(found)}\n\`\`\``);
    }
    writeFileSync(new URL(page, root), text);
  }
}

test("the README shows examples of all four jobs", () => {
  const commands = examplesIn(textOf("README.md")).map(([, line = ""]) => line.split(" ")[0]);
  expect(commands).toEqual(expect.arrayContaining(["check", "diff", "grade", "trim"]));
});

for (const page of pages) {
  for (const found of process.env.UPDATE_CASES ? [] : examplesIn(textOf(page))) {
    const [, line, script, output] = found;
    test(`${page} shows what ${line === undefined ? script?.split("\n")[0] : `feedpoint ${line}`} prints`, () => {
      expect(printed(found)).toBe(output);
    });
  }

  test(`${page} has no block without anything in it`, () => {
    expect(textOf(page)).not.toMatch(/^```\w*\n```$/m);
  });

  test(`${page} links to files that are there`, () => {
    const links = [...textOf(page).matchAll(/\]\((?!https?:)([^)#]+)/g)].map(([, target]) => target ?? "");
    expect(links.filter((target) => !existsSync(new URL(target, new URL(page, root))))).toEqual([]);
    // The guide is shipped without the rest of the repository.
    if (page.startsWith(GUIDE)) expect(links.filter((target) => target.startsWith("../"))).toEqual([]);
  });
}

test("what the pages have a reader write into samples/ leaves their examples as they are", () => {
  const copy = mkdtempSync(join(tmpdir(), "feedpoint-samples-"));
  try {
    cpSync(new URL("samples", root), copy, { recursive: true });
    const inits = pages.flatMap((page) => [...textOf(page).matchAll(/^ {4}feedpoint (station init.*)$/gm)]);
    expect(inits.length).toBeGreaterThan(0);
    for (const [, line = ""] of inits) runCommand([...splitArguments(line), "--force"], "", { folder: copy });
    expect(readdirSync(copy)).toContain("my-station.json");
    const examples = pages.flatMap((page) => {
      const [, line, , output] =
        examplesIn(textOf(page)).find(([, command]) => /^(check|trim)/.test(command ?? "")) ?? [];
      return line === undefined ? [] : [{ args: splitArguments(line), folder: copy, output }];
    });
    for (const [i, { stdout }] of runEach(examples).entries())
      expect(withoutCautions(stdout)).toBe(examples[i]?.output);
  } finally {
    rmSync(copy, { recursive: true });
  }
});

test("the guide's index names every page", () => {
  const named = [...textOf(`${GUIDE}README.md`).matchAll(/\]\(([a-z-]+\.md)\)/g)].map(([, name]) => name);
  expect(named.toSorted()).toEqual(guidePages.filter((name) => name !== "README.md").toSorted());
});

test("findings.md lists every code that there is, and no other, in order", () => {
  const listed = [...textOf(`${GUIDE}findings.md`).matchAll(/^- `([a-z][a-z0-9-]*)`/gm)].map(([, code]) => code);
  expect(listed).toEqual(Object.keys(FINDING_CODES).toSorted());
});

const WHOLE_FILES = [
  ["band-plan.md", "plans/towpath.json"],
  ["station-file.md", "stations/every-field.json"],
] as const;

for (const [page, file] of WHOLE_FILES) {
  test(`${page} prints samples/${file} as it is`, () => {
    const [, shown] = /```json\n([\s\S]*?)\n```/.exec(textOf(GUIDE + page)) ?? [];
    expect(shown).toBe(textOf(`samples/${file}`).trimEnd());
  });
}
