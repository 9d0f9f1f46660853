import { readFileSync } from "node:fs";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { reasonOf } from "../files.js";

/**
 * Reads a file that should hold JSON.
 *
 * @throws UsageError that names the file and, where the text is no JSON or states a key twice, the line
 */
export function readJsonFile(file: string): unknown {
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch (error) {
    throw new UsageError(`${file}: ${reasonOf(error)}.`);
  }
  const data = parsed(file, text);
  refuseRepeatedKeys(file, text);
  return data;
}

function parsed(file: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const position = Number(/position (\d+)/.exec((error as Error).message)?.[1] ?? Number.NaN);
    const place = Number.isNaN(position) ? "" : ` in line ${lineAt(text, position)}`;
    throw new UsageError(
      `${file} is no valid JSON: something is wrong${place}, such as a missing comma, quote or bracket.`,
    );
  }
}

const lineAt = (text: string, position: number): number => text.slice(0, position).split("\n").length;

/** What tells the keys of a text that is valid JSON: texts in quotes, the colon behind those that are keys, and brackets. */
const QUOTES_AND_BRACKETS = /("(?:[^"\\]|\\.)*")(\s*:)?|[{}[\]]/g;

/** JSON leaves open what two equal keys in one pair of braces mean, and the last would be taken in silence (RFC 8259, section 4). */
function refuseRepeatedKeys(file: string, text: string): void {
  /** The keys of all braces that are open, with where they stand; a list has none. */
  const open: Map<string, number>[] = [];
  for (const { 0: sign, 1: quoted, 2: colon, index } of text.matchAll(QUOTES_AND_BRACKETS)) {
    if (sign === "{" || sign === "[") open.push(new Map());
    else if (sign === "}" || sign === "]") open.pop();
    if (quoted === undefined || colon === undefined) continue;
    const key = JSON.parse(quoted) as string;
    const before = open.at(-1)?.get(key);
    if (before !== undefined)
      throw new UsageError(
        `${file}: "${key}" stands in line ${lineAt(text, before)} and again in line ${lineAt(text, index)}. Take one of them out.`,
      );
    open.at(-1)?.set(key, index);
  }
}
