import {
  type BandPlan,
  CAUTIONS,
  type DiffResult,
  type Limits,
  type PlanInfo,
  type SameTerms,
  type SweepGrade,
} from "@feedpoint/core";
import type { GradeReport } from "../judged/report.js";
import { html, type Markup } from "../text/markup.js";
import type { SeasonTable } from "../text/season-table.js";
import { withoutTuner } from "../words/headline.js";
import type { Voice } from "../words/remedies.js";
import { diffSection } from "./diff-section.js";
import { methodSection } from "./method-section.js";
import { notRead, overview } from "./overview.js";
import { page } from "./page.js";
import { cautionSection } from "./remarks.js";
import { type CheckedSweep, sweepSection } from "./sweep-section.js";

/** The report of one deployment. */
export function sweepReport(checked: CheckedSweep, voice: Voice): string {
  return page(checked.result.sweep.label, [sweepSection(checked, 0, voice), closing(checked.result)]);
}

/** The report of a change. */
export function diffReport(result: DiffResult, terms: SameTerms, plan: BandPlan, voice: Voice): string {
  const { before, after } = result;
  return page([...before, ...after].map(({ label }) => label).join(" and "), [
    diffSection(result, terms, plan, voice),
    closing(result),
  ]);
}

/** A sweep of several, with its grade. */
export type GradedSweep = CheckedSweep & { readonly grade: SweepGrade };

/**
 * The report of several sweeps: how they rank, then each by itself.
 *
 * @param tables as of {@link overview}
 */
export function collectionReport(
  sweeps: readonly GradedSweep[],
  report: GradeReport,
  tables: readonly SeasonTable[],
  voice: Voice,
): string {
  return page(`${sweeps.length} sweeps`, [
    html`<article>${overview(report, tables, voice)}${contents(sweeps, report)}</article>`,
    ...sweeps.map((sweep, i) => sweepSection(sweep, i, voice)),
    ...sweeps.slice(0, 1).map(({ result }) => closing(result)),
  ]);
}

function contents(sweeps: readonly GradedSweep[], report: GradeReport): Markup {
  return html`<section><h2>Each sweep</h2>${
    sweeps.length === 0 ? null : html`<p>What you can use without a tuner (SWR up to ${report.limits.swr}:1):</p>`
  }<ul class="contents">${sweeps.map(
    ({ result }, i) => html`<li><a href="#s${i}">${result.sweep.label}</a>: ${withoutTuner(result)}</li>`,
  )}</ul>${notRead(report)}</section>`;
}

/** What stands once at the end of every report. */
export const closing = ({ plan, limits }: { readonly plan: PlanInfo; readonly limits: Limits }): Markup =>
  html`<article>${cautionSection(CAUTIONS)}${methodSection(plan, limits)}</article>`;
