import { median } from "simple-statistics";
import { quote } from "../../input/read-error.js";
import { at } from "../../numbers/column.js";
import { type Finding, finding, type Severity } from "../../sweep/finding.js";
import type { FindingCode, FindingParams } from "../../sweep/finding-words/words.js";
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
  const say = <Code extends FindingCode>(severity: Severity, code: Code, params: FindingParams<Code>) =>
    found.push(finding(severity, code, params, { line: optionLine }));
  if (ports > 1) say("info", "one-port-of-many", { port: options.port ?? 1, ports });
  const named = /\.s(\d+)p$/i.exec(file)?.[1];
  if (named !== undefined && Number(named) !== ports) {
    say("caution", "name-contradicts-ports", { named: Number(named), held: ports });
  }
  const stated = scan.keywords.references ?? line.references;
  if (options.referenceOhms !== undefined && !stated.includes(options.referenceOhms)) {
    say("caution", "reference-stated", { ohms: stated });
  }
  const { frequencyUnit: given } = options;
  if (given !== undefined && given !== line.unit) {
    say("caution", "unit-stated", { where: "option-line", unit: line.unit, given });
  }
  if (scan.keywords.references !== null && stated.length === 1 && ports > 1) {
    say("caution", "count-mismatch", { of: "references", stated: 1, held: ports });
  }
  const impedanceComment = scan.comments.find((comment) =>
    /port impedance|\bz0\b|impedance\s*[:=]|(?:ref(?:erence)?|system|characteristic)\.? impedance/i.test(comment),
  );
  if (impedanceComment !== undefined) say("info", "reference-mentioned", { text: quote(impedanceComment), ohms: null });
  if (line.format !== "RI" && ports === 1 && haveTinyAngles(rows)) {
    say("caution", "format-doubtful", { largestDegrees: LARGEST_TINY_ANGLE });
  }
  if (line.format === "MA" && hasNegativeMagnitude(rows, ports)) say("caution", "negative-magnitude", {});
  if (line.format === "DB" && points.reflectionMagnitude.every((rho) => rho > 1)) {
    say("problem", "s11-positive", { name: null });
  }
  if (scan.keywords.version === null && line.parameter === "Z" && middleMagnitude(rows) > LARGEST_NORMALISED) {
    say("caution", "maybe-not-normalised", { what: "impedances" });
  }
  const isInSiemens = line.parameter === "Y" && line.format === "RI" && middleSize(rows) < 1 / LARGEST_NORMALISED;
  if (scan.keywords.version === null && isInSiemens) say("caution", "maybe-not-normalised", { what: "admittances" });
  if (points.reflectionMagnitude.every((rho) => rho < PLACEHOLDER_MAGNITUDE)) say("problem", "placeholder-values", {});
  const greatestHz = at(points.frequencyHz, points.frequencyHz.length - 1);
  if (greatestHz > GREATEST_FREQUENCY || greatestHz < LEAST_FREQUENCY) {
    say("caution", "frequency-implausible", { greatestHz });
  }
  return found;
}

/** A normalised impedance of an antenna seldom exceeds this many times the reference over most of a sweep, and its admittance seldom falls below the inverse. */
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

/** Median size of the first complex number of each row. */
const middleSize = ({ count, value }: NumberRows): number =>
  median(Array.from({ length: count }, (_, row) => Math.hypot(value(row, 1), value(row, 2))));

/** Median size of the first number after each row's frequency. */
function middleMagnitude({ count, value }: NumberRows): number {
  return median(Array.from({ length: count }, (_, row) => Math.abs(value(row, 1))));
}
