/** What is judged, and what the choice of plan, class and bands leaves open. Plans are invented but for the common one. */
import { modeOf, planById, usableBands } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { closedBands, planFindings, planInfo, selectBands } from "../../packages/core/src/bands/scope.js";
import { inventedPlan } from "../support/invented-plan.js";
import { present } from "../support/sweeps.js";

const one = inventedPlan(
  [
    { lowHz: 7.0e6, highHz: 7.1e6, grants: [{ classes: ["full"], emissions: ["cw"] }] },
    { lowHz: 7.1e6, highHz: 7.2e6, grants: [{ classes: ["full"], emissions: ["phone"] }] },
  ],
  ["full", "first"],
);
const [band] = one.bands;
const plan = { ...one, bands: [present(band, "40m"), { ...present(band, "40m"), band: "30m" }] };
const codes = (findings: readonly { readonly code: string }[]) => findings.map(({ code }) => code);

describe("bands", () => {
  const named = (scope: Parameters<typeof selectBands>[0]) => selectBands(scope).map((each) => each.band);

  test("are all of the plan, or those named, in the plan's order", () => {
    expect(named({ plan })).toEqual(["40m", "30m"]);
    expect(named({ plan, bands: ["30m", "40m"] })).toEqual(["40m", "30m"]);
    expect(named({ plan, bands: ["30m"] })).toEqual(["30m"]);
  });

  test("are those that the class may use, and what of them the modes may", () => {
    expect(named({ plan, licenceClass: "first" })).toEqual([]);
    const [morse] = selectBands({ plan, modes: [modeOf("cw")] });
    expect(morse?.pieces).toEqual([{ lowHz: 7.0e6, highHz: 7.1e6 }]);
  });
});

describe("closed bands", () => {
  const open = usableBands(plan, null).filter((each) => each.band === "40m");
  const swept = () => true;

  test("that were named are problems, one each, swept or not", () => {
    const said = closedBands({ plan, bands: ["40m", "30m", "20m"] }, open, () => false);
    expect(said.map(({ code, severity, band: on }) => [code, severity, on])).toEqual([
      ["band-not-permitted", "problem", "30m"],
      ["band-not-permitted", "problem", "20m"],
    ]);
  });

  test("that were not named are told once, where anything of them was swept", () => {
    const said = closedBands({ plan }, [], swept);
    expect(said.map(({ code, severity }) => [code, severity])).toEqual([["bands-closed", "info"]]);
    expect(closedBands({ plan }, [], () => false)).toEqual([]);
    expect(closedBands({ plan }, usableBands(plan, null), swept)).toEqual([]);
    expect(codes(closedBands({ plan }, open, (lowHz, highHz) => lowHz === 7.0e6 && highHz === 7.2e6))).toEqual([
      "bands-closed",
    ]);
  });
});

describe("a plan", () => {
  test("with classes asks for one", () => {
    expect(codes(planFindings({ plan }, []))).toEqual(["class-not-stated"]);
    expect(codes(planFindings({ plan, licenceClass: "full" }, []))).toEqual([]);
    expect(codes(planFindings({ plan: inventedPlan([{ lowHz: 7.0e6, highHz: 7.2e6 }]) }, []))).toEqual([]);
  });

  test("agreed among amateurs is no law; the common one is nobody's choice", () => {
    expect(codes(planFindings({ plan: { ...plan, kind: "band-plan" }, licenceClass: "full" }, []))).toEqual([
      "plan-voluntary",
    ]);
    expect(codes(planFindings({ plan: present(planById("itu-common"), "plan") }, []))).toContain("plan-common");
    expect(codes(planFindings({ plan: present(planById("itu-r1"), "plan") }, []))).not.toContain("plan-common");
  });

  test("is identified in the result, with the class", () => {
    const { id, title, edition, source } = plan;
    expect(planInfo({ plan })).toEqual({ id, title, edition, source, certainty: "from-sources", licenceClass: null });
    expect(planInfo({ plan, licenceClass: "full" }).licenceClass).toBe("full");
  });
});
