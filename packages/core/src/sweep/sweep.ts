import { at, type Column, magnitudesOf } from "../numbers/column.js";
import type { Complex } from "../numbers/complex.js";
import { changeReference, impedanceFromReflection } from "../reflection/impedance.js";
import type { Finding } from "./finding.js";
import type { Reading } from "./reading.js";

/** Where a sweep came from and how its file was understood. */
export interface SweepSource {
  /** The file's name as given; "input" for bytes without a name */
  readonly file: string;
  /** computed: by a program, and not read from a file */
  readonly format: "touchstone" | "delimited" | "computed";
  /** How it was read, for a person: "Touchstone 1, S, real and imaginary, MHz" */
  readonly description: string;
  /** Comment and preamble lines, kept as the file has them. Never trusted for units or reference impedance. */
  readonly comments: readonly string[];
}

interface SweepCommon {
  /** What the sweep is called in results */
  readonly label: string;
  /** Where it came from */
  readonly source: SweepSource;
  /** ISO 8601 date or date and time, where the file's text or name states one */
  readonly takenAt: string | null;
  /** Reference impedance of Γ, ρ and SWR; Ω */
  readonly referenceOhms: number;
  /** Hz, finite, above 0, strictly ascending */
  readonly frequencyHz: Column;
  /** ρ = |Γ| as measured: 0 or more, above 1 where noise or calibration put it there */
  readonly reflectionMagnitude: Column;
  /** curve: dense enough to be joined; spots: single readings, between which nothing is known */
  readonly continuity: "curve" | "spots";
  /** Noise in each part of Γ (in ρ), told from readings repeated at the same frequency; null where there are too few */
  readonly repeatNoise: number | null;
  /** How far rounding to few printed digits may have moved Γ (ρ) as a rule; 0 where that is next to nothing */
  readonly rounding: number;
  /** The same where it is most, near a match */
  readonly greatestRounding: number;
  /** What was noticed when it was read */
  readonly findings: readonly Finding[];
}

/** A sweep that knows Γ as a complex number. */
export interface VectorSweep extends SweepCommon {
  readonly kind: "vector";
  /** Real part of Γ */
  readonly reflectionReal: Column;
  /** Imaginary part of Γ */
  readonly reflectionImaginary: Column;
}

/** A sweep that knows only ρ. */
export interface ScalarSweep extends SweepCommon {
  readonly kind: "scalar";
  /** ρ from which on a reading means "at least", where the instrument's scale ended; null where it did not */
  readonly ceilingMagnitude: number | null;
  /** What was noted by hand, where that is what the file holds: then a sample stands for each, at the middle of its place */
  readonly readings: readonly Reading[];
}

/**
 * One run of an analyser over frequency, checked and frozen by its builder; nothing downstream checks again. `kind` tells the two
 * apart.
 */
export type Sweep = VectorSweep | ScalarSweep;

/** What is common to both kinds and may be given to a builder; label and reference impedance must be. */
export interface SweepDetails {
  /** What the sweep is called in results */
  readonly label: string;
  /** Computed by a program where absent */
  readonly source?: SweepSource;
  /** ISO 8601 date or date and time; null or absent: not known */
  readonly takenAt?: string | null;
  /** Reference impedance of what is given, Ω, above 0 */
  readonly referenceOhms: number;
  /** curve where absent */
  readonly continuity?: SweepCommon["continuity"];
  /** Not known where absent */
  readonly repeatNoise?: number | null;
  /** 0 where absent */
  readonly rounding?: number;
  /** 0 where absent */
  readonly greatestRounding?: number;
  /** None where absent */
  readonly findings?: readonly Finding[];
}

