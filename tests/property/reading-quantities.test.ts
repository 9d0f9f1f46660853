/** One sweep, given by whichever columns say the same, must be read as one and the same reflection. */
import { readSweeps, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { magnitudesOf, type ResonantSweep, resonantSweep } from "../support/arbitrary-antennas.js";
import { fc } from "../support/property.js";
import type { Pair } from "../support/sweeps.js";

const degrees = ([real, imaginary]: Pair) => (Math.atan2(imaginary, real) * 180) / Math.PI;
const size = ([real, imaginary]: Pair) => Math.hypot(real, imaginary);

/** Z = 50 (1 + Γ) / (1 - Γ), written out in real arithmetic. */
function impedanceOf([real, imaginary]: Pair): Pair {
  const square = (1 - real) ** 2 + imaginary ** 2;
  return [(50 * (1 - real ** 2 - imaginary ** 2)) / square, (100 * imaginary) / square];
}

function read(
  { frequencyHz, reflections }: ResonantSweep,
  header: string,
  cells: (reflection: Pair) => number[],
): Sweep {
  const rows = reflections.map((reflection, i) => [frequencyHz[i], ...cells(reflection)].join(","));
  const [sweep] = readSweeps(new TextEncoder().encode(`Frequency (Hz),${header}\n${rows.join("\n")}\n`));
  if (sweep === undefined) throw new Error("no sweep");
  return sweep;
}

describe("columns that give ρ", () => {
  test.each<[string, (rho: number) => number]>([
    ["SWR", (rho) => (1 + rho) / (1 - rho)],
    ["VSWR", (rho) => (1 + rho) / (1 - rho)],
    ["Stehwellenverhältnis", (rho) => (1 + rho) / (1 - rho)],
    ["Return Loss (dB)", (rho) => -20 * Math.log10(rho)],
    ["RL", (rho) => -20 * Math.log10(rho)],
    ["Rückflussdämpfung (dB)", (rho) => -20 * Math.log10(rho)],
    ["S11 (dB)", (rho) => 20 * Math.log10(rho)],
    ["|S11|", (rho) => rho],
    ["rho", (rho) => rho],
    ["|Γ|", (rho) => rho],
    ["Reflected power (%)", (rho) => 100 * rho * rho],
  ])("%s", (header, cell) => {
    fc.assert(
      fc.property(resonantSweep, (points) => {
        const sweep = read(points, header, (reflection) => [cell(size(reflection))]);
        expect(sweep.kind).toBe("scalar");
        magnitudesOf(points).forEach((rho, i) => {
          expect(Math.abs((sweep.reflectionMagnitude[i] ?? Number.NaN) - rho)).toBeLessThan(1e-12);
        });
      }),
      { numRuns: 10 },
    );
  });
});

describe("pairs of columns that give Γ", () => {
  test.each<[string, (reflection: Pair) => number[]]>([
    ["Re(S11),Im(S11)", ([real, imaginary]) => [real, imaginary]],
    ["S11 real,S11 imag", ([real, imaginary]) => [real, imaginary]],
    ["|S11|,Phase (deg)", (reflection) => [size(reflection), degrees(reflection)]],
    ["|S11|,Phase (rad)", ([real, imaginary]) => [Math.hypot(real, imaginary), Math.atan2(imaginary, real)]],
    ["S11 (dB),Phase (deg)", (reflection) => [20 * Math.log10(size(reflection)), degrees(reflection)]],
    ["Return loss (dB),Phase (deg)", (reflection) => [-20 * Math.log10(size(reflection)), degrees(reflection)]],
    ["Z (ohm),Theta (deg)", (reflection) => [size(impedanceOf(reflection)), degrees(impedanceOf(reflection))]],
    ["Re(Z),Im(Z)", (reflection) => [...impedanceOf(reflection)]],
  ])("%s", (header, cells) => {
    fc.assert(
      fc.property(resonantSweep, (points) => {
        // A reactance that is nowhere negative is rightly doubted; such a sweep tells nothing here.
        fc.pre(points.reflections.some(([, imaginary]) => imaginary < 0));
        const sweep = read(points, header, cells);
        if (sweep.kind !== "vector") throw new Error("the phase was not used");
        points.reflections.forEach(([real, imaginary], i) => {
          expect(Math.abs((sweep.reflectionReal[i] ?? Number.NaN) - real)).toBeLessThan(1e-12);
          expect(Math.abs((sweep.reflectionImaginary[i] ?? Number.NaN) - imaginary)).toBeLessThan(1e-12);
        });
      }),
      { numRuns: 10 },
    );
  });
});
