/**
 * Locators: the definition of the IARU locator system (Maidenhead, 1980; WGS 84) at commonly used test places (from memory).
 * Ways on the earth: geographiclib-geodesic 2.2.0 (C. Karney, J. Geodesy 87:43, 2013) between centres of locators.
 * Signed ranks and Hodges-Lehmann: the example of R's help page of wilcox.test (Hollander and Wolfe, depression scores).
 * McNemar's exact test: binomial sums. Receivers as clusters: differences made up for the purpose, with the sums of an analysis
 * of variance of one way.
 */
import { bearingDeg, distanceKm, locatorArea } from "@feedpoint/core";
import { expect, test } from "vitest";
import { clusteredMean, signFlipChance, splitChance } from "../../packages/core/src/numbers/clusters.js";
import { hodgesLehmann, hodgesLehmannInterval, signedRanks } from "../../packages/core/src/numbers/hodges-lehmann.js";
import { present } from "../support/sweeps.js";

test.each([
  ["JO01", 51.5, 1],
  ["FN20", 40.5, -75],
  ["JN58td", 48.145833, 11.625],
  ["FN31pr", 41.729167, -72.708333],
  ["GF15vc", -34.895833, -56.208333],
  ["FM18lw", 38.9375, -77.041667],
  ["RE78ir", -41.270833, 174.708333],
  ["CM87wj", 37.395833, -122.125],
  ["JN58TD25", 48.147917, 11.604167],
  ["AA00aa", -89.979167, -179.958333],
  ["RR99xx", 89.979167, 179.958333],
])("the centre of %s lies at %f, %f", (text, latitude, longitude) => {
  const area = present(locatorArea(text), text);
  expect(area.latitude).toBeCloseTo(latitude, 5);
  expect(area.longitude).toBeCloseTo(longitude, 5);
});

test.each(["", "J", "JO0", "SS00", "JO01yy", "JOxx01", "mooring"])('"%s" is no locator', (text) => {
  expect(locatorArea(text)).toBeNull();
});

test.each([
  ["JN58td", "FM18lw", 6834.2468, 297.5961],
  ["FN31pr", "CM87wj", 4215.4727, 280.2886],
  ["JO01", "JN48", 663.0349, 117.0793],
  ["IO91wm", "FN31pr", 5429.6097, 288.6109],
  ["IO91wm", "RE78ir", 18799.6853, 20.6327],
  ["JN58td", "GF15vc", 11395.5219, 231.2897],
  ["FN20", "JO22", 5958.6239, 48.3023],
])("from %s to %s it is %f km at %f degrees on the ellipsoid, within 0.6 %% on the sphere", (from, to, km, azimuth) => {
  const [here, there] = [present(locatorArea(from), from), present(locatorArea(to), to)];
  expect(Math.abs(distanceKm(here, there) / km - 1)).toBeLessThan(0.006);
  // Nearly at the other end of the earth the way on a sphere begins elsewhere.
  expect(Math.abs(bearingDeg(here, there) - azimuth)).toBeLessThan(km > 15_000 ? 0.5 : 0.2);
});

test("the way on the sphere is what the sphere says", () => {
  const [here, there] = [present(locatorArea("JO01"), ""), present(locatorArea("JN48"), "")];
  expect(distanceKm(here, there)).toBeCloseTo(661.459, 3);
  expect(bearingDeg(here, there)).toBeCloseTo(117.1485, 4);
});

const X = [1.83, 0.5, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.3];
const Y = [0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29];

test("nine pairs of scores differ by 0.46, between 0.010 and 0.786", () => {
  const differences = X.map((x, i) => x - (Y[i] as number));
  expect(hodgesLehmann(differences)).toBeCloseTo(0.46, 3);
  const interval = present(hodgesLehmannInterval(differences), "interval");
  expect(interval.low).toBeCloseTo(0.01, 3);
  expect(interval.high).toBeCloseTo(0.786, 3);
  const { statistic, chance } = signedRanks(differences);
  expect(statistic).toBe(40);
  expect(chance).toBeCloseTo(0.0390625, 10);
});

test("whole numbers share their ranks", () => {
  const values = [2, 1, 3, 2, 0, 4, 2, 1, -1, 3, 2, 5];
  expect(hodgesLehmann(values)).toBe(2);
  expect(hodgesLehmannInterval(values)).toEqual({ low: 1, high: 3 });
  const { statistic, chance } = signedRanks(values);
  expect(statistic).toBe(64);
  expect(chance).toBeCloseTo(0.00390625, 10);
});

test("five values have no such interval", () => {
  expect(hodgesLehmannInterval([1, 2, 3, 4, 5])).toBeNull();
});

test.each([
  [15, 5, 0.04138946533],
  [9, 1, 0.021484375],
  [6, 0, 0.03125],
  [0, 0, 1],
])("a split of %i and %i has a chance of %f", (one, other, chance) => {
  expect(splitChance(one, other)).toBeCloseTo(chance, 10);
});

const RECEIVERS = [
  [3, 2, 4, 3, 2, 3, 4, 3],
  [1, 0, 2, 1],
  [5, 6, 4, 5, 5, 6],
  [-1, 0],
  [2, 3, 2],
];

test("receivers are the witnesses, and not their reports: five of them cannot tell", () => {
  const all = RECEIVERS.flat();
  const mean = all.reduce((sum, value) => sum + value, 0) / all.length;
  const error = Math.sqrt(all.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (all.length - 1) / all.length);
  // As if every pair were a witness of its own: wrongly sure.
  expect(mean).toBeCloseTo(2.826, 3);
  expect(mean - 2.0739 * error).toBeCloseTo(2.005, 3);

  const within = 0.55556;
  const groups = RECEIVERS.map((values) => ({
    value: values.reduce((sum, value) => sum + value, 0) / values.length,
    variance: within / values.length,
  }));
  const { mean: together, interval } = clusteredMean(groups);
  expect(Math.abs(together - 2.228)).toBeLessThan(0.05);
  expect(present(interval, "interval").low).toBeLessThan(0);
  expect(present(interval, "interval").high).toBeGreaterThan(4);
  expect(signFlipChance(groups.map(({ value }) => value))).toBe(0.125);
});

test("groups that scatter less than they should have no variance between them", () => {
  expect(
    clusteredMean([
      { value: 1, variance: 4 },
      { value: 1.1, variance: 4 },
      { value: 0.9, variance: 4 },
    ]).between,
  ).toBe(0);
});
