import type { Cause, Finding } from "@feedpoint/core";
import { SEVERITY_WORDS } from "../text/findings.js";
import { html, type Markup } from "../text/markup.js";
import { findingText, type Voice } from "../words/remedies.js";
import { byGravity } from "../words/severity.js";

/** Findings, the gravest first. */
export function findingList(findings: readonly Finding[], voice: Voice): Markup {
  if (findings.length === 0) return html`<p>Nothing else was noticed.</p>`;
  return html`<ul class="findings">${byGravity(findings).map(
    (finding) =>
      html`<li class="${finding.severity}"><b>${SEVERITY_WORDS[finding.severity]}:</b> ${findingText(finding, voice)}</li>`,
  )}</ul>`;
}

/** The likely causes of a difference, with the numbers that speak for them. */
export function causeList(causes: readonly Cause[]): Markup {
  if (causes.length === 0) return html`<p>The sweeps do not tell.</p>`;
  return html`<ul>${causes.map(
    ({ confidence, message }) => html`<li><b>${confidence === "likely" ? "Likely" : "Possible"}:</b> ${message}</li>`,
  )}</ul>`;
}

export function cautionSection(cautions: readonly string[]): Markup {
  return html`<section class="cautions"><h2>Cautions</h2><ul>${cautions.map((caution) => html`<li>${caution}</li>`)}</ul></section>`;
}
