/** A sweep against another impedance than the radio's is a problem that no format may let pass. Invented. */
import { describe, expect, test } from "vitest";
import { runCommand, splitArguments } from "./run-command.js";

/** SWR 1.1 against 450 Ω on 40 m: about 450 Ω itself, so about 9 at a radio made for 50 Ω. */
const SCALAR = `Frequency (MHz),SWR\n${[6.95, 7, 7.05, 7.1, 7.15, 7.2, 7.25].map((mhz) => `${mhz},1.1`).join("\n")}\n`;
const VECTOR = `# MHz S RI R 450\n${[6.95, 7, 7.05, 7.1, 7.15, 7.2, 7.25].map((mhz) => `${mhz} 0 0.0001`).join("\n")}\n`;
const PLAN = "--plan itu-r1 --bands 40m";

const run = (line: string, input: string) => runCommand(splitArguments(line), input);

describe.each(["table", "json", "ndjson", "csv", "markdown"])("as %s", (format) => {
  test.each([`check - ${PLAN} --require pass`, `grade - ${PLAN} --require A`])(
    "%s fails for readings without phase, which cannot be converted",
    (line) => {
      const { exit, stdout, stderr } = run(`${line} --reference-ohms 450 --format ${format}`, SCALAR);
      expect(exit).toBe(1);
      expect(stdout + stderr).toMatch(/450 Ω|reference-not-50/);
    },
  );
});

test("with phase it is judged for the radio once the radio is stated", () => {
  // SWR of 450 Ω at 50 Ω: 9.
  const { stdout } = run(`check - ${PLAN} --json --station stations/canal-boat.json`, VECTOR);
  const [band] = JSON.parse(stdout).bands;
  expect(band.worstSwr ?? band.worst?.swr).toBeCloseTo(9, 2);
});
