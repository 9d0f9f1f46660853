/** Where escape codes may be written: https://no-color.org for NO_COLOR; "dumb" is the terminal of terminfo(5) that knows none. */
import { expect, test } from "vitest";
import { takesEscapeCodes } from "../../packages/cli/src/grading/progress.js";
import { runCommand } from "./run-command.js";

test("the bar of a long run is drawn on a terminal that knows escape codes", () => {
  expect(takesEscapeCodes({ isTTY: true }, { TERM: "xterm" })).toBe(true);
  expect(takesEscapeCodes({ isTTY: true }, {})).toBe(true);
  expect(takesEscapeCodes({ isTTY: true }, { TERM: "xterm", NO_COLOR: "" })).toBe(true);
});

test("and nowhere else", () => {
  expect(takesEscapeCodes({ isTTY: true }, { TERM: "dumb" })).toBe(false);
  expect(takesEscapeCodes({ isTTY: true }, { TERM: "xterm", NO_COLOR: "1" })).toBe(false);
  expect(takesEscapeCodes({}, { TERM: "xterm" })).toBe(false);
});

for (const line of [
  "--help",
  "check --help",
  "grade sweeps --chrat",
  "check sweeps/2026-06-27-owl-cutting-tree.tsv --chart",
]) {
  test(`feedpoint ${line} writes none`, () => {
    const { stdout, stderr } = runCommand(line.split(" "));
    expect(stdout + stderr).not.toContain("\u001b");
  });
}
