import { median } from "simple-statistics";
import { quote } from "../../input/read-error.js";
import { at } from "../../numbers/column.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { FindingCode } from "../../sweep/finding-codes.js";
import type { ReadOptions } from "../options/read-options.js";
import type { Points } from "../points/arrange.js";
import { GREATEST_FREQUENCY, LEAST_FREQUENCY } from "../quantities/frequency-unit.js";
import type { NumberRows } from "../text/number-rows.js";
import type { Records } from "./records.js";
import type { TouchstoneScan } from "./scan.js";

/** A whole sweep below this ρ is a placeholder for "not measured", not a perfect antenna. */
const PLACEHOLDER_MAGNITUDE = 1e-6;

/** What is legal to the letter, or nearly so, and yet deserves a word. */
export function oddities(
  scan: TouchstoneScan,
  { rows, ports }: Records,
  points: Points,
  file: string,
  options: ReadOptions,
): readonly Finding[] {
  const { options: line, optionLine } = scan;
  const found: Finding[] = [];
  const say = (severity: "info" | "caution" | "problem", code: FindingCode, message: string) =>
    found.push(finding(severity, code, message, { line: optionLine }));
  if (ports > 1) {
    const which = `S${options.port ?? 1}${ports > 9 ? "," : ""}${options.port ?? 1}`;
    say(
      "info",
      "one-port-of-many",
      `Read ${which} of a ${ports}-port file: the reflection at port ${options.port ?? 1}, the other ports ended in their references.`,
    );
  }
  const named = /\.s(\d+)p$/i.exec(file)?.[1];
  if (named !== undefined && Number(named) !== ports) {
    say(
      "caution",
      "name-contradicts-ports",
      `The file's name says ${named} port${named === "1" ? "" : "s"}, its rows hold ${ports}.`,
    );
  }
  const stated = scan.keywords.references ?? line.references;
  if (options.referenceOhms !== undefined && !stated.includes(options.referenceOhms)) {
    say("caution", "reference-stated", `The file itself states ${stated.join(", ")} Ω; --reference-ohms was not used.`);
  }
  if (options.frequencyUnit !== undefined && options.frequencyUnit !== line.unit) {
    say("caution", "unit-stated", `The option line states ${line.unit}; --unit ${options.frequencyUnit} was not used.`);
  }
  if (scan.keywords.references !== null && stated.length === 1 && ports > 1) {
    say("caution", "count-mismatch", `[Reference] gives one value for ${ports} ports; it was used for all.`);
  }
  const impedanceComment = scan.comments.find((comment) => /port impedance|\bz0\b|impedance\s*[:=]/i.test(comment));
  if (impedanceComment !== undefined) {
    say(
      "info",
      "reference-mentioned",
      `A comment speaks of an impedance (${quote(impedanceComment)}); comments are never taken for the reference.`,
    );
  }
  if (line.format !== "RI" && ports === 1 && haveTinyAngles(rows)) {
    say(
      "caution",
      "format-doubtful",
      `All angles lie within ${LARGEST_TINY_ANGLE} degrees; the numbers may be real and imaginary parts (RI), or the angles radians.`,
    );
  }
  if (line.format === "MA" && hasNegativeMagnitude(rows, ports)) {
    say(
      "caution",
      "negative-magnitude",
      "Some magnitudes are negative; the numbers may be real and imaginary parts (RI) instead.",
    );
  }
  if (line.format === "DB" && points.reflectionMagnitude.every((rho) => rho > 1)) {
    say(
      "problem",
      "s11-positive",
      "Every reflection lies above 0 dB, which nothing passive sends back: return loss was written without its sign, it seems. Export S11, or the same as a CSV with a column of return loss.",
    );
  }
  if (line.parameter === "Z" && scan.keywords.version === null && middleMagnitude(rows) > LARGEST_NORMALISED) {
    say(
      "caution",
      "maybe-not-normalised",
      "Touchstone 1 impedances are multiples of the reference; these are so large that they may be ohms already.",
    );
  }
  if (points.reflectionMagnitude.every((rho) => rho < PLACEHOLDER_MAGNITUDE)) {
    say(
      "problem",
      "placeholder-values",
      "Every reflection is practically zero: this looks like a placeholder, not a measurement.",
    );
  }
  const greatest = at(points.frequencyHz, points.frequencyHz.length - 1);
  if (greatest > GREATEST_FREQUENCY || greatest < LEAST_FREQUENCY) {
    say(
      "caution",
      "frequency-implausible",
      `Frequencies around ${greatest} Hz: the unit in the option line may be wrong.`,
    );
  }
  return found;
}

/** A normalised impedance of an antenna seldom exceeds this many times the reference over most of a sweep. */
const LARGEST_NORMALISED = 20;

function hasNegativeMagnitude({ count, value }: NumberRows, ports: number): boolean {
  if (ports > 2) return false;
  for (let row = 0; row < count; row++) if (value(row, 1) < 0) return true;
  return false;
}

/** Angles of a sweep are spread over many degrees; all as small as this they are likely something else. */
const LARGEST_TINY_ANGLE = 3.2;
const FEWEST_ANGLES = 5;

function haveTinyAngles({ count, value }: NumberRows): boolean {
  if (count < FEWEST_ANGLES) return false;
  for (let row = 0; row < count; row++) if (Math.abs(value(row, 2)) > LARGEST_TINY_ANGLE) return false;
  return true;
}

/** Median size of the first number after each row's frequency. */
function middleMagnitude({ count, value }: NumberRows): number {
  return median(Array.from({ length: count }, (_, row) => Math.abs(value(row, 1))));
}
