/** Sweeps against different references: converted where there is phase, not comparable where there is none. */
import { diff, planById, withReference } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { evenly, type Pair, present, sweepOfMagnitudes, sweepOfReflections } from "../support/sweeps.js";

const plan = present(planById("itu-r1"), "plan");
const axis = evenly(6.9e6, 7.3e6, 10e3);
const codes = (findings: readonly { code: string; severity: string }[]) =>
  findings.filter(({ code }) => code === "different-reference").map(({ severity }) => severity);

describe("sweeps against 50 and 75 Ω", () => {
  test("of one antenna are the same, once converted", () => {
    const at50 = sweepOfReflections(
      axis,
      axis.map((hz): Pair => [0.1, (hz - 7.1e6) / 1e6]),
    );
    const at75 = withReference(at50, 75);
    const result = diff(at50, at75, { plan, bands: ["40m"] });
    expect(codes(result.findings)).toEqual(["info"]);
    expect(result.bands.map(({ verdict }) => verdict)).toEqual(["unchanged"]);
    expect(result.after[0]?.referenceOhms).toBe(75);
  });

  test("without phase cannot be compared, and nothing is said of their causes", () => {
    const scalar = sweepOfMagnitudes(
      axis,
      axis.map(() => 0.3),
    );
    const result = diff(scalar, { ...scalar, referenceOhms: 75 }, { plan, bands: ["40m"] });
    expect(codes(result.findings)).toEqual(["problem"]);
    expect(result.bands.map(({ verdict }) => verdict)).toEqual(["not-comparable"]);
  });
});
