import { ReadError } from "../../input/read-error.js";
import type { ColumnRole } from "../options/column-role.js";
import { type FrequencyUnit, frequencyUnitOf } from "../options/units.js";
import { roleFromHeader } from "../quantities/columns.js";
import type { TextLines } from "../text/text-lines.js";

const MOST_COMMENTS = 200;

/** The lines above the numbers without their comment marks, the header left out. */
export function preambleOf(lines: TextLines, end: number, header: number): readonly string[] {
  return lines
    .texts(0, Math.min(end, MOST_COMMENTS))
    .filter((_, line) => line !== header)
    .map((line) => line.replace(/^[\s"']*[!#%;*]*\s*/, "").replace(/[,;"\s]+$/, ""))
    .filter((line) => line !== "");
}

/**
 * What the columns hold where no header stands over them but the preamble says it in keys and values: "FREQ UNIT Hz" with
 * "DATA UNIT VSWR", or "Format,Smith,R+jX".
 *
 * @returns null where the preamble does not say enough
 */
export function rolesFromPreamble(comments: readonly string[], columns: number): readonly ColumnRole[] | null {
  const frequencyUnit = frequencyUnitIn(comments);
  if (frequencyUnit === null) return null;
  const frequency: ColumnRole = { quantity: "frequency", frequencyUnit };
  if (columns >= 3 && comments.some((comment) => /^format\b.*\br\s*\+\s*jx\b/i.test(comment))) {
    return [frequency, { quantity: "resistance" }, { quantity: "reactance" }];
  }
  const role = roleOfData(comments);
  return role === null || columns !== 2 ? null : [frequency, role];
}

/** A reading that is named "S11" and nothing more takes its meaning from the preamble's unit, where there is one. */
export function withPreambleUnit(roles: readonly ColumnRole[], comments: readonly string[]): readonly ColumnRole[] {
  const role = roleOfData(comments);
  return role === null ? roles : roles.map((stated) => (stated.quantity === "reflection" ? role : stated));
}

function roleOfData(comments: readonly string[]): ColumnRole | null {
  for (const comment of comments) {
    const unit = /^(?:data|y axis|y) units?[\s,:=]+([a-z]+)$/i.exec(comment)?.[1];
    if (unit === undefined) continue;
    const role = roleFromHeader(`S11 ${unit}`);
    return role.quantity === "other" ? null : role;
  }
  return null;
}

/** The unit of frequency that a key of the preamble states. */
export function frequencyUnitIn(comments: readonly string[]): FrequencyUnit | null {
  for (const comment of comments) {
    const unit = /^(?:(?:data )?freq(?:uency)? units?|x axis units?)[\s,:=]+([kmg]?hz)$/i.exec(comment)?.[1];
    if (unit !== undefined) return frequencyUnitOf(unit);
  }
  return null;
}

/**
 * Refuses a file whose preamble names the measured parameter, and it is no reflection.
 *
 * @throws ReadError `not-a-reflection-sweep`
 */
export function refuseTransmission(comments: readonly string[], file: string): void {
  const isTransmission = (comment: string) =>
    /^(data|meas\w*( type)?|parameter|trace)\b.*\bs(21|12)\b/i.test(comment) && !/\bs(11|22)\b/i.test(comment);
  if (!comments.some(isTransmission)) return;
  throw transmissionError(file, "the preamble says that the file holds");
}

/** @param where what holds it, with its verb: "the columns hold" */
export function transmissionError(file: string, where: string): ReadError {
  return new ReadError({
    code: "not-a-reflection-sweep",
    file,
    found: `${where} transmission (S21 or S12)`,
    expected: "a reflection: S11, SWR, return loss or impedance",
    remedy: "Export S11 of the antenna's port.",
  });
}
