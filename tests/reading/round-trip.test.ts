/** A sweep written as text and read again is the same sweep, to the last bit. */
import {
  delimitedText,
  type ReadOptions,
  type Sweep,
  type SweepDetails,
  scalarSweep,
  touchstoneText,
  type VectorSweep,
  vectorSweep,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { notesOf, RI_ROWS, RX_ROWS, readOne, textOf } from "../support/known-load.js";
import { fc } from "../support/property.js";

/** Any double of a reflection's size and beyond, down to the smallest there is; the sign of zero has a test of its own. */
const anyPart = fc
  .oneof(
    fc.double({ min: -1, max: 1, noNaN: true }),
    fc.double({ min: -40, max: 40, noNaN: true }),
    fc.double({ min: -1e-300, max: 1e-300, noNaN: true }),
    fc.constantFrom(0, 1, -1, 0.1, 1 / 3, Number.MIN_VALUE),
  )
  .map((value) => (value === 0 ? 0 : value));

/** Frequencies of any digits, as a reader may have made them by averaging or shifting. */
const anyAxis = fc.uniqueArray(fc.double({ min: 1e5, max: 1e10, noNaN: true }), { minLength: 1, maxLength: 30 });
const anyReference = fc.oneof(fc.constantFrom(50, 75, 450), fc.double({ min: 0.01, max: 10_000, noNaN: true }));

const details = (referenceOhms: number, comments: readonly string[] = []): SweepDetails => ({
  label: "computed",
  source: { file: "computed", format: "computed", description: "computed by a test", comments },
  referenceOhms,
});

const anyVector: fc.Arbitrary<VectorSweep> = fc
  .tuple(anyAxis, anyReference, fc.infiniteStream(anyPart))
  .map(([axis, referenceOhms, parts]) => {
    const column = () => Float64Array.from(axis, () => parts.next().value);
    const columns = {
      frequencyHz: Float64Array.from(axis).sort(),
      reflectionReal: column(),
      reflectionImaginary: column(),
    };
    return vectorSweep(details(referenceOhms), columns);
  });

const anyScalar: fc.Arbitrary<Sweep> = fc
  .tuple(anyAxis, anyReference, fc.infiniteStream(anyPart))
  .map(([axis, referenceOhms, parts]) => {
    const reflectionMagnitude = Float64Array.from(axis, () => Math.abs(parts.next().value));
    return scalarSweep(details(referenceOhms), { frequencyHz: Float64Array.from(axis).sort(), reflectionMagnitude });
  });

function expectSame(again: Sweep, sweep: Sweep): void {
  const columns = ["frequencyHz", "reflectionMagnitude", "reflectionReal", "reflectionImaginary"] as const;
  expect(again.kind).toBe(sweep.kind);
  expect(Object.is(again.referenceOhms, sweep.referenceOhms)).toBe(true);
  for (const name of columns) {
    const before = name in sweep ? (sweep as VectorSweep)[name] : new Float64Array();
    const after = name in again ? (again as VectorSweep)[name] : new Float64Array();
    expect(after).toHaveLength(before.length);
    const changed = [...before.keys()].filter((i) => !Object.is(before[i], after[i]));
    expect(changed.map((i) => [name, before[i], after[i]])).toEqual([]);
  }
}

/** Read as the same reflection at the same reference, which delimited text states in a comment only. */
const told = ({ referenceOhms }: Sweep): ReadOptions => ({ referenceOhms });

describe("any sweep", () => {
  test("vector, as Touchstone", () => {
    fc.assert(
      fc.property(anyVector, (sweep) => {
        expectSame(readOne(touchstoneText(sweep)), sweep);
      }),
      { numRuns: 400 },
    );
  });

  test("vector, as delimited text", () => {
    fc.assert(
      fc.property(anyVector, (sweep) => {
        expectSame(readOne(delimitedText(sweep), told(sweep)), sweep);
      }),
      { numRuns: 400 },
    );
  });

  test("scalar, as delimited text", () => {
    fc.assert(
      fc.property(anyScalar, (sweep) => {
        expectSame(readOne(delimitedText(sweep), told(sweep)), sweep);
      }),
      { numRuns: 400 },
    );
  });

  test("vector, from one form to the other and back", () => {
    fc.assert(
      fc.property(anyVector, (sweep) => {
        const delimited = readOne(delimitedText(sweep), told(sweep));
        if (delimited.kind !== "vector") throw new Error("the phase was lost");
        const touchstone = readOne(touchstoneText(delimited));
        expectSame(readOne(delimitedText(touchstone), told(sweep)), sweep);
      }),
      { numRuns: 200 },
    );
  });
});

const AXIS = [7e6, 7.1e6, 7.2e6];
const vector = (real: readonly number[], imaginary: readonly number[], referenceOhms = 50, comments: string[] = []) =>
  vectorSweep(details(referenceOhms, comments), {
    frequencyHz: Float64Array.from(AXIS),
    reflectionReal: Float64Array.from(real),
    reflectionImaginary: Float64Array.from(imaginary),
  });

describe("what deserves a look of its own", () => {
  test("ρ above 1 stays as measured, and that is said", () => {
    const sweep = vector([1.02, 0.5, -1.3], [0.3, 0.1, 0.4]);
    for (const text of [touchstoneText(sweep), delimitedText(sweep)]) {
      const again = readOne(text);
      expectSame(again, sweep);
      expect(again.findings.map(({ code }) => code)).toContain("beyond-total-reflection");
    }
  });

  test("another reference stands in the Touchstone text, so nothing need be said", () => {
    const again = readOne(touchstoneText(vector([0.5, 0.2, 0.1], [0.1, -0.2, 0.3], 75)));
    expect(again.referenceOhms).toBe(75);
    expect(notesOf(again)).toEqual([]);
  });

  test("another reference is stated by delimited text, and read back", () => {
    const sweep = vector([0.5, 0.2, 0.1], [0.1, -0.2, 0.3], 75);
    const again = readOne(delimitedText(sweep));
    expect(again.referenceOhms).toBe(75);
    expect(notesOf(again)).toEqual(["reference-read"]);
    expectSame(again, sweep);
  });

  test("a negative zero keeps its sign", () => {
    const sweep = vector([-0, 0.5, 0.2], [0.1, -0, 0]);
    expectSame(readOne(touchstoneText(sweep)), sweep);
    expectSame(readOne(delimitedText(sweep)), sweep);
  });

  test.each([
    "at the lock, windy",
    "# Hz S DB R 1",
    "Hz S DB R 1",
    "7.1 0.2 0.3",
    "Frequency (MHz),SWR,Note",
    "MHz,Ohm,Ohm",
    'a "quoted, part',
    "[Version] 2.0",
    "END",
    "frequency unit MHz",
    "unit of readings VSWR",
    "Data: S11 and S21",
    "Trace 2: S21",
    "wind 12 °C\u0007\u2028",
  ])("a comment reading %j changes nothing in what is read", (comment) => {
    const sweep = vector([0.5, 0.2, 0.1], [0.1, -0.2, 0.3], 50, [comment]);
    expectSame(readOne(touchstoneText(sweep)), sweep);
    expectSame(readOne(delimitedText(sweep)), sweep);
  });

  test("a file with its units above the header is the same after conversion", () => {
    const sweep = readOne(textOf("MHz,Ohm,Ohm", "Frequency,R,X", RX_ROWS));
    expectSame(readOne(delimitedText(sweep)), sweep);
  });

  test("a file with a row commented out is the same after conversion", () => {
    const sweep = readOne(textOf("!6.95 0.1 0.2", "# MHz S RI R 50", RI_ROWS));
    expectSame(readOne(delimitedText(sweep)), sweep);
  });

  test("a scalar sweep with three equal values is no scale that ends", () => {
    const columns = { frequencyHz: Float64Array.from(AXIS), reflectionMagnitude: Float64Array.from([0.9, 0.9, 0.9]) };
    const again = readOne(delimitedText(scalarSweep(details(50), columns)));
    expect(again).toMatchObject({ kind: "scalar", ceilingMagnitude: null });
    expect(notesOf(again)).toEqual(["reference-read"]);
  });
});

describe("how few digits the readings had", () => {
  const swr = readOne(textOf("Frequency (MHz),SWR", ["7,2.5", "7.1,1.2", "7.2,1.8", "7.3,2.6"]));
  const rx = readOne(textOf("Frequency (MHz),R,X", ["7,35,-40", "7.1,48,3", "7.2,60,30", "7.3,75,60"]));

  test.each([
    ["SWR as text", swr, delimitedText(swr)],
    ["R and X as text", rx, delimitedText(rx)],
    ["R and X as Touchstone", rx, touchstoneText(rx as VectorSweep)],
  ])("is kept though all digits of the reflection are written: %s", (_, sweep, text) => {
    const again = readOne(text);
    expect(sweep.greatestRounding).toBeGreaterThan(0);
    expect([again.rounding, again.greatestRounding]).toEqual([sweep.rounding, sweep.greatestRounding]);
    const third = readOne(delimitedText(again));
    expect([third.rounding, third.greatestRounding]).toEqual([sweep.rounding, sweep.greatestRounding]);
  });

  test("is not believed where it cannot be", () => {
    const said = (note: string) =>
      readOne(textOf(`# note: ${note}`, "Frequency (Hz),rho", ["7000000,0.2512", "7100000,0.3345"]));
    expect(said("rounded in print: reflection +-0.5 as a rule, +-2 at most").greatestRounding).toBe(0);
    expect(said("rounded in print: reflection +-0.02 as a rule, +-0.01 at most").greatestRounding).toBe(0);
    expect(said("rounded in print: reflection +-0.01 as a rule, +-0.02 at most").greatestRounding).toBe(0.02);
  });
});
