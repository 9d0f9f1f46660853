/** Chains of parts against scikit-rf 0.15.4 as Debian packages it: see README.md beside this file. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Feedline } from "../../packages/core/src/facts/feedline/feedline.js";
import { emptyPlace, passThrough, placeOfReflection, powerAt } from "../../packages/core/src/facts/matching/chain.js";
import type { MatchingPart } from "../../packages/core/src/facts/matching/matching-part.js";
import { reflectionFromImpedance } from "../../packages/core/src/reflection/impedance.js";

interface WrittenLine {
  readonly characteristicOhms: number;
  readonly velocityFactor: number;
  readonly dbPer100M: number;
  readonly lengthM: number;
}
type WrittenPart =
  | Exclude<MatchingPart, { kind: "line" | "stub" }>
  | ({ readonly kind: "line" } & WrittenLine)
  | ({ readonly kind: "stub"; readonly end: "open" | "short" } & WrittenLine);

interface Vector {
  readonly frequencyHz: number;
  readonly load: { readonly resistanceOhms: number; readonly reactanceOhms: number };
  readonly chain: readonly WrittenPart[];
  readonly reflection: { readonly re: number; readonly im: number };
  readonly deliveredFraction: number;
}

const { vectors } = JSON.parse(readFileSync(new URL("matching.json", import.meta.url), "utf8")) as {
  readonly vectors: readonly Vector[];
};

const lineOf = (line: WrittenLine): Feedline => ({
  title: "of the vector",
  lengthM: line.lengthM,
  characteristicOhms: line.characteristicOhms,
  velocityFactor: line.velocityFactor,
  loss: { k0: line.dbPer100M, k1: 0, k2: 0 },
  lossIs: "stated",
  ratedVolts: null,
  ratedAmperes: null,
});

function partOf(part: WrittenPart): MatchingPart {
  if (part.kind === "line") return { kind: "line", feedline: lineOf(part) };
  if (part.kind === "stub") return { kind: "stub", end: part.end, feedline: lineOf(part) };
  return part;
}

describe("a chain of parts", () => {
  test("covers every kind of part many times", () => {
    const kinds = vectors.flatMap(({ chain }) => chain.map(({ kind }) => kind));
    for (const kind of ["coil", "capacitor", "transformer", "line", "stub"])
      expect(kinds.filter((each) => each === kind).length, kind).toBeGreaterThan(80);
  });

  test(`all ${vectors.length} show the reflection, and let the share of the power through, that the library says`, () => {
    for (const { frequencyHz, load, chain, reflection, deliveredFraction } of vectors) {
      const grid = Float64Array.of(frequencyHz);
      const loadOhms = { real: load.resistanceOhms, imaginary: load.reactanceOhms };
      const { real, imaginary } = reflectionFromImpedance(loadOhms, 50);
      const place = placeOfReflection(Float64Array.of(real), Float64Array.of(imaginary), 50);
      const before = powerAt(place, 0);
      for (const part of chain) passThrough(place, partOf(part), grid);
      const seen = reflectionOf(place);
      const about = JSON.stringify({ frequencyHz, load, chain });
      expect(Math.hypot(seen.real - reflection.re, seen.imaginary - reflection.im), about).toBeLessThan(1e-9);
      expect(Math.abs(before / powerAt(place, 0) / deliveredFraction - 1), about).toBeLessThan(1e-9);
    }
  });

  test("leaves the place of an open end as it is where nothing is passed", () => {
    const open = placeOfReflection(Float64Array.of(1), Float64Array.of(0), 50);
    expect(open.amperesReal[0]).toBe(0);
    expect(emptyPlace(1).voltsReal[0]).toBe(0);
  });
});

function reflectionOf(place: ReturnType<typeof emptyPlace>) {
  const [vr, vi] = [place.voltsReal[0] ?? 0, place.voltsImaginary[0] ?? 0];
  const [ar, ai] = [50 * (place.amperesReal[0] ?? 0), 50 * (place.amperesImaginary[0] ?? 0)];
  const square = (vr + ar) ** 2 + (vi + ai) ** 2;
  return {
    real: ((vr - ar) * (vr + ar) + (vi - ai) * (vi + ai)) / square,
    imaginary: ((vi - ai) * (vr + ar) - (vr - ar) * (vi + ai)) / square,
  };
}
