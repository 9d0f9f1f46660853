import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { runCommand, splitArguments } from "./run-command.js";

/** `UPDATE_CASES=1` writes what is printed now into the README; read the difference before committing it. */
const place = new URL("../../README.md", import.meta.url);
const readme = readFileSync(place, "utf8");
/** An indented command with its output in a fenced block below it. */
const example = /^ {4}feedpoint (.+)\n\n```\n([\s\S]*?)\n```$/gm;
// The README leaves out the cautions, which it has in a section of their own.
const printed = (line: string) => (runCommand(splitArguments(line)).stdout.split("\n* ")[0] ?? "").trimEnd();

if (process.env.UPDATE_CASES) {
  const updated = readme.replace(
    example,
    (_, line: string) => `    feedpoint ${line}\n\n\`\`\`\n${printed(line)}\n\`\`\``,
  );
  writeFileSync(place, updated);
}

const examples = [...readme.matchAll(example)];

test("the README shows examples of all four jobs", () => {
  const commands = examples.map(([, line]) => (line ?? "").split(" ")[0]);
  expect(commands).toEqual(expect.arrayContaining(["check", "diff", "grade", "trim"]));
});

for (const [, line = "", output = ""] of process.env.UPDATE_CASES ? [] : examples) {
  test(`the README shows what feedpoint ${line} prints`, () => {
    expect(printed(line)).toBe(output);
  });
}
