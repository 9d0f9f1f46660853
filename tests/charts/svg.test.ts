/** Pictures as SVG: what is known beforehand lies where it must. */
import { type CheckOptions, check, planById, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { frequencyAxis, ohmsAxis, returnLossAxis, swrAxis } from "../../packages/answers/src/svg/axes.js";
import { linePath } from "../../packages/answers/src/svg/line-path.js";
import { type ChartKind, picture } from "../../packages/answers/src/svg/picture.js";
import { plotRuns } from "../../packages/answers/src/svg/plot-points.js";
import { seriesOf } from "../../packages/answers/src/svg/series.js";
import { smithGrid, smithPlace } from "../../packages/answers/src/svg/smith-grid.js";
import { html } from "../../packages/answers/src/text/markup.js";
import { evenly, type Pair, present, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const CIRCLE = { centreX: 240, centreY: 220, radius: 190 };

describe("escaping", () => {
  test("nothing that is put in is taken for markup, in text and in attributes", () => {
    const hostile = `<b>&"'\u202e`;
    expect(html`<p title="${hostile}">${[hostile, 1, null]}</p>`.markup).toBe(
      `<p title="&lt;b&gt;&amp;&quot;&#39;·">&lt;b&gt;&amp;&quot;&#39;·1</p>`,
    );
  });

  test("markup within markup stays as it is", () => {
    expect(html`<ul>${["<", ">"].map((item) => html`<li>${item}</li>`)}</ul>`.markup).toBe(
      "<ul><li>&lt;</li><li>&gt;</li></ul>",
    );
  });
});

describe("axes", () => {
  test("an SWR lies at its ρ: 3:1 half-way between 1:1 and infinity", () => {
    const { place, ticks } = swrAxis(Number.POSITIVE_INFINITY, [300, 100]);
    expect(place(0)).toBe(300);
    expect(place(0.5)).toBe(200);
    expect(place(1)).toBe(100);
    expect(ticks.map(({ label }) => label)).toEqual(["1", "1.2", "1.5", "2", "3", "5", "10", "∞"]);
    expect(
      place(
        present(
          ticks.find(({ label }) => label === "3"),
          "3:1",
        ).value,
      ),
    ).toBe(200);
  });

  test("a frequency lies at its share of the range, of a wide range at the share of its logarithm", () => {
    expect(frequencyAxis({ lowHz: 7e6, highHz: 7.2e6 }, [40, 240], 4).place(7.05)).toBeCloseTo(90, 9);
    const wide = frequencyAxis({ lowHz: 1e6, highHz: 100e6 }, [0, 200], 4);
    expect(wide.place(10)).toBeCloseTo(100, 9);
    expect(wide.ticks.map(({ label }) => label)).toEqual(["1", "2", "5", "10", "20", "50", "100"]);
  });

  test("return loss goes down from 0 dB, and ohms are even around 0", () => {
    expect(returnLossAxis(25, [300, 0]).place(0)).toBe(0);
    expect(returnLossAxis(25, [300, 0]).place(15)).toBeCloseTo(150, 9);
    const { place } = ohmsAxis(-100, 100, [200, 0]);
    expect(place(0)).toBeCloseTo(100, 9);
    expect(place(-40) + place(40)).toBeCloseTo(200, 9);
  });
});

describe("the Smith chart", () => {
  test("has a match in the centre, a short at the left, an open end at the right, an inductance above", () => {
    expect(smithPlace(CIRCLE, { real: 0, imaginary: 0 })).toEqual({ x: 240, y: 220 });
    expect(smithPlace(CIRCLE, { real: -1, imaginary: 0 })).toEqual({ x: 50, y: 220 });
    expect(smithPlace(CIRCLE, { real: 1, imaginary: 0 })).toEqual({ x: 430, y: 220 });
    expect(smithPlace(CIRCLE, { real: 0, imaginary: 1 })).toEqual({ x: 240, y: 30 });
  });

  test("has the circle of 50 Ω through the centre and the open end", () => {
    // Centre at Γ = 1/2, radius 1/2.
    expect(smithGrid(CIRCLE, 50).markup).toContain('<circle class="rule" cx="335" cy="220" r="95"/>');
  });

  test("has the arc of +j50 Ω from the open end to the top, and that of -j50 Ω to the bottom", () => {
    const { markup } = smithGrid(CIRCLE, 50);
    expect(markup).toContain('d="M430,220A190,190,0,0,1,240,30"');
    expect(markup).toContain('d="M430,220A190,190,0,0,0,240,410"');
  });
});

const drawn = (sweep: Sweep, options: CheckOptions, what: ChartKind) => picture(sweep, check(sweep, options), what);

describe("what is drawn of a sweep", () => {
  const axis = evenly(7e6, 7.2e6, 10e3);
  const half = sweepOfMagnitudes(
    axis,
    axis.map(() => 0.5),
  );
  const plan = present(planById("itu-r1"), "plan");

  test("a constant SWR of 3 is a level line at 3:1", () => {
    const svg = drawn(half, { plan, bands: ["40m"] }, "swr");
    const [, y] = present(/class="line only" d="M[\d.]+,([\d.]+)L[\d.]+,\1"/.exec(svg), "level line");
    expect(svg).toContain(`M44,${y}H662`);
    expect(svg).toMatch(new RegExp(`<text class="strong" x="37" y="${Number(y) + 4}" text-anchor="end">3</text>`));
  });

  test("a short is a point at the left end of the Smith chart", () => {
    const short = sweepOfReflections(
      axis,
      axis.map((): Pair => [-1, 0]),
    );
    const svg = drawn(short, { plan, bands: ["40m"] }, "smith");
    expect(svg).toMatch(/class="line b0" d="M50,220L50,220"/);
  });

  test("a gap in the sweep is a gap in the line", () => {
    const parts = [...evenly(7e6, 7.05e6, 5e3), ...evenly(7.15e6, 7.2e6, 5e3)];
    const series = seriesOf(
      "only",
      sweepOfMagnitudes(
        parts,
        parts.map(() => 0.3),
      ),
      [],
    );
    const runs = plotRuns(series.trace, { lowHz: 7e6, highHz: 7.2e6 }, 500);
    expect(runs.map((run) => [run[0]?.frequencyHz, run.at(-1)?.frequencyHz])).toEqual([
      [7e6, 7.05e6],
      [7.15e6, 7.2e6],
    ]);
  });

  test("a single reading is a point that can be seen", () => {
    const spots = { ...sweepOfMagnitudes([7.05e6, 7.1e6], [0.5, 0.5]), continuity: "spots" as const };
    const svg = drawn(spots, { plan, bands: ["40m", "20m"] }, "swr");
    expect(svg.match(/<circle class="reading only"/g)).toHaveLength(2);
  });

  test("of more points than wanted the best and the worst stay", () => {
    const many = evenly(1e6, 30e6, 1e3);
    const dip = (hz: number) => Math.min(0.95, 0.1 + Math.abs(hz - 14.2e6) / 1e5);
    const series = seriesOf("only", sweepOfMagnitudes(many, many.map(dip)), []);
    const [run = []] = plotRuns(series.trace, { lowHz: 1e6, highHz: 30e6 }, 200);
    expect(run.length).toBeLessThan(210);
    expect(Math.min(...run.map(({ reflectionMagnitude }) => reflectionMagnitude))).toBeLessThan(0.11);
  });

  test("a line leaves out what lies on it and nothing else", () => {
    const straight = [0, 1, 2, 3].map((x) => ({ x, y: 2 * x }));
    expect(linePath([straight])).toBe("M0,0L3,6");
    expect(linePath([[...straight, { x: 4, y: 0 }]])).toBe("M0,0L3,6L4,0");
  });

  test("what a file is called is text in the picture", () => {
    const named = { ...half, label: "<script>" };
    expect(drawn(named, { plan, bands: ["40m"] }, "swr")).toContain("SWR on 40m, &lt;script&gt;");
  });
});