/**
 * Builds a vector sweep. The columns are taken over, not copied: the caller must not write to them again.
 *
 * @throws TypeError where a rule of {@link Sweep} does not hold: frequencies that are not finite, above 0 and strictly ascending,
 *   columns of different lengths or with values that are not finite, a reference impedance that is not above 0 (a programmer's
 *   error: readers sort and clean first)
 * @example
 * ```ts
 * import { sampleImpedance, vectorSweep } from "@feedpoint/core";
 *
 * const sweep = vectorSweep(
 *   { label: "dipole", referenceOhms: 50 },
 *   {
 *     frequencyHz: Float64Array.of(7.0e6, 7.1e6),
 *     reflectionReal: Float64Array.of(0.2, 0),
 *     reflectionImaginary: Float64Array.of(0, 0),
 *   },
 * );
 * sampleImpedance(sweep, 0).real; // → 75.0
 * ```
 */
export function vectorSweep(
  details: SweepDetails,
  columns: { frequencyHz: Float64Array; reflectionReal: Float64Array; reflectionImaginary: Float64Array },
): VectorSweep {
  return vectorSweepOf(details, { ...columns, reflectionMagnitude: magnitudesIn(columns) });
}

/** The same where the magnitudes of the reflections are at hand. */
export function vectorSweepOf(details: SweepDetails, columns: VectorColumns): VectorSweep {
  const { frequencyHz, reflectionReal, reflectionImaginary } = columns;
  checkAxis(frequencyHz, details.referenceOhms);
  checkColumn("reflectionReal", reflectionReal, frequencyHz.length);
  checkColumn("reflectionImaginary", reflectionImaginary, frequencyHz.length);
  return frozenVectorSweep(details, columns);
}

/** The same of columns that are known to keep the rules, such as those made from another sweep's. */
export const soundVectorSweep = (
  details: SweepDetails,
  columns: Omit<VectorColumns, "reflectionMagnitude">,
): VectorSweep => frozenVectorSweep(details, { ...columns, reflectionMagnitude: magnitudesIn(columns) });

interface VectorColumns {
  readonly frequencyHz: Float64Array;
  readonly reflectionReal: Float64Array;
  readonly reflectionImaginary: Float64Array;
  readonly reflectionMagnitude: Float64Array;
}

const magnitudesIn = ({
  reflectionReal,
  reflectionImaginary,
}: Pick<VectorColumns, "reflectionReal" | "reflectionImaginary">) => magnitudesOf(reflectionReal, reflectionImaginary);

const frozenVectorSweep = (
  details: SweepDetails,
  { frequencyHz, reflectionReal, reflectionImaginary, reflectionMagnitude }: VectorColumns,
): VectorSweep =>
  Object.freeze({
    kind: "vector",
    ...common(details),
    frequencyHz,
    reflectionReal,
    reflectionImaginary,
    reflectionMagnitude,
  });

/**
 * Builds a scalar sweep; rules and ownership as for {@link vectorSweep}.
 *
 * @param ceilingMagnitude ρ from which on a reading means "at least"; null where the scale of the instrument did not end
 * @param readings what was noted by hand; none of a sweep
 * @throws TypeError as there, and for a ρ below 0
 */
export function scalarSweep(
  details: SweepDetails,
  columns: { frequencyHz: Float64Array; reflectionMagnitude: Float64Array },
  ceilingMagnitude: number | null = null,
  readings: readonly Reading[] = [],
): ScalarSweep {
  const { frequencyHz, reflectionMagnitude } = columns;
  checkAxis(frequencyHz, details.referenceOhms);
  checkColumn("reflectionMagnitude", reflectionMagnitude, frequencyHz.length);
  if (reflectionMagnitude.some((value) => value < 0)) throw new TypeError("reflectionMagnitude holds a negative value");
  return Object.freeze({
    kind: "scalar",
    ...common(details),
    frequencyHz,
    reflectionMagnitude,
    ceilingMagnitude,
    readings: Object.freeze([...readings]),
  });
}

/**
 * Γ of the sample at an index.
 *
 * @param index from 0, below the number of samples
 */
export function sampleReflection(sweep: VectorSweep, index: number): Complex {
  return { real: at(sweep.reflectionReal, index), imaginary: at(sweep.reflectionImaginary, index) };
}

