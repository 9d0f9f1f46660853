import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { runCommand, splitArguments } from "./run-command.js";

const readme = readFileSync(new URL("../../README.md", import.meta.url), "utf8");
/** An indented command with its output in a fenced block below it. */
const examples = [...readme.matchAll(/^ {4}feedpoint (.+)\n\n```\n([\s\S]*?)\n```$/gm)];

test("the README shows examples of all three jobs", () => {
  expect(examples.map(([, line]) => (line ?? "").split(" ")[0])).toEqual(
    expect.arrayContaining(["check", "diff", "grade"]),
  );
});

for (const [, line = "", output = ""] of examples) {
  test(`the README shows what feedpoint ${line} prints`, () => {
    const { stdout } = runCommand(splitArguments(line));
    // The README leaves out the cautions, which it has in a section of their own.
    expect((stdout.split("\n* ")[0] ?? "").trimEnd()).toBe(output);
  });
}
