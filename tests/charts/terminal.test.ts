/** Charts in the terminal, as they look: read the difference before changing a picture here. */
import { type CheckResult, check, deploymentOf, diff, onSameTerms, planById, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { checkCharts, diffCharts, type Screen } from "../../packages/cli/src/present/chart/charts.js";
import { ASCII, glyphsFor, UNICODE } from "../../packages/cli/src/present/chart/glyphs.js";
import { evenly, present, sweepOfMagnitudes } from "../support/sweeps.js";

const plan = present(planById("itu-r1"), "plan");
const options = { plan, bands: ["40m"] };

/** A dip of an invented antenna: ρ from its distance to resonance. */
const dipAt = (centreHz: number, axis = evenly(6.9e6, 7.3e6, 5e3)) =>
  sweepOfMagnitudes(
    axis,
    axis.map((hz) => Math.hypot(0.1, (hz - centreHz) / 200e3)).map((rho) => Math.min(0.9, rho)),
  );

/** Charts of a sweep that is all that is known of its deployment. */
const chartsOf = (sweep: Sweep, result: CheckResult, screen: Screen) =>
  checkCharts(deploymentOf([sweep]), result, screen);

/** Lines without blanks at their ends, framed so that the picture stands clear of the code. */
const framed = (text: string) => `\n${text}\n`;

describe("a chart of one band", () => {
  const sweep = dipAt(7.08e6);

  test("in Unicode", () => {
    expect(framed(chartsOf(sweep, check(sweep, options), { width: 44, glyphs: UNICODE }))).toMatchInlineSnapshot(`
      "
      40m  partial
        5 ┤                                      ⢀
          │                                    ⡠⠔⠁
        3 ┤┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄⢀⠔⠊┄┄┄
          │⡀                             ⢀⡠⠊⠁
          │⠈⠑⢄⡀                        ⡠⠔⠁
        2 ┤┄┄┄⠈⠒⢄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄⣀⠔⠉┄┄┄┄┄┄┄┄┄┄┄
      1.5 ┤      ⠉⠢⢄             ⣀⠔⠊
          │         ⠉⠢⢄⡀     ⢀⡠⠔⠊
      1.2 ┤            ⠈⠉⠒⠒⠒⠊⠁
        1 ┤
          └───────────────────────────────────────
      ≤2      ┝━━━━━━━━━━━▲━━━━━━━━━━━┥
           7.000        7.080                7.200

      ━━ SWR up to 2:1, ▲ best point.
      "
    `);
  });

  test("in ASCII, of nothing but ASCII", () => {
    const chart = chartsOf(sweep, check(sweep, options), { width: 44, glyphs: ASCII });
    expect(chart).toMatch(/^[\n -~]*$/);
    expect(framed(chart)).toMatchInlineSnapshot(`
      "
      40m  partial
        5 +
          |                                    ***
        3 +----------------------------------**---
          |*                              ***
          | ***                        ***
        2 +----***------------------***-----------
      1.5 +       ***            ***
          |          ****    ****
      1.2 +              ****
        1 +
          +---------------------------------------
      <=2     [===========^===========]
           7.000        7.080                7.200

      == SWR up to 2:1, ^ best point.
      "
    `);
  });

  test("with a gap where the sweep has one", () => {
    const parts = [...evenly(6.95e6, 7.05e6, 5e3), ...evenly(7.12e6, 7.25e6, 5e3)];
    const broken = dipAt(7.08e6, parts);
    const chart = chartsOf(broken, check(broken, options), { width: 44, glyphs: ASCII });
    const drawn = chart.split("\n").filter((line) => /[+|]/.test(line));
    // From 7.05 to 7.12 MHz, in the columns that are surely between, there is no curve in any row.
    const first = 5 + Math.ceil((38 * 51) / 200);
    const last = 5 + Math.floor((38 * 119) / 200);
    expect(drawn.map((line) => line.slice(first, last)).join("")).not.toContain("*");
    expect(drawn.map((line) => line.slice(5, first)).join("")).toContain("*");
  });
});

test("a single reading between the columns is drawn all the same", () => {
  const spots = { ...sweepOfMagnitudes([7.0123e6, 7.1234e6], [0.5, 0.2]), continuity: "spots" as const };
  const chart = chartsOf(spots, check(spots, options), { width: 44, glyphs: ASCII });
  expect(chart.match(/\*/g)).toHaveLength(2);
});

describe("a chart of a change", () => {
  test("tells before from after without colour", () => {
    const [before, after] = [dipAt(7.02e6), dipAt(7.12e6)];
    const charts = diffCharts(diff(before, after, options), onSameTerms(before, after, options), {
      width: 60,
      glyphs: ASCII,
    });
    expect(charts).toMatch(/^[\n -~]*$/);
    expect(framed(charts)).toMatchInlineSnapshot(`
      "
      40m  improved
         inf +
             |                                                o o
          10 +------------------------------------------o-o-o-----
           5 +                                    o o o
             |******                          o o
           3 +------******--------------o-o-o-------------------**
           2 +------------******--o-o-o-------------------******--
         1.5 +            o o o ******              ******
         1.2 +o o o o o o             **************
           1 +
             +----------------------------------------------------
      before  =====^===============]
      after                 [================^===============]
              7.000                                          7.200

      o before, ** after; where only one is seen, both are the
      same. == SWR up to 2:1, ^ best point.
      "
    `);
  });
});

describe("several bands", () => {
  const axis = evenly(6e6, 15e6, 20e3);
  const sweep = sweepOfMagnitudes(
    axis,
    axis.map(() => 0.4),
  );
  const result = check(sweep, { plan, bands: ["40m", "30m", "20m"] });
  const titles = (width: number) =>
    chartsOf(sweep, result, { width, glyphs: ASCII })
      .split("\n")
      .filter((line) => /\dm {2}/.test(line))
      .map((line) => line.split(/ {3,}/));

  test("stand beside each other as far as there is room", () => {
    expect(titles(60).map((line) => line.length)).toEqual([1, 1, 1]);
    expect(titles(80).map((line) => line.length)).toEqual([2, 1]);
    expect(titles(120).map((line) => line.length)).toEqual([3]);
  });

  test.each([60, 80, 120, 160])("are no wider than %i columns", (width) => {
    const lines = chartsOf(sweep, result, { width, glyphs: UNICODE }).split("\n");
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(width);
  });
});

test("ASCII is drawn where it is asked for or the locale is not UTF-8", () => {
  expect(glyphsFor(true, { LANG: "en_GB.UTF-8" }, "linux")).toBe(ASCII);
  expect(glyphsFor(false, { LANG: "en_GB.UTF-8" }, "linux")).toBe(UNICODE);
  expect(glyphsFor(false, { LANG: "en_GB.UTF-8", LC_ALL: "C" }, "linux")).toBe(ASCII);
  expect(glyphsFor(false, {}, "linux")).toBe(ASCII);
  expect(glyphsFor(false, {}, "win32")).toBe(UNICODE);
});