/**
 * Impedance of the sample at an index, Ω. Always derived from Γ, never stored beside it.
 *
 * @param index from 0, below the number of samples
 */
export function sampleImpedance(sweep: VectorSweep, index: number): Complex {
  return impedanceFromReflection(sampleReflection(sweep, index), sweep.referenceOhms);
}

/** The same sweep against another reference impedance, Ω. Only a vector sweep can be converted. */
export function withReference(sweep: VectorSweep, referenceOhms: number): VectorSweep {
  if (sweep.referenceOhms === referenceOhms) return sweep;
  return mapReflections(sweep, referenceOhms, (reflection) =>
    changeReference(reflection, sweep.referenceOhms, referenceOhms),
  );
}

/** What was noted by hand, where that is what a sweep stands for. */
export const readingsOf = (sweep: Sweep): readonly Reading[] =>
  // A sweep that was put together by hand, or written by an earlier version, may lack them.
  sweep.kind === "scalar" ? ((sweep.readings as readonly Reading[] | undefined) ?? []) : [];

/** The same sweep with more said of it. */
export const withFindings = (sweep: VectorSweep, findings: readonly Finding[]): VectorSweep =>
  Object.freeze({ ...sweep, findings: Object.freeze([...sweep.findings, ...findings]) });

/** A sweep against another reference impedance where it can be converted; a scalar one stays as it is. */
export const referredTo = (sweep: Sweep, referenceOhms: number): Sweep =>
  sweep.kind === "vector" ? withReference(sweep, referenceOhms) : sweep;

/** The same sweep with each Γ replaced by what a function makes of it, against a reference impedance in Ω. */
export function mapReflections(
  sweep: VectorSweep,
  referenceOhms: number,
  map: (reflection: Complex, frequencyHz: number) => Complex,
): VectorSweep {
  const values = Array.from(sweep.frequencyHz, (frequency, i) => map(sampleReflection(sweep, i), frequency));
  return vectorSweep(
    { ...sweep, referenceOhms },
    {
      frequencyHz: Float64Array.from(sweep.frequencyHz),
      reflectionReal: Float64Array.from(values, ({ real }) => real),
      reflectionImaginary: Float64Array.from(values, ({ imaginary }) => imaginary),
    },
  );
}

/** The source of a sweep that states none. */
const COMPUTED: SweepSource = { file: "computed", format: "computed", description: "computed", comments: [] };

function common(details: SweepDetails) {
  return {
    label: details.label,
    source: Object.freeze(details.source ?? COMPUTED),
    takenAt: details.takenAt ?? null,
    referenceOhms: details.referenceOhms,
    continuity: details.continuity ?? "curve",
    repeatNoise: details.repeatNoise ?? null,
    rounding: details.rounding ?? 0,
    greatestRounding: details.greatestRounding ?? 0,
    findings: Object.freeze([...(details.findings ?? [])]),
  };
}

function checkAxis(frequencyHz: Float64Array, referenceOhms: number): void {
  if (frequencyHz.length === 0) throw new TypeError("a sweep needs at least one point");
  if (!(referenceOhms > 0 && referenceOhms < Number.POSITIVE_INFINITY)) {
    throw new TypeError(`referenceOhms must be a positive number, got ${referenceOhms}`);
  }
  let previous = 0;
  for (let i = 0; i < frequencyHz.length; i++) {
    const value = at(frequencyHz, i);
    if (!(value > previous && value < Number.POSITIVE_INFINITY)) {
      throw new TypeError(`frequencyHz must be finite, above 0 and strictly ascending; index ${i} holds ${value}`);
    }
    previous = value;
  }
}

function checkColumn(name: string, column: Float64Array, length: number): void {
  if (column.length !== length) throw new TypeError(`${name} has ${column.length} values, frequencyHz ${length}`);
  for (let i = 0; i < length; i++) {
    if (!Number.isFinite(at(column, i))) throw new TypeError(`${name} holds ${at(column, i)} at index ${i}`);
  }
}
