import type { FindingCode } from "./finding-codes.js";

export type Severity = "info" | "caution" | "problem";

/** Something that a reader or an analysis noticed and the operator should know. Plain data, safe to print as JSON. */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** One or two sentences in plain words. */
  readonly message: string;
  readonly file?: string;
  /** Line in the file, counted from 1. */
  readonly line?: number;
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
