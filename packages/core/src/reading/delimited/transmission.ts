import { ReadError } from "../../input/read-error.js";

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
