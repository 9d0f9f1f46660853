/** What United States licence classes may transmit: the library against the table in support/us-privileges.ts. */
import { planById, privilegeFor } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { present } from "../support/sweeps.js";
import { PRIVILEGES } from "../support/us-privileges.js";

const plan = present(planById("us-part97"), "us-part97");

describe("single transmissions", () => {
  test.each(PRIVILEGES)("$licenceClass, $emission on $kilohertz kHz: $allowed ($source)", (row) => {
    const { kilohertz, emission, licenceClass, occupied } = row;
    const transmission = { frequencyHz: kilohertz * 1000, emission, licenceClass };
    const result = privilegeFor(plan, occupied === undefined ? transmission : { ...transmission, occupied });
    expect(result.allowed).toBe(row.allowed);
    if (row.maxPower !== null) expect(result.limits).toEqual([row.maxPower]);
    if (!row.allowed) expect(result.limits).toEqual([]);
  });
});
