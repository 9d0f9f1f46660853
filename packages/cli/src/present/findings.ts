import type { Finding } from "@feedpoint/core";
import { wrap } from "./table.js";

const MARKS = { problem: "!!", caution: "! ", info: "- " } as const;
const ORDER = ["problem", "caution", "info"] as const;

/** Findings as lines, the gravest first. */
export function findingLines(findings: readonly Finding[], width: number): string {
  return ORDER.flatMap((severity) => findings.filter((finding) => finding.severity === severity))
    .map(({ severity, message, line }) => {
      const place = line === undefined ? "" : `Line ${line}: `;
      return wrap(`${MARKS[severity]} ${place}${message}`, width, "   ");
    })
    .join("\n");
}
