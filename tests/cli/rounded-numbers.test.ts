/** Numbers as text: what rounds to nothing has no sign. */
import { expect, test } from "vitest";
import { fixed, megahertz, signed, swr } from "../../packages/answers/src/text/units.js";
import { runCommand } from "./run-command.js";

test("a number that rounds to nothing has no minus sign, any other keeps its own", () => {
  expect([-0, -0.004, 0.004, -0.006, -1].map((value) => fixed(value, 2))).toEqual([
    "0.00",
    "0.00",
    "0.00",
    "-0.01",
    "-1.00",
  ]);
  expect([fixed(-0.4, 0), megahertz(-0), signed(-0.04, 1), swr(1)]).toEqual(["0", "0.000", "0.0", "1.00"]);
});

/** An open end measured at its own connector, which seems to lie 5 mm before the place of calibration. */
const OPEN = `# MHz S RI R 50
${Array.from({ length: 50 }, (_, i) => `${i + 1} ${(1.00005).toFixed(6)} ${(2.1e-4 * (i + 1)).toFixed(6)}`).join("\n")}
`;

test("line prints 0.00 of an open measured at its own connector", () => {
  const { stdout, exit } = runCommand(["line", "-", "--end", "open"], OPEN);
  expect(stdout).toContain("Electrical length 0.00 m (against 50 Ω): 0.00 m of solid-dielectric");
  expect(stdout).toContain("1.800       0.00 dB");
  expect(stdout).not.toMatch(/-0\.0|line-implausible|Carried on/);
  expect(exit).toBe(0);
});

test("show prints 0.0 of a reactance that rounds to nothing", () => {
  const { stdout } = runCommand(["show", "-"], "# MHz S RI R 50\n7 0.2 -0.0001\n7.1 0.2 0.0001\n");
  expect(stdout).toContain("75.0  0.0\n");
  expect(stdout).not.toContain("-0.0");
});
