/**
 * A single-resonance 40 m antenna behind 20 m of coax at 500 kHz steps with noise 0.001: samples half a megahertz apart
 * still place the 2:1 edges within 6 kHz and the best SWR within 0.02, in 95 of 100 sweeps. Truth from the
 * model's fine grid (tests/nec), without the library.
 */
import { curveOf, extremesBetween, spansWithin, swrFromReflectionMagnitude, traceOf } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { COAX, modelled, sweepModelled } from "../support/modelled-sweeps.js";
import { bandTruth, readNec } from "../support/nec-truth.js";
import { present } from "../support/sweeps.js";

const SWEEPS = 100;
const LIMIT = 1 / 3;
const greatestOf95 = (errors: readonly number[]) => errors.toSorted((a, b) => a - b)[Math.floor(0.95 * errors.length)];

describe.each(["vee-40m", "vee-40m-trimmed", "vee-40m-drooped"])("%s behind 20 m of coax, 500 kHz steps", (name) => {
  const model = modelled(readNec(name), { ...COAX, lengthM: 20 });
  const truth = bandTruth(model.fine, 7_000_000, 7_300_000);
  const found = Array.from({ length: SWEEPS }, (_, seed) => {
    const sweep = sweepModelled(model, { kind: "vector", stepHz: 500_000, noise: 0.001, seed: 1 + seed * 101 });
    const trace = traceOf(curveOf(sweep));
    const span = spansWithin(trace, LIMIT).find(({ lowHz, highHz }) => lowHz < truth.bestHz && highHz > truth.bestHz);
    const { best } = present(extremesBetween(trace, truth.lowEdgeHz, truth.highEdgeHz), "extremes");
    return { span: present(span, `a 2:1 span in sweep ${seed}`), best };
  });

  test("the 2:1 edges lie within 6 kHz in 95 of 100 sweeps", () => {
    const errors = found.map(({ span }) =>
      Math.max(Math.abs(span.lowHz - truth.lowEdgeHz), Math.abs(span.highHz - truth.highEdgeHz)),
    );
    expect(greatestOf95(errors)).toBeLessThan(6000);
  });

  test("the best SWR lies within 0.02 in 95 of 100 sweeps", () => {
    const truthSwr = swrFromReflectionMagnitude(truth.bestRho);
    const errors = found.map(({ best }) => Math.abs(swrFromReflectionMagnitude(best.reflectionMagnitude) - truthSwr));
    expect(greatestOf95(errors)).toBeLessThan(0.02);
  });
});
