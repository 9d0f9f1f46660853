import type { Finding } from "@feedpoint/core";
import { findingText } from "../words/remedies.js";
import { byGravity } from "../words/severity.js";
import { markdownCell } from "./escape.js";
import { wrap } from "./table.js";

const MARKS = { problem: "!!", caution: "! ", info: "- " } as const;
export const SEVERITY_WORDS = { problem: "Problem", caution: "Take care", info: "Note" } as const;

/** Findings as lines, the gravest first. */
export const findingLines = (findings: readonly Finding[], width: number): string =>
  byGravity(findings)
    .map((finding) => wrap(`${MARKS[finding.severity]} ${findingText(finding)}`, width, "   "))
    .join("\n");

/** Findings as a list in Markdown, by itself in an array; none where there are none. */
export const findingItems = (findings: readonly Finding[]): readonly string[] =>
  findings.length === 0
    ? []
    : [
        byGravity(findings)
          .map((finding) => `- **${SEVERITY_WORDS[finding.severity]}:** ${markdownCell(findingText(finding))}`)
          .join("\n"),
      ];
