/** CSV (R, X, SWR) and Touchstone of the same sweep give the same results, to the digits that the CSV carries. */
import { type BandResult, check, planById, readSweeps, sampleImpedance, type VectorSweep } from "@feedpoint/core";
import { expect, test } from "vitest";
import { COAX, modelled, sweepModelled } from "../support/modelled-sweeps.js";
import { readNec } from "../support/nec-truth.js";
import { present } from "../support/sweeps.js";

const plan = present(planById("itu-r2"), "the plan");
// Without noise: with it, which of two fits serves may turn on a hair, and what is compared here is the reading.
const sweep = sweepModelled(modelled(readNec("vee-40m"), COAX), {
  kind: "vector",
  stepHz: 50_000,
  noise: 0,
  seed: 1,
}) as VectorSweep;
const rows = Array.from(sweep.frequencyHz, (frequencyHz, i) => ({
  mhz: (frequencyHz / 1e6).toFixed(3),
  real: sweep.reflectionReal[i] ?? Number.NaN,
  imaginary: sweep.reflectionImaginary[i] ?? Number.NaN,
  impedance: sampleImpedance(sweep, i),
  rho: sweep.reflectionMagnitude[i] ?? Number.NaN,
}));
const read = (text: string, fileName: string) =>
  present(readSweeps(new TextEncoder().encode(text), { fileName })[0], "sweep");
const band = (text: string, fileName: string) =>
  check(read(text, fileName), { plan, bands: ["40m"] }).bands[0] as BandResult;

test("R and X to two decimals give what Touchstone gives, within the rounding", () => {
  const touchstone = rows.map(({ mhz, real, imaginary }) => `${mhz} ${real} ${imaginary}`);
  const delimited = rows.map(
    ({ mhz, impedance, rho }) =>
      `${mhz},${impedance.real.toFixed(2)},${impedance.imaginary.toFixed(2)},${((1 + rho) / (1 - rho)).toFixed(2)}`,
  );
  const one = band(["# MHz S RI R 50", ...touchstone].join("\n"), "a.s1p");
  const other = band(["Frequency (MHz),R (ohm),X (ohm),SWR", ...delimited].join("\n"), "a.csv");
  expect(other.verdict).toBe(one.verdict);
  expect(other.need).toBe(one.need);
  // 0.005 ohm in 50 ohm is 5e-5 in Γ, which is 2e-4 in an SWR of 2 and, on this antenna's flanks, some 50 Hz at an edge.
  expect(Math.abs((other.best?.swr ?? 0) - (one.best?.swr ?? 9))).toBeLessThan(3e-4);
  expect(Math.abs((other.worst?.swr ?? 0) - (one.worst?.swr ?? 9))).toBeLessThan(1e-3);
  expect(Math.abs((other.bandwidth?.lowHz ?? 0) - (one.bandwidth?.lowHz ?? 9e9))).toBeLessThan(100);
  expect(Math.abs((other.bandwidth?.highHz ?? 0) - (one.bandwidth?.highHz ?? 9e9))).toBeLessThan(100);
});
