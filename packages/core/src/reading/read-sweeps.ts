import { demand } from "../input/argument.js";
import { bytesOf, type FileContent } from "../input/file-content.js";
import type { Sweep } from "../sweep/sweep.js";
import { readDelimitedTogether } from "./delimited/delimited.js";
import { checkReadOptions } from "./options/check-options.js";
import type { ReadOptions } from "./options/read-options.js";
import { type KindOfLine, type LineLedger, ledgerOf } from "./points/line-ledger.js";
import { sweepsFrom } from "./points/sweeps-from.js";
import { inLikelyEncoding, withPlainDigits } from "./quantities/likely-encoding.js";
import { readText } from "./read-text.js";
import { findingsOfText } from "./text/findings-of-text.js";
import { type SourceText, sourceText } from "./text/text.js";
import { linesOf } from "./text/text-lines.js";

/**
 * Reads the sweeps that a file holds: Touchstone or delimited text, whichever its content is.
 *
 * @param bytes the file as it lies on the disk, or its text; not changed and not kept
 * @param options the file's name, and what the user says about it
 * @returns at least one sweep, each checked, in ascending frequency and frozen
 * @throws ReadError with file, line, what was found and what to do, for anything that cannot be read with confidence
 * @throws TypeError for bytes that are none, and for an option that is not what it must be
 * @example
 * ```ts
 * import { ReadError, readSweeps } from "@feedpoint/core";
 *
 * const [sweep] = readSweeps("# MHz S RI R 50\n7.0 0.5 0\n7.1 0.1 0\n7.2 0.5 0\n", { fileName: "mooring.s1p" });
 * sweep.label; // → "mooring.s1p"
 * Array.from(sweep.reflectionMagnitude); // → [0.5, 0.1, 0.5]
 *
 * let code = "none";
 * try {
 *   readSweeps("Dear diary, no numbers today.");
 * } catch (error) {
 *   if (error instanceof ReadError) code = error.code;
 * }
 * code; // → "no-data"
 * ```
 */
export function readSweeps(bytes: FileContent, options: ReadOptions = {}): [Sweep, ...Sweep[]] {
  checkReadOptions(options);
  const text = textOf(bytes, options);
  return sweepsFrom(readText(text, options), findingsOfText(text), options);
}

/**
 * Tells what became of each line of a file of delimited text or notes: how many are data, header and comments, and each that is
 * left out, with the reason.
 *
 * @param bytes as of {@link readSweeps}
 * @returns null for Touchstone, and for a table in another form than rows of cells (JSON, names and values)
 * @throws ReadError and TypeError as {@link readSweeps}
 * @example
 * ```ts
 * import { lineLedger } from "@feedpoint/core";
 *
 * const ledger = lineLedger("MHz,SWR\n7.0,2.1\n7.1,1.5\nrain came,\n7.2,1.8\n");
 * ledger?.data; // → 3
 * ledger?.leftOut[0]?.line; // → 4
 * ```
 */
export function lineLedger(bytes: FileContent, options: ReadOptions = {}): LineLedger | null {
  checkReadOptions(options);
  const text = textOf(bytes, options);
  const kinds = readText(text, options).map(({ kindOf }) => kindOf);
  if (kinds.includes(undefined)) return null;
  // A section holds the lines of the others for blank.
  const kindOf: KindOfLine = (line) => kinds.map((kind) => kind?.(line) ?? null).find((kind) => kind !== null) ?? null;
  return ledgerOf(linesOf(text).texts(0, Number.POSITIVE_INFINITY), kindOf);
}

const textOf = (bytes: FileContent, { fileName = "input" }: ReadOptions): SourceText =>
  withPlainDigits(inLikelyEncoding(sourceText(bytesOf(bytes, "bytes"), fileName)));

/**
 * Reads one sweep whose parts lie in several files, one quantity each: dB and phase, real and imaginary, |Z| and angle.
 *
 * @param files two or more of delimited text, with their names
 * @throws ReadError as {@link readSweeps}, and where the files do not list the same frequencies
 * @throws TypeError likewise
 */
export function readCompanions(
  files: readonly { bytes: FileContent; fileName: string }[],
  options: ReadOptions = {},
): [Sweep, ...Sweep[]] {
  checkReadOptions(options);
  demand(Array.isArray(files) && files.length > 1, "files", "a list of two files or more, { bytes, fileName }", files);
  const texts = files.map(({ bytes, fileName }, i) => sourceText(bytesOf(bytes, `files[${i}].bytes`), fileName));
  const named = { ...options, fileName: files.map(({ fileName }) => fileName).join("+") };
  const read = readDelimitedTogether(texts, named);
  return sweepsFrom([read], findingsOfText(texts[0] as SourceText), named);
}
