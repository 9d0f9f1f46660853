import { printableText } from "../input/printable.js";
import { at } from "../numbers/column.js";
import { notedRounding, roundingNote } from "../reading/points/rounding.js";
import { takenAtFrom } from "../reading/text/taken-at.js";
import type { ScalarSweep, Sweep, VectorSweep } from "../sweep/sweep.js";
import { checkSweep, checkVectorSweep } from "../sweep/sweep-check.js";

/**
 * A vector sweep as a Touchstone file of version 1: one port, Hz, real and imaginary part. Every number is printed with
 * the fewest digits that give the same double again, so reading it back is exact.
 *
 * Source: IBIS Open Forum, Touchstone File Format Specification, Version 2.1 (2024), keyword-free files.
 *
 * @throws TypeError for a sweep without phase, which {@link delimitedText} can write
 * @example
 * ```ts
 * import { touchstoneText, vectorSweep } from "@feedpoint/core";
 *
 * const sweep = vectorSweep(
 *   { label: "dipole", referenceOhms: 50 },
 *   { frequencyHz: Float64Array.of(7.1e6), reflectionReal: Float64Array.of(0.1), reflectionImaginary: Float64Array.of(-0.2) },
 * );
 * touchstoneText(sweep); // → "# Hz S RI R 50\n7100000 0.1 -0.2\n"
 * ```
 */
export function touchstoneText(sweep: VectorSweep): string {
  checkVectorSweep(sweep);
  const { frequencyHz, reflectionReal, reflectionImaginary, referenceOhms } = sweep;
  const lines = commentsOf(sweep).map((comment) => `! ${asciiText(comment)}`);
  lines.push(`# Hz S RI R ${referenceOhms}`);
  for (let i = 0; i < frequencyHz.length; i++) {
    lines.push(`${at(frequencyHz, i)} ${exact(at(reflectionReal, i))} ${exact(at(reflectionImaginary, i))}`);
  }
  return `${lines.join("\n")}\n`;
}

/**
 * A sweep as comma-separated text: Hz, and the real and imaginary part of the reflection or, for a scalar sweep, its
 * magnitude, with ">" before what means "at least", below a line that states the reference impedance. Exact as
 * {@link touchstoneText}.
 *
 * @throws TypeError for what is no sweep
 * @example
 * ```ts
 * import { delimitedText, scalarSweep } from "@feedpoint/core";
 *
 * const sweep = scalarSweep(
 *   { label: "dipole", referenceOhms: 50 },
 *   { frequencyHz: Float64Array.of(7.0e6, 7.1e6), reflectionMagnitude: Float64Array.of(0.5, 0.25) },
 * );
 * const [, , header, first] = delimitedText(sweep).split("\n");
 * header; // → "Frequency (Hz),reflection magnitude"
 * first; // → "7000000,0.5"
 * ```
 */
export function delimitedText(sweep: Sweep): string {
  checkSweep(sweep);
  const { frequencyHz, referenceOhms } = sweep;
  // Notes come after a line of words and are marked as such: none of them can pass for a header, a unit or an option line.
  const lines = [
    "# A sweep, comma-separated.",
    ...commentsOf(sweep).map((comment) => `# note: ${printableText(comment)}`),
  ];
  lines.push(`# reference impedance ${referenceOhms} ohm`);
  lines.push(sweep.kind === "vector" ? "Frequency (Hz),S11 real,S11 imaginary" : "Frequency (Hz),reflection magnitude");
  for (let i = 0; i < frequencyHz.length; i++) {
    const reading =
      sweep.kind === "vector"
        ? `${exact(at(sweep.reflectionReal, i))},${exact(at(sweep.reflectionImaginary, i))}`
        : magnitudeText(sweep, at(sweep.reflectionMagnitude, i));
    lines.push(`${at(frequencyHz, i)},${reading}`);
  }
  return `${lines.join("\n")}\n`;
}

/** ρ, marked where the instrument's scale ended so that it is at least this. */
const magnitudeText = ({ ceilingMagnitude }: ScalarSweep, magnitude: number): string =>
  `${ceilingMagnitude !== null && magnitude >= ceilingMagnitude ? ">" : ""}${exact(magnitude)}`;

/** The fewest digits that give the same double again; String() drops the sign of -0. */
const exact = (value: number) => (Object.is(value, -0) ? "-0" : String(value));

/**
 * The sweep's comments; a date that only the file's name stated is written down, since the name may change, and so is how few
 * digits the readings had.
 */
function commentsOf({ source, takenAt, rounding, greatestRounding }: Sweep): readonly string[] {
  const { comments } = source;
  const isDateStated = takenAt === null || takenAtFrom(comments, undefined) === takenAt;
  const isRoundingStated = greatestRounding <= notedRounding(comments).greatest;
  return [
    ...comments,
    ...(isDateStated ? [] : [`taken ${takenAt.replace("T", " ")}`]),
    ...(isRoundingStated ? [] : [roundingNote({ usual: rounding, greatest: greatestRounding })]),
  ];
}

/** The specification allows printable ASCII only. */
const asciiText = (text: string) => printableText(text).replace(/[^\x20-\x7e]/g, "?");
