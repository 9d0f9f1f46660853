import type { Finding } from "@feedpoint/core";
import { printable } from "../text/escape.js";
import { findingText } from "./remedies.js";

const ORDER = ["problem", "caution", "info"] as const;

/** Findings, the gravest first. */
export const byGravity = (findings: readonly Finding[]): readonly Finding[] =>
  ORDER.flatMap((severity) => findings.filter((finding) => finding.severity === severity));

export const problemsIn = (findings: readonly Finding[]): readonly Finding[] =>
  findings.filter(({ severity }) => severity === "problem");

/** The codes of findings, each once, the gravest first, for a column of a table. */
export const codesOf = (findings: readonly Finding[]): string =>
  [...new Set(byGravity(findings).map(({ code }) => code))].join(" ");

/** The gravest severity among findings; null where there are none. */
export const gravest = (findings: readonly Finding[]): Finding["severity"] | null =>
  byGravity(findings)[0]?.severity ?? null;

/** Of a result's findings those about a band, and about no band in particular. */
export const aboutBand = (findings: readonly Finding[], band: string): readonly Finding[] =>
  findings.filter((finding) => finding.band === undefined || finding.band === band);

/** What stands beside a result whose format has no room for words, a line each; `label` names what it is of. */
export const talkOf = (label: string | null, findings: readonly Finding[]): string =>
  byGravity(findings)
    .map(({ severity, ...rest }) => {
      const about = label === null ? "" : `${label}: `;
      return `feedpoint: ${printable(about)}${severity}: ${printable(findingText({ severity, ...rest }))}\n`;
    })
    .join("");
