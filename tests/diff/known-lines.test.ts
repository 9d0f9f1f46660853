/** Lines that the operator knows: taken out of both sides, and the antennas compared at their ends. */
import { type Deployment, deploymentOf, diff, feedlineFrom, planById, type Sweep, scalarSweep } from "@feedpoint/core";
import { expect, test } from "vitest";
import { sweepAtAnalyser } from "../../packages/core/src/bands/antenna-end.js";
import { present } from "../support/sweeps.js";
import { resonance, swept } from "./resonances.js";

const plan = present(planById("itu-r1"), "itu-r1");
const SHORT = feedlineFrom({ kind: "rg-58", lengthM: 12 });
const LONG = feedlineFrom({ kind: "rg-213", lengthM: 25 });
const TELEVISION = feedlineFrom({ lengthM: 14, characteristicOhms: 75, loss: [{ frequencyHz: 10e6, dbPer100M: 2.4 }] });
const feedlines = { before: [SHORT], after: [LONG] };

/** An antenna as it is swept at the near end of a line. */
const through = (line: typeof SHORT, ohms: number, seed: number): Sweep =>
  sweepAtAnalyser(swept(resonance({ ohms }), { noise: 0.001, seed }), line, 50);
const saidOf = ({ findings }: ReturnType<typeof diff>) =>
  findings.find(({ code }) => code === "lines-taken-out")?.message ?? "";
const verdictsOf = ({ bands }: ReturnType<typeof diff>) => bands.map(({ verdict }) => verdict);

test("the same antenna behind another line is unchanged, and the line is said to explain the difference", () => {
  const result = diff(through(SHORT, 50, 1), through(LONG, 50, 2), { plan, feedlines });
  expect(verdictsOf(result)).toEqual(["unchanged"]);
  expect(saidOf(result)).toMatch(/12 m, RG-58.*25 m, RG-213.*the change of the line explains it/);
});

test("another antenna behind another line is judged as it would be without either", () => {
  const [first, second] = [
    swept(resonance({ ohms: 50 }), { noise: 0.001, seed: 1 }),
    swept(resonance({ ohms: 100 }), { noise: 0.001, seed: 2 }),
  ];
  const bare = diff(first, second, { plan });
  const result = diff(through(SHORT, 50, 1), through(LONG, 100, 2), { plan, feedlines });
  expect(verdictsOf(result)).toEqual(verdictsOf(bare));
  expect(verdictsOf(result)).toEqual(["worse"]);
  expect(result.bands[0]?.before.best?.swr).toBeCloseTo(bare.bands[0]?.before.best?.swr ?? 0, 2);
  expect(result.bands[0]?.after.best?.swr).toBeCloseTo(bare.bands[0]?.after.best?.swr ?? 0, 2);
});

test("line of 75 Ω is taken out at its own impedance, and the SWR stays against that of the sweeps", () => {
  const result = diff(through(SHORT, 60, 1), through(TELEVISION, 60, 2), {
    plan,
    feedlines: { before: [SHORT], after: [TELEVISION] },
  });
  expect(verdictsOf(result)).toEqual(["unchanged"]);
  expect(result.findings.map(({ code }) => code)).not.toContain("different-reference");
});

test("a length that is off by a hand is taken out too, one that is off by metres is doubted", () => {
  const stated = (lengthM: number) => ({ before: [SHORT], after: [feedlineFrom({ kind: "rg-213", lengthM })] });
  const near = diff(through(SHORT, 50, 1), through(LONG, 50, 2), { plan, feedlines: stated(25.3) });
  expect(verdictsOf(near)).toEqual(["unchanged"]);
  expect(saidOf(near)).toMatch(/0\.5 m \(electrical\) less line .* was taken out too/);
  const far = diff(through(SHORT, 50, 1), through(LONG, 50, 2), { plan, feedlines: stated(32) });
  expect(verdictsOf(far)).toEqual(["not-comparable"]);
  expect(saidOf(far)).toMatch(/see whether both lines are what you stated/);
});

test("what is asked to be taken out is said to be, however far it is from what was stated", () => {
  const wrong = { before: [SHORT], after: [feedlineFrom({ kind: "rg-213", lengthM: 32 })] };
  const result = diff(through(SHORT, 50, 1), through(LONG, 50, 2), { plan, feedlines: wrong, isSamePlane: true });
  expect(verdictsOf(result)).toEqual(["unchanged"]);
  expect(saidOf(result)).toMatch(/more than such lengths .* was taken out too, as was asked for/);
});

test("repeats may each have a line of their own; as many as deployments, or one", () => {
  const repeats = (line: typeof SHORT): Deployment[] => [1, 2].map((seed) => deploymentOf([through(line, 50, seed)]));
  const result = diff(repeats(SHORT), repeats(LONG), { plan, feedlines: { before: [SHORT, SHORT], after: [LONG] } });
  expect(verdictsOf(result)).toEqual(["unchanged"]);
  expect(() =>
    diff(repeats(SHORT), repeats(LONG), { plan, feedlines: { before: [SHORT, SHORT, SHORT], after: [LONG] } }),
  ).toThrow(/feedlines\.before/);
});

test("without phase no line is taken out, which is said", () => {
  const { frequencyHz, reflectionMagnitude } = through(LONG, 50, 2);
  const bare = scalarSweep(
    { label: "bare", referenceOhms: 50 },
    { frequencyHz: Float64Array.from(frequencyHz), reflectionMagnitude: Float64Array.from(reflectionMagnitude) },
  );
  const codes = diff(through(SHORT, 50, 1), bare, { plan, feedlines }).findings.map(({ code }) => code);
  expect(codes).toContain("lines-need-phase");
  expect(codes).not.toContain("lines-taken-out");
});

test("a line stated to lose more than the sweep lets it is a problem", () => {
  const lossy = feedlineFrom({ lengthM: 25, loss: [{ frequencyHz: 10e6, dbPer100M: 30 }] });
  const result = diff(through(SHORT, 50, 1), through(LONG, 50, 2), {
    plan,
    feedlines: { before: [SHORT], after: [lossy] },
  });
  expect(result.findings.filter(({ severity }) => severity === "problem").map(({ code }) => code)).toEqual([
    "feedline-loss-too-high",
  ]);
});
