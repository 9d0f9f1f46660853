/** Readings that mean "at least": never within a limit, never a known need, and still so after being written and read again. */
import { check, delimitedText, gradeSweep, planById, readSweeps, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { present } from "../support/sweeps.js";

const plan = present(planById("itu-r1"), "a plan");
const read = (text: string, fileName = "made.csv"): Sweep =>
  present(readSweeps(new TextEncoder().encode(text), { fileName })[0], "a sweep");
const table = (...rows: readonly string[]) => read(`MHz,SWR\n${rows.join("\n")}\n`);
const bandOf = (sweep: Sweep, band = "40m") => present(check(sweep, { plan, bands: [band] }).bands[0], band);
const codesOf = ({ findings }: Sweep) => findings.map(({ code }) => code);

describe("an SWR off the scale", () => {
  test.each(["inf", "∞", "OL", "Infinity"])("as %s is infinite where no scale ends so low", (cell) => {
    const sweep = table(`7.0,${cell}`, "7.1,1.5", "7.2,1.8");
    expect(sweep.reflectionMagnitude[0]).toBe(1);
    expect(bandOf(sweep)).toMatchObject({ verdict: "partial", need: "beyond-tuner" });
    expect(codesOf(sweep)).toContain("saturated");
  });

  const scaleTo = (most: number, decimals: number) =>
    table(
      ...Array.from({ length: 60 }, (_, i) => {
        const swr = 1.2 + 0.004 * (i - 30) ** 2;
        return `${(7 + 0.01 * i).toFixed(2)},${Math.min(swr, most).toFixed(decimals)}`;
      }),
    );

  test("may end low, at a round number that a long run of fine readings keeps to", () => {
    expect(scaleTo(3, 2)).toMatchObject({ ceilingMagnitude: 0.5 });
    expect(scaleTo(3, 1)).toMatchObject({ ceilingMagnitude: null });
    expect(scaleTo(2.83, 2)).toMatchObject({ ceilingMagnitude: null });
  });

  test("is at least the greatest reading where a scale may end there", () => {
    const sweep = table("7.0,inf", "7.1,1.5", "7.2,10");
    expect(sweep).toMatchObject({ kind: "scalar", ceilingMagnitude: 9 / 11 });
  });
});

describe("a reading marked as more than", () => {
  test.each([
    [">2", "7.0,>2", "7.2,>2"],
    [">3", "7.0,>3", "7.2,>3"],
  ])("%s is within no limit, and what it needs is not known", (_, first, last) => {
    const { verdict, need, worst, usable } = bandOf(table(first, "7.1,1.5", last));
    expect(verdict).toBe("partial");
    expect(need).toBe("unknown");
    expect(worst?.isAtLeast).toBe(true);
    expect(usable.withWideRangeTuner).toBeLessThan(1);
  });

  test("by itself on a band needs nobody knows what, unless it is beyond any tuner", () => {
    const sweep = table("7.05,>2", "14.1,>3", "21.2,>10");
    expect([bandOf(sweep), bandOf(sweep, "20m"), bandOf(sweep, "15m")].map(({ need }) => need)).toEqual([
      "unknown",
      "unknown",
      "beyond-tuner",
    ]);
  });

  test("lets no edge be told later than the last reading before it allows", () => {
    // SWR 1.9 at 7.05 and 7.15; at 7.00 and 7.20 only that it is more than 3.
    const sweep = table("6.95,>3", "7.0,>3", "7.05,1.9", "7.1,1.2", "7.15,1.9", "7.2,>3", "7.25,>3");
    const { best, withinLimit } = bandOf(sweep);
    expect(best?.swr).toBeCloseTo(1.2, 1);
    expect(withinLimit.spans.map(({ lowHz, highHz }) => [lowHz > 7_045_000, highHz < 7_155_000])).toEqual([
      [true, true],
    ]);
  });

  test("is no top of a curve, nor a resistor", () => {
    const hump = [6.3, 6.4, 6.4, 6.4, 6.3, 6.1, 5.8].map((swr, i) => `${(13.9 + 0.1 * i).toFixed(1)},${swr}`);
    expect(table(...hump)).toMatchObject({ ceilingMagnitude: null });
    const resistor = Array.from({ length: 15 }, (_, i) => `${1 + i},${i < 9 ? "2.00" : "1.98"}`);
    expect(table(...resistor)).toMatchObject({ ceilingMagnitude: null });
  });

  test("may be anything beyond: its interval has no upper end", () => {
    const rows = Array.from({ length: 41 }, (_, i) => {
      const swr = 1.3 + 0.02 * (i - 20) ** 2;
      return `${(7 + 0.005 * i).toFixed(3)},${swr > 5 ? ">5" : swr.toFixed(3)}`;
    });
    const { worst, uncertainty } = bandOf(table(...rows));
    expect(worst).toMatchObject({ isAtLeast: true, swrHigh: Number.POSITIVE_INFINITY });
    expect(uncertainty?.worstMagnitude).toEqual({ low: worst?.reflectionMagnitude, high: 1 });
  });

  test("has no grade where that hangs on what it is, and one where it does not", () => {
    const rows = (most: number) => Array.from({ length: 36 }, (_, i) => `${(14 + 0.01 * i).toFixed(2)},>${most}`);
    const graded = (most: number) => gradeSweep(table(...rows(most)), { plan, bands: ["20m"] }).bands[0]?.grade;
    expect([graded(5), graded(10), graded(12)]).toEqual([null, "F", "F"]);
  });

  test("keeps its mark where only the band is named", () => {
    const sweep = read("40m >1.5\n20m >3\n15m 1,4\n", "noted.txt");
    expect(sweep).toMatchObject({ ceilingMagnitude: 0.2 });
    expect(bandOf(sweep)).toMatchObject({ need: "unknown", best: { isAtLeast: true } });
    expect(bandOf(sweep, "15m")).toMatchObject({ need: "none", best: { isAtLeast: false } });
  });

  test("is written and read again as what it is", () => {
    const sweep = table("7.0,>3", "7.05,2.5", "7.1,1.5", "7.15,1.6", "7.2,>3");
    const again = read(delimitedText(sweep));
    expect(again).toMatchObject({ ceilingMagnitude: 0.5 });
    expect(Array.from(again.reflectionMagnitude)).toEqual(Array.from(sweep.reflectionMagnitude));
    const { verdict, need, withinLimit } = bandOf(sweep);
    expect(bandOf(again)).toMatchObject({ verdict, need, withinLimit });
  });

  test.each(["rho", "reflection magnitude", "|S11|"])("is one of %s too", (name) => {
    const rows = ["7.0,>0.5", "7.05,0.4", "7.1,0.3", "7.15,0.4", "7.2,>0.5"];
    const sweep = read(`MHz,${name}\n${rows.join("\n")}\n`);
    expect(sweep).toMatchObject({ ceilingMagnitude: 0.5 });
    expect(sweep.frequencyHz.length).toBe(5);
  });

  test("is no number in dB", () => {
    const sweep = read("MHz,S11\n7.0,>-3\n7.05,-6\n7.1,-12\n7.15,-6\n7.2,-4\n");
    expect(sweep.frequencyHz.length).toBe(4);
    expect(sweep).toMatchObject({ ceilingMagnitude: null });
  });

  test("tells no noise: the rest of the sweep is as noisy as without an end of the scale", () => {
    // A series resonance of Q 15 at 7.1 MHz with an unrest of 0.4 % in SWR, on a scale that ends at 6.
    const rows = (most: number) =>
      Array.from({ length: 401 }, (_, i) => {
        const megahertz = 6 + 0.005 * i;
        const x = 15 * (megahertz / 7.1 - 7.1 / megahertz);
        const rho = Math.abs(x) / Math.hypot(2, x);
        const swr = ((1 + rho) / (1 - rho)) * (1 + 0.004 * Math.sin(i * i));
        return `${megahertz.toFixed(3)},${swr >= most ? most.toFixed(3) : swr.toFixed(3)}`;
      });
    const noiseOf = (most: number) => present(bandOf(table(...rows(most))).uncertainty, "an interval").noise;
    expect(noiseOf(6)).toBeGreaterThan(noiseOf(1e6) / 2);
    expect(noiseOf(6)).toBeLessThan(noiseOf(1e6) * 2);
  });
});

describe("readings by hand", () => {
  test("of one band noted twice: both ends of the range count, and that is said", () => {
    const sweep = read("40m 1.5\n40m 2.5\n20m 1.2\n", "noted.txt");
    expect(sweep).toMatchObject({ readings: [{ band: "40m", swrLow: 1.5, swrHigh: 2.5 }, { band: "20m" }] });
    expect(bandOf(sweep).best?.swr).toBeCloseTo(1.5, 12);
    expect(bandOf(sweep).worst?.swr).toBeCloseTo(2.5, 12);
    expect(codesOf(sweep)).toContain("frequency-repeated");
  });

  test("that stand alone beside a curve are judged as single readings", () => {
    const band = bandOf(table("7.05,1.5", "7.1,1.4", "7.15,1.6", "14.1,2.5"), "20m");
    expect(band).toMatchObject({ sweptFraction: 0, verdict: "not-swept", need: "built-in-tuner" });
    expect(band.best?.swr).toBeCloseTo(2.5, 12);
  });
});

describe("readings of few decimals", () => {
  const rows = (decimals: number) =>
    Array.from({ length: 201 }, (_, i) => {
      const megahertz = 7 + 0.001 * i;
      const x = 6 * (megahertz / 7.08 - 7.08 / megahertz);
      const rho = Math.hypot(0.1, x) / Math.hypot(2.1, x);
      return `${megahertz.toFixed(3)},${((1 + rho) / (1 - rho)).toFixed(decimals)}`;
    });

  test("have their rounding in every interval", () => {
    const sweep = table(...rows(1));
    // SWR 1.1 printed for 1.05 to 1.15 at the best: half of that in ρ, (1 - ρ)² / 2 · 0.05.
    expect(sweep.rounding).toBeGreaterThan(0.01);
    const { best, uncertainty } = bandOf(sweep);
    expect(best?.swrLow).toBeLessThan(1.1);
    expect(best?.swrHigh).toBeGreaterThan(1.1);
    const { low, high } = present(uncertainty, "an interval").bestHz;
    expect(low).toBeLessThan(7_080_000);
    expect(high).toBeGreaterThan(7_080_000);
  });

  test("have it in a Touchstone file of real and imaginary parts too", () => {
    const file = (decimals: number) =>
      read(
        `# MHz S RI R 50\n${Array.from({ length: 21 }, (_, i) => `${7 + 0.01 * i} ${(0.3 * Math.cos(i)).toFixed(decimals)} ${(0.3 * Math.sin(i)).toFixed(decimals)}`).join("\n")}\n`,
        "a.s1p",
      );
    // Half a hundredth in each part.
    expect(file(2)).toMatchObject({ rounding: expect.closeTo(0.005 * Math.SQRT2, 12) as number });
    expect(file(5).rounding).toBe(0);
  });

  test("are told from fine ones, which have none worth a word", () => {
    expect(table(...rows(4)).rounding).toBe(0);
  });
});

describe("numbers without a header", () => {
  test.each([
    ["7000 2.1\n7050 1.5\n7100 1.7\n", "--columns frequency:kHz,swr"],
    ["7.000 2.1\n7.050 1.5\n7.100 1.7\n", "--columns frequency:MHz,swr"],
    ["7000000 50 1\n7050000 51 2\n7100000 52 3\n", "--columns frequency:Hz,r,x"],
    ["7.0 50 1 9\n7.1 51 2 9\n7.2 52 3 9\n", "--columns frequency:MHz,r,x,skip"],
  ])("%j are refused with what would read them", (text, hint) => {
    expect(() => read(text, "a.txt")).toThrow(hint);
  });
});

describe("a sweep that cannot be", () => {
  const header = "# MHz S RI R 50\n";
  const line = (megahertz: number, re: number) => `${megahertz} ${re} 0.1\n`;

  test("of which most reflects more than it receives is a problem, some of it a caution", () => {
    const severity = (beyond: number) => {
      const rows = Array.from({ length: 20 }, (_, i) => line(7 + 0.01 * i, i < beyond ? 1.2 : 0.2));
      return read(header + rows.join(""), "a.s1p").findings.find(({ code }) => code === "beyond-total-reflection");
    };
    expect(severity(2)?.severity).toBe("caution");
    expect(severity(15)?.severity).toBe("problem");
  });

  test("whose unit was stated otherwise says that it has its own", () => {
    const [sweep] = readSweeps(new TextEncoder().encode(`${header}${line(7, 0.2)}${line(7.1, 0.1)}`), {
      fileName: "a.s1p",
      frequencyUnit: "kHz",
    });
    expect(codesOf(present(sweep, "a sweep"))).toContain("unit-stated");
  });

  test("of two put together says so, where the second states something else", () => {
    const severity = (second: string) =>
      read(`${header}${line(7, 0.2)}${line(7.1, 0.1)}${second}${line(7.2, 0.2)}`, "a.s1p").findings.find(
        ({ code }) => code === "second-option-line",
      )?.severity;
    expect(severity("# MHz S RI R 50\n")).toBe("info");
    expect(severity("# kHz S MA R 50\n")).toBe("problem");
  });
});
