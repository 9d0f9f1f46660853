import type { FindingCode } from "./finding-codes.js";

/** info: good to know; caution: a number may mislead; problem: what is told should not be relied upon. */
export type Severity = "info" | "caution" | "problem";

/** Something that a reader or an analysis noticed and the operator should know. Plain data, safe to print as JSON. */
export interface Finding {
  /** One of {@link FINDING_CODES}, for a program to act upon */
  readonly code: FindingCode;
  readonly severity: Severity;
  /** One or two sentences in plain words. */
  readonly message: string;
  /** Name of the file that it is about, where it is about one */
  readonly file?: string;
  /** Line in the file, counted from 1. */
  readonly line?: number;
  /** The band that it is about, where it is about one */
  readonly band?: string;
}

/** A finding; `where` names the file, line or band that it is about. */
export function finding(
  severity: Severity,
  code: FindingCode,
  message: string,
  where: { file?: string; line?: number; band?: string } = {},
): Finding {
  return Object.freeze({ code, severity, message, ...where });
}
