/**
 * The library against scikit-rf 0.15.4 as Debian packages it: see README.md beside this file, which also says how far
 * that library strays from the closed formulae (1e-15 in a reflection coefficient, 2e-15 of an impedance's size).
 */
import { readFileSync } from "node:fs";
import {
  changeReference,
  impedanceFromReflection,
  readSweeps,
  reflectionFromImpedance,
  sampleImpedance,
  swrFromReflectionMagnitude,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";

interface Written {
  readonly re: number;
  readonly im: number;
}

function vectorsOf<Vector>(name: string): readonly Vector[] {
  const text = readFileSync(new URL(`${name}.json`, import.meta.url), "utf8");
  const { vectors } = JSON.parse(text) as { vectors: readonly Vector[] };
  if (vectors.length === 0) throw new Error(`${name}.json holds no vectors`);
  return vectors;
}

/** 1e-12 of full reflection: differences of doubles near 1 cannot be small beside a Γ near 0. */
const REFLECTION_TOLERANCE = 1e-12;

const distance = (actual: { real: number; imaginary: number }, { re, im }: Written) =>
  Math.hypot(actual.real - re, actual.imaginary - im);

describe("reflection and impedance", () => {
  interface Vector {
    readonly referenceOhms: number;
    readonly impedance: { readonly resistanceOhms: number; readonly reactanceOhms: number };
    readonly reflection: Written;
  }
  const vectors = vectorsOf<Vector>("impedance-to-reflection");

  test(`all ${vectors.length} impedances have the reflection that z2s gives`, () => {
    for (const { referenceOhms, impedance, reflection } of vectors) {
      const load = { real: impedance.resistanceOhms, imaginary: impedance.reactanceOhms };
      const actual = reflectionFromImpedance(load, referenceOhms);
      expect(distance(actual, reflection), JSON.stringify(impedance)).toBeLessThanOrEqual(REFLECTION_TOLERANCE);
    }
  });

  test("all reflections lead back to their impedance", () => {
    for (const { referenceOhms, impedance, reflection } of vectors) {
      const { real, imaginary } = impedanceFromReflection(
        { real: reflection.re, imaginary: reflection.im },
        referenceOhms,
      );
      const { resistanceOhms, reactanceOhms } = impedance;
      // Near an open 1 - Γ has few digits left: an error of 1e-15 in Γ grows by |Z + Z0|² / (2 Z0).
      const growth = Math.hypot(resistanceOhms + referenceOhms, reactanceOhms) ** 2 / (2 * referenceOhms);
      const tolerance = 1e-12 * Math.hypot(resistanceOhms, reactanceOhms) + 4e-15 * growth;
      expect(
        Math.hypot(real - resistanceOhms, imaginary - reactanceOhms),
        JSON.stringify(impedance),
      ).toBeLessThanOrEqual(tolerance);
    }
  });
});

describe("change of reference impedance", () => {
  interface Vector {
    readonly fromReferenceOhms: number;
    readonly toReferenceOhms: number;
    readonly reflection: Written;
    readonly renormalised: Written;
  }
  const vectors = vectorsOf<Vector>("renormalisation");

  test(`all ${vectors.length} reflections become what renormalize makes of them`, () => {
    for (const { fromReferenceOhms, toReferenceOhms, reflection, renormalised } of vectors) {
      const before = { real: reflection.re, imaginary: reflection.im };
      const actual = changeReference(before, fromReferenceOhms, toReferenceOhms);
      const what = `${JSON.stringify(reflection)} from ${fromReferenceOhms} to ${toReferenceOhms} ohm`;
      expect(distance(actual, renormalised), what).toBeLessThanOrEqual(REFLECTION_TOLERANCE);
    }
  });
});

describe("SWR", () => {
  interface Vector {
    readonly reflection: Written;
    readonly swr: number;
  }
  const vectors = vectorsOf<Vector>("swr");

  test(`all ${vectors.length} reflections have the SWR that s_vswr gives`, () => {
    for (const { reflection, swr } of vectors) {
      const actual = swrFromReflectionMagnitude(Math.hypot(reflection.re, reflection.im));
      // One rounding of ρ near 1 is worth SWR / 2 times as much of the SWR.
      const tolerance = Math.max(1e-12, swr * Number.EPSILON);
      expect(Math.abs(actual / swr - 1), JSON.stringify(reflection)).toBeLessThanOrEqual(tolerance);
    }
  });
});

describe("Touchstone files", () => {
  interface Vector {
    readonly file: string;
    readonly portCount: number;
    readonly referenceOhms: number;
    readonly points: readonly { readonly frequencyHz: number; readonly reflection: Written }[];
  }
  const vectors = vectorsOf<Vector>("touchstone");

  test.each(vectors)("$file reads as scikit-rf reads it", ({ file, portCount, referenceOhms, points }) => {
    const bytes = readFileSync(new URL(file, import.meta.url));
    const sweeps = readSweeps(bytes, { fileName: file });
    expect(sweeps).toHaveLength(1);
    const [sweep] = sweeps;
    if (sweep?.kind !== "vector") throw new Error("no vector sweep");
    expect(sweep.referenceOhms).toBe(referenceOhms);
    expect(sweep.findings.some(({ code }) => code === "one-port-of-many")).toBe(portCount > 1);
    expect(sweep.frequencyHz).toHaveLength(points.length);
    points.forEach(({ frequencyHz, reflection }, i) => {
      expect(Math.abs((sweep.frequencyHz[i] ?? Number.NaN) / frequencyHz - 1)).toBeLessThanOrEqual(1e-12);
      const actual = {
        real: sweep.reflectionReal[i] ?? Number.NaN,
        imaginary: sweep.reflectionImaginary[i] ?? Number.NaN,
      };
      expect(distance(actual, reflection), `at ${frequencyHz} Hz`).toBeLessThanOrEqual(REFLECTION_TOLERANCE);
    });
  });

  test("all files hold the same load to 1e-9 ohm, as far as their twelve digits go", () => {
    const [first, ...others] = vectors.map(({ file }) => {
      const [sweep] = readSweeps(readFileSync(new URL(file, import.meta.url)), { fileName: file });
      if (sweep?.kind !== "vector") throw new Error("no vector sweep");
      return Array.from(sweep.frequencyHz, (_, i) => sampleImpedance(sweep, i));
    });
    expect(others).toHaveLength(vectors.length - 1);
    for (const other of others) {
      other.forEach(({ real, imaginary }, i) => {
        const load = first?.[i] ?? { real: Number.NaN, imaginary: Number.NaN };
        expect(Math.hypot(real - load.real, imaginary - load.imaginary)).toBeLessThan(1e-9);
      });
    }
  });
});
