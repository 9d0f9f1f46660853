import { printableText } from "./printable.js";

/** What is known about an input that cannot be read as a sweep. */
export interface ReadProblem {
  /** kebab-case, for scripts */
  readonly code: ReadErrorCode;
  /** The file's name as given, or "input" */
  readonly file: string;
  /** Line counted from 1, where the trouble is in one line */
  readonly line?: number;
  /** What stands there (clipped and made printable here) */
  readonly found: string;
  /** What was expected instead */
  readonly expected?: string;
  /** What the operator can do about it */
  readonly remedy?: string;
}

/**
 * Why an input cannot be read as a sweep: it is empty; no text; too large; has no rows of numbers; no frequencies; nothing that
 * tells a reflection; several meanings; a number or a row that is none; a Touchstone option line or keyword that is wrong; an
 * option of the caller that does not fit the file; a file that is no reflection of an antenna.
 */
export type ReadErrorCode =
  | "empty"
  | "not-text"
  | "too-large"
  | "no-data"
  | "no-frequency"
  | "no-reflection"
  | "ambiguous"
  | "bad-number"
  | "bad-row"
  | "bad-option-line"
  | "bad-keyword"
  | "bad-option"
  | "not-a-reflection-sweep";

/** The one error for input that cannot be read. Its message says where, what was found, what was expected, what to do. */
export class ReadError extends Error {
  override readonly name = "ReadError";
  /** Where, what was found, what was expected and what to do, each by itself */
  readonly problem: ReadProblem;

  constructor(problem: ReadProblem) {
    super(describe(problem));
    this.problem = Object.freeze({ ...problem });
  }

  /** The same as `problem.code`, for a program to act upon */
  get code(): ReadErrorCode {
    return this.problem.code;
  }
}

function describe({ file, line, found, expected, remedy }: ReadProblem): string {
  const name = printableText(file);
  const place = line === undefined ? name : `${name}, line ${line}`;
  const wanted = expected === undefined ? "" : `; expected ${expected}`;
  const advice = remedy === undefined ? "" : ` ${remedy}`;
  return `${place}: ${found}${wanted}.${advice}`;
}

/** A piece of input made fit to stand in a message: at most 40 characters, control characters shown as dots. */
export function quote(text: string): string {
  const printable = printableText(text);
  const characters = [...printable];
  return `"${characters.length > 40 ? `${characters.slice(0, 39).join("")}…` : printable}"`;
}
