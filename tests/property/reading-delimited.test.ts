/** One sweep, written in every way that delimited text allows, must be read as one and the same sweep. */
import { type DecimalMark, type Delimiter, type FrequencyUnit, readSweeps, type Sweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { fc } from "../support/property.js";
import { type Pair, reflectionOf } from "../support/sweeps.js";

interface Row {
  /** Whole hertz */
  readonly frequencyHz: number;
  /** Hundredths of an ohm, so that what is written is exact */
  readonly resistance: number;
  readonly reactance: number;
}

const rows: fc.Arbitrary<readonly Row[]> = fc
  .record({
    start: fc.integer({ min: 1_000_000, max: 30_000_000 }),
    steps: fc.array(fc.integer({ min: 1000, max: 50_000 }), { minLength: 5, maxLength: 30 }),
    loads: fc.array(
      fc.record({
        resistance: fc.integer({ min: 1, max: 500_000 }),
        reactance: fc.integer({ min: -300_000, max: 300_000 }),
      }),
      { minLength: 31, maxLength: 31 },
    ),
  })
  .map(({ start, steps, loads }) => {
    let frequencyHz = start;
    return steps.map((step, i) => {
      frequencyHz += step;
      const { resistance = 1, reactance = 0 } = loads[i] ?? {};
      // At least one negative reactance, or the column would look as if it had lost its sign.
      return { frequencyHz, resistance, reactance: i === 0 ? -Math.abs(reactance) - 1 : reactance };
    });
  });

const EXPONENTS: Readonly<Record<FrequencyUnit, number>> = { Hz: 0, kHz: 3, MHz: 6, GHz: 9 };
const MARKS: Readonly<Record<Delimiter, string>> = { comma: ",", semicolon: ";", tab: "\t", space: " ", bar: "|" };

interface Writing {
  readonly delimiter: Delimiter;
  readonly decimal: DecimalMark;
  readonly unit: FrequencyUnit;
  readonly lineEnd: "\n" | "\r\n" | "\r";
  readonly names: readonly [string, string, string];
  readonly hasMark: boolean;
  readonly endsInBlankLine: boolean;
}

const writing: fc.Arbitrary<Writing> = fc
  .record({
    delimiter: fc.constantFrom<Delimiter>("comma", "semicolon", "tab", "space"),
    decimal: fc.constantFrom<DecimalMark>("point", "comma"),
    unit: fc.constantFrom<FrequencyUnit>("Hz", "kHz", "MHz", "GHz"),
    lineEnd: fc.constantFrom("\n", "\r\n", "\r"),
    names: fc.constantFrom<readonly [string, string, string]>(
      ["Frequency", "R", "X"],
      ["freq", "Rs", "Xs"],
      ["FREQUENCY", "RESISTANCE", "REACTANCE"],
      ["Frequenz", "Wirkwiderstand", "Blindwiderstand"],
      ["Fréquence", "Résistance", "Réactance"],
      ["Frecuencia", "Resistencia", "Reactancia"],
    ),
    hasMark: fc.boolean(),
    endsInBlankLine: fc.boolean(),
  })
  .filter(({ delimiter, decimal }) => !(delimiter === "comma" && decimal === "comma"));

/** A whole number with its decimal mark moved `places` to the left: exact, as text. */
function shifted(value: number, places: number, decimal: DecimalMark): string {
  const digits = String(Math.abs(value)).padStart(places + 1, "0");
  const whole = digits.slice(0, digits.length - places);
  const text = places === 0 ? whole : `${whole}${decimal === "point" ? "." : ","}${digits.slice(-places)}`;
  return value < 0 ? `-${text}` : text;
}

function written(points: readonly Row[], { delimiter, decimal, unit, lineEnd, names, hasMark, ...rest }: Writing) {
  const mark = MARKS[delimiter];
  const [frequency, resistance, reactance] = names;
  // A blank inside a header cell would be a delimiter in a blank-separated text.
  const header = delimiter === "space" ? `${frequency}(${unit})` : `${frequency} (${unit})`;
  const lines = [
    [header, resistance, reactance].join(mark),
    ...points.map((row) =>
      [
        shifted(row.frequencyHz, EXPONENTS[unit], decimal),
        shifted(row.resistance, 2, decimal),
        shifted(row.reactance, 2, decimal),
      ].join(mark),
    ),
  ];
  const end = rest.endsInBlankLine ? lineEnd + lineEnd : "";
  return new TextEncoder().encode((hasMark ? "\uFEFF" : "") + lines.join(lineEnd) + end);
}

function only(bytes: Uint8Array): Sweep {
  const [sweep, ...others] = readSweeps(bytes);
  if (sweep === undefined || others.length > 0) throw new Error(`${others.length + 1} sweeps`);
  return sweep;
}

function expectRows(sweep: Sweep, points: readonly Row[]): void {
  expect([...sweep.frequencyHz]).toEqual(points.map(({ frequencyHz }) => frequencyHz));
  if (sweep.kind !== "vector") throw new Error("the reactance was not taken with its sign");
  points.forEach(({ resistance, reactance }, i) => {
    const [real, imaginary]: Pair = reflectionOf([resistance / 100, reactance / 100]);
    expect(Math.abs((sweep.reflectionReal[i] ?? Number.NaN) - real)).toBeLessThan(1e-12);
    expect(Math.abs((sweep.reflectionImaginary[i] ?? Number.NaN) - imaginary)).toBeLessThan(1e-12);
  });
}

describe("a sweep of R and X", () => {
  test("reads as what was written, in any delimiter, decimal mark, unit, line end and header language", () => {
    fc.assert(
      fc.property(rows, writing, (points, style) => {
        expectRows(only(written(points, style)), points);
      }),
      { numRuns: 400 },
    );
  });

  test("reads the same to the last bit in two ways of writing", () => {
    fc.assert(
      fc.property(rows, writing, writing, (points, one, other) => {
        const first = only(written(points, one));
        const second = only(written(points, other));
        expect(second.frequencyHz).toEqual(first.frequencyHz);
        expect(second.reflectionMagnitude).toEqual(first.reflectionMagnitude);
      }),
      { numRuns: 200 },
    );
  });

  test("reads the same with its rows from high to low, and says so", () => {
    fc.assert(
      fc.property(rows, writing, (points, style) => {
        const sweep = only(written([...points].reverse(), style));
        expectRows(sweep, points);
        expect(sweep.findings.map(({ code }) => code)).toContain("frequency-descending");
      }),
      { numRuns: 200 },
    );
  });
});
