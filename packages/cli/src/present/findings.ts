import type { Finding } from "@feedpoint/core";
import { findingText } from "../words/remedies.js";
import { wrap } from "./table.js";

const MARKS = { problem: "!!", caution: "! ", info: "- " } as const;
const ORDER = ["problem", "caution", "info"] as const;

/** Findings as lines, the gravest first. */
export function findingLines(findings: readonly Finding[], width: number): string {
  return ORDER.flatMap((severity) => findings.filter((finding) => finding.severity === severity))
    .map((finding) => wrap(`${MARKS[finding.severity]} ${findingText(finding)}`, width, "   "))
    .join("\n");
}
