/** What is left out of a analysis is said. */
import { check, diff, planById, readSweeps } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { evenly, present, sweepOfMagnitudes } from "../support/sweeps.js";

const plan = present(planById("us-part97"), "us-part97");
const codesOf = (findings: readonly { code: string }[]) => findings.map(({ code }) => code);
const flat = (rho: number) => sweepOfMagnitudes(evenly(3e6, 30e6, 50e3), Array<number>(541).fill(rho));
const readings = (text: string) => present(readSweeps(new TextEncoder().encode(text))[0], "sweep");

describe("bands that a class has nothing of", () => {
  test("are named where they were swept, in the order of the plan", () => {
    const { findings } = check(flat(0.2), { plan, licenceClass: "technician" });
    expect(findings.find(({ code }) => code === "bands-closed")?.message).toBe(
      "Class technician has no privileges on 60m, 30m, 20m, 17m, 12m.",
    );
  });

  test("are not spoken of where the class has all of them, or others were asked for", () => {
    expect(codesOf(check(flat(0.2), { plan, licenceClass: "extra" }).findings)).not.toContain("bands-closed");
    const asked = check(flat(0.2), { plan, licenceClass: "technician", bands: ["40m"] });
    expect(codesOf(asked.findings)).not.toContain("bands-closed");
  });
});

describe("single readings", () => {
  test("in no band are named: a decimal point slips", () => {
    const { findings } = check(readings("MHz,swr\n7.1,1.5\n141,2\n"), { plan });
    expect(findings.find(({ code }) => code === "spot-outside-bands")?.message).toContain("141.000 MHz");
    expect(codesOf(findings)).not.toContain("low-swr-may-be-loss");
  });

  test("within bands are not", () => {
    const { findings } = check(readings("MHz,swr\n7.1,1.5\n14.1,2\n"), { plan });
    expect(codesOf(findings)).not.toContain("spot-outside-bands");
  });
});

describe("repeats", () => {
  test("that differ among themselves are told, on their own side", () => {
    const { findings } = diff([flat(0.2), flat(0.3)], [flat(0.2), flat(0.21)], { plan });
    const told = findings.filter(({ code }) => code === "repeats-differ");
    expect(told.map(({ message }) => message.slice(0, 19))).toEqual(["The 2 sweeps before"]);
  });
});
