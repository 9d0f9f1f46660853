import { ReadError } from "../read-error.js";
import { type ColumnRole, roleFromHeader } from "./columns.js";
import { type FrequencyUnit, frequencyUnitOf } from "./options.js";

/**
 * What the columns hold where no header stands over them but the preamble says it in keys and values: "FREQ UNIT Hz",
 * "DATA UNIT VSWR", "Format,Smith,R+jX".
 *
 * @returns null where the preamble does not say enough
 * @throws ReadError where it says that the file holds no reflection
 */
export function rolesFromPreamble(
  comments: readonly string[],
  columns: number,
  file: string,
): readonly ColumnRole[] | null {
  const entries = comments.map((comment) => comment.toLowerCase());
  refuseTransmission(entries, file);
  const frequencyUnit = unitOf(entries);
  if (frequencyUnit === null) return null;
  const frequency: ColumnRole = { quantity: "frequency", frequencyUnit };
  if (columns >= 3 && entries.some((entry) => /^format\b.*\br\s*\+\s*jx\b/.test(entry))) {
    return [frequency, { quantity: "resistance" }, { quantity: "reactance" }];
  }
  const stated = entries
    .map((entry) => /^(?:data|y axis|y) units?[\s,:=]+([a-z]+)$/.exec(entry)?.[1])
    .find((word) => word !== undefined);
  if (stated === undefined || columns !== 2) return null;
  const role = roleFromHeader(stated);
  return role.quantity === "other" ? null : [frequency, role];
}

function unitOf(entries: readonly string[]): FrequencyUnit | null {
  for (const entry of entries) {
    const match = /^(?:(?:data )?freq(?:uency)? units?|x axis units?)[\s,:=]+([kmg]?hz)$/.exec(entry);
    if (match !== null) return frequencyUnitOf(match[1] as string);
  }
  return null;
}

/** Keys that name the measured parameter with a value that is not a reflection. */
function refuseTransmission(entries: readonly string[], file: string): void {
  const found = entries.find(
    (entry) => /^(data|meas\w*( type)?|parameter|trace)\b.*\bs(21|12)\b/.test(entry) && !/\bs(11|22)\b/.test(entry),
  );
  if (found === undefined) return;
  throw new ReadError({
    code: "not-a-reflection-sweep",
    file,
    found: "the preamble says that the file holds transmission (S21 or S12)",
    expected: "a reflection: S11, SWR, return loss or impedance",
    remedy: "Export S11 of the antenna's port.",
  });
}
