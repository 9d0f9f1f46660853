import { FINDING_KINDS, type FindingCode, type FindingParams } from "./finding-words/words.js";

/** info: to know; caution: what is told may be off; problem: believe nothing of what it concerns before it is settled. */
export type Severity = "info" | "caution" | "problem";

/** What of the input a finding is about. */
export interface FindingPlace {
  /** Name of the file */
  readonly file?: string;
  /** Line in the file, counted from 1 */
  readonly line?: number;
  /** The band that it is about, where it is about one */
  readonly band?: string;
  /** Of a comparison */
  readonly side?: "before" | "after";
}

/**
 * Something that a reader or an analysis noticed and the operator should know: plain data, safe to print as JSON. Its words
 * follow from its code and what it holds, and stand in `finding-words/`.
 */
export interface Finding<Code extends FindingCode = FindingCode> extends FindingPlace {
  readonly code: Code;
  readonly severity: Severity;
  readonly params: FindingParams<Code>;
  /** One or two sentences in plain words. They name no option of a command */
  readonly message: string;
}

/** A finding; `where` names the file, line, band or side that it is about. */
export function finding<Code extends FindingCode>(
  severity: Severity,
  code: Code,
  params: FindingParams<Code>,
  where: FindingPlace = {},
): Finding<Code> {
  return Object.freeze({ code, severity, params, message: wordsOf(code, params, where.side), ...where });
}

/** The same finding with more said of what it is about. */
export const placed = <Code extends FindingCode>(
  { code, severity, params, ...others }: Finding<Code>,
  where: FindingPlace,
): Finding<Code> => finding(severity, code, params, { ...placeOf(others), ...where });

const placeOf = ({ file, line, band, side }: FindingPlace): FindingPlace => ({
  ...(file === undefined ? {} : { file }),
  ...(line === undefined ? {} : { line }),
  ...(band === undefined ? {} : { band }),
  ...(side === undefined ? {} : { side }),
});

const SIDES = { before: "Before: ", after: "After: " } as const;

function wordsOf<Code extends FindingCode>(
  code: Code,
  params: FindingParams<Code>,
  side: FindingPlace["side"],
): string {
  // Each code's words take what a finding of that code holds.
  const words = FINDING_KINDS[code].words as (params: FindingParams<Code>) => string;
  return (side === undefined ? "" : SIDES[side]) + words(params);
}
