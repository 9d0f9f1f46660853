import { readFileSync } from "node:fs";
import { UsageError } from "../exit.js";
import { reasonOf } from "../files.js";

/**
 * Reads a file that should hold JSON.
 *
 * @throws UsageError that names the file and, where the text is no JSON, the line
 */
export function readJsonFile(file: string): unknown {
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch (error) {
    throw new UsageError(`${file}: ${reasonOf(error)}.`);
  }
  try {
    return JSON.parse(text);
  } catch (error) {
    const position = Number(/position (\d+)/.exec((error as Error).message)?.[1] ?? Number.NaN);
    const place = Number.isNaN(position) ? "" : ` in line ${text.slice(0, position).split("\n").length}`;
    throw new UsageError(
      `${file} is no valid JSON: something is wrong${place}, such as a missing comma, quote or bracket.`,
    );
  }
}
