/**
 * One sweep, written in every way that a Touchstone option line allows, must be read as one and the same sweep.
 *
 * Source of the freedoms: IBIS Open Forum, Touchstone File Format Specification, Version 2.1 (2024), pp. 4-9: case and order are free,
 * defaults are GHz, S, MA, R 50, comments begin with "!", numbers may be in scientific notation.
 */
import { type FrequencyUnit, readSweeps, type Sweep } from "@feedpoint/core";
import { expect, test } from "vitest";
import { fc } from "../support/property.js";
import { type Pair, reflectionOf } from "../support/sweeps.js";

type Format = "RI" | "MA" | "DB";
type Parameter = "S" | "Y" | "Z";

const REFERENCE_OHMS = 75;
const SCALES: Readonly<Record<FrequencyUnit, number>> = { Hz: 1, kHz: 1e3, MHz: 1e6, GHz: 1e9 };

interface Row {
  readonly frequencyHz: number;
  readonly load: Pair;
}

const rows: fc.Arbitrary<readonly Row[]> = fc
  .array(
    fc.record({
      step: fc.integer({ min: 1000, max: 100_000 }),
      resistance: fc.integer({ min: 1, max: 500_000 }),
      reactance: fc.integer({ min: -300_000, max: 300_000 }),
    }),
    { minLength: 3, maxLength: 30 },
  )
  .map((points) => {
    let frequencyHz = 3_000_000;
    return points.map(({ step, resistance, reactance }): Row => {
      frequencyHz += step;
      return { frequencyHz, load: [resistance / 100, reactance / 100] };
    });
  });

interface Writing {
  readonly unit: FrequencyUnit;
  readonly parameter: Parameter;
  readonly format: Format;
  /** Order of the four parts of the option line */
  readonly order: readonly number[];
  readonly recase: (text: string) => string;
  readonly gap: string;
  readonly lineEnd: string;
  readonly hasComments: boolean;
  readonly hasSecondOptionLine: boolean;
  readonly isScientific: boolean;
}

const writing: fc.Arbitrary<Writing> = fc.record({
  unit: fc.constantFrom<FrequencyUnit>("Hz", "kHz", "MHz", "GHz"),
  parameter: fc.constantFrom<Parameter>("S", "Y", "Z"),
  format: fc.constantFrom<Format>("RI", "MA", "DB"),
  order: fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 }),
  recase: fc.constantFrom(
    (text: string) => text,
    (text: string) => text.toUpperCase(),
    (text: string) => text.toLowerCase(),
  ),
  gap: fc.constantFrom(" ", "\t", "   ", " \t "),
  lineEnd: fc.constantFrom("\n", "\r\n", "\r"),
  hasComments: fc.boolean(),
  hasSecondOptionLine: fc.boolean(),
  isScientific: fc.boolean(),
});

/** Normalised to the reference, as a keyword-free file has it. */
function parameterOf([resistance, reactance]: Pair, parameter: Parameter): Pair {
  if (parameter === "S") return reflectionOf([resistance, reactance], REFERENCE_OHMS);
  if (parameter === "Z") return [resistance / REFERENCE_OHMS, reactance / REFERENCE_OHMS];
  const square = resistance ** 2 + reactance ** 2;
  return [(REFERENCE_OHMS * resistance) / square, (-REFERENCE_OHMS * reactance) / square];
}

function inFormat([real, imaginary]: Pair, format: Format): Pair {
  if (format === "RI") return [real, imaginary];
  const magnitude = Math.hypot(real, imaginary);
  const degrees = (Math.atan2(imaginary, real) * 180) / Math.PI;
  return [format === "MA" ? magnitude : 20 * Math.log10(magnitude), degrees];
}

function written(points: readonly Row[], style: Writing): Uint8Array {
  const { unit, parameter, format, order, recase, gap, lineEnd, hasComments, hasSecondOptionLine } = style;
  const number = (value: number) => (style.isScientific ? value.toExponential(16) : String(value));
  const parts = [unit, parameter, format, `R${gap}${REFERENCE_OHMS}`];
  const lines = [
    ...(hasComments ? ["! invented data", "", "!# Hz S DB R 1"] : []),
    `#${gap}${recase(order.map((part) => parts[part]).join(gap))}${hasComments ? " ! what follows" : ""}`,
    ...(hasSecondOptionLine ? ["# Hz S DB R 1"] : []),
    ...points.map(({ frequencyHz, load }) => {
      const values = inFormat(parameterOf(load, parameter), format);
      const row = [frequencyHz / SCALES[unit], ...values].map(number).join(gap);
      return hasComments ? `${gap}${row} ! a point` : row;
    }),
    "",
  ];
  return new TextEncoder().encode(lines.join(lineEnd));
}

function only(bytes: Uint8Array): Sweep {
  const [sweep, ...others] = readSweeps(bytes);
  if (sweep === undefined || others.length > 0) throw new Error(`${others.length + 1} sweeps`);
  return sweep;
}

function expectRows(sweep: Sweep, points: readonly Row[]): void {
  if (sweep.kind !== "vector") throw new Error("no vector sweep");
  expect(sweep.referenceOhms).toBe(REFERENCE_OHMS);
  expect(sweep.frequencyHz).toHaveLength(points.length);
  points.forEach(({ frequencyHz, load }, i) => {
    // The frequency was divided in binary before it was written, so one rounding is the writer's.
    expect(Math.abs((sweep.frequencyHz[i] ?? Number.NaN) / frequencyHz - 1)).toBeLessThan(1e-15);
    const [real, imaginary] = reflectionOf(load, REFERENCE_OHMS);
    expect(Math.abs((sweep.reflectionReal[i] ?? Number.NaN) - real)).toBeLessThan(1e-12);
    expect(Math.abs((sweep.reflectionImaginary[i] ?? Number.NaN) - imaginary)).toBeLessThan(1e-12);
  });
}

test("a sweep reads as what was written, in any option order, case, unit, parameter, format, spacing and line end", () => {
  fc.assert(
    fc.property(rows, writing, (points, style) => {
      expectRows(only(written(points, style)), points);
    }),
    { numRuns: 500 },
  );
});

test("a sweep reads the same with its rows from high to low", () => {
  fc.assert(
    fc.property(rows, writing, (points, style) => {
      expectRows(only(written([...points].reverse(), style)), points);
    }),
    { numRuns: 200 },
  );
});

test("a second option line is ignored and reported", () => {
  fc.assert(
    fc.property(rows, writing, (points, style) => {
      const sweep = only(written(points, { ...style, hasSecondOptionLine: true }));
      expect(sweep.findings.map(({ code }) => code)).toContain("second-option-line");
      expectRows(sweep, points);
    }),
    { numRuns: 50 },
  );
});
