/**
 * All of a signal must lie where it is allowed, not only its carrier.
 *
 * Sources: NCVEC question pool of the Extra class, E1A01, E1A03 and E1A04; 47 CFR 97.303(h)(3) for the channels on 60 m (read
 * in quotations).
 */
import { planById, privilegeFor } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { present } from "../support/sweeps.js";

const plan = present(planById("us-part97"), "us-part97");

describe("what a signal occupies beside its carrier", () => {
  test("NCVEC E1A03: 14147.2 kHz is the highest carrier for a data signal 2.8 kHz wide in the upper sideband", () => {
    const data = (frequencyHz: number) =>
      privilegeFor(plan, {
        frequencyHz,
        emission: "data",
        licenceClass: "extra",
        occupied: { belowHz: 0, aboveHz: 2800 },
      }).allowed;
    expect(data(14_147_200)).toBe(true);
    expect(data(14_147_201)).toBe(false);
  });

  test("NCVEC E1A04: 3 kHz of lower sideband at 3601 kHz reach below 3600 kHz, where phone is not allowed", () => {
    const phone = (belowHz: number) =>
      privilegeFor(plan, {
        frequencyHz: 3_601_000,
        emission: "phone",
        licenceClass: "extra",
        occupied: { belowHz, aboveHz: 0 },
      }).allowed;
    expect(phone(3000)).toBe(false);
    expect(phone(1000)).toBe(true);
  });

  test("NCVEC E1A01: the carrier at 14348 kHz lies within the band although 3 kHz above it do not", () => {
    const extra = { frequencyHz: 14_348_000, emission: "phone", licenceClass: "extra" } as const;
    expect(privilegeFor(plan, extra).allowed).toBe(true);
    expect(privilegeFor(plan, { ...extra, occupied: { belowHz: 0, aboveHz: 2000 } }).allowed).toBe(true);
    expect(privilegeFor(plan, { ...extra, occupied: { belowHz: 0, aboveHz: 2001 } }).allowed).toBe(false);
  });

  test("97.303(h): a 2.8 kHz signal fills a 60 m channel and nothing more", () => {
    const channel = (frequencyHz: number, aboveHz: number) =>
      privilegeFor(plan, {
        frequencyHz,
        emission: "phone",
        licenceClass: "general",
        occupied: { belowHz: 0, aboveHz },
      });
    expect(channel(5_330_600, 2800)).toEqual({ allowed: true, limits: [{ watts: 100, basis: "erp" }] });
    expect(channel(5_330_600, 2801).allowed).toBe(false);
    expect(channel(5_330_599, 2800).allowed).toBe(false);
  });
});
