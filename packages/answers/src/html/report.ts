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
import { seasonGrid } from "../svg/season-grid.js";
import { seasonTime } from "../svg/season-time.js";
import { GRADE_NOTES, gradeTable } from "../text/grade.js";
import { html, type Markup } from "../text/markup.js";
import type { SeasonTable } from "../text/season-table.js";
import { withoutTuner } from "../words/headline.js";
import { gradesOnLoss, seasonHeadline } from "../words/season.js";
import { dataTable } from "./data-table.js";
import { diffSection } from "./diff-section.js";
import { methodSection } from "./method-section.js";
import { page } from "./page.js";
import { cautionSection, findingList } from "./remarks.js";
import { type CheckedSweep, sweepSection } from "./sweep-section.js";

/** The report of one deployment. */
export function sweepReport(checked: CheckedSweep): string {
  return page(checked.result.sweep.label, [sweepSection(checked, 0), closing(checked.result)]);
}

/** The report of a change. */
export function diffReport(result: DiffResult, terms: SameTerms, plan: BandPlan): string {
  const { before, after } = result;
  return page([...before, ...after].map(({ label }) => label).join(" and "), [
    diffSection(result, terms, plan),
    closing(result),
  ]);
}

/** A sweep of several, with its grade. */
export type GradedSweep = CheckedSweep & { readonly grade: SweepGrade };

/**
 * The report of several sweeps: how they rank, then each by itself.
 *
 * @param tables what the deployment log makes of them: ranking, groups, drifts, where they were asked for
 */
export function collectionReport(
  sweeps: readonly GradedSweep[],
  {
    criteria,
    findings,
    tonight,
    losses,
    unreadable,
  }: Pick<GradeReport, "criteria" | "findings" | "tonight" | "losses" | "unreadable">,
  tables: readonly SeasonTable[],
): string {
  const [first] = sweeps;
  const overview = html`<article><header><p class="label">${sweeps.length} sweeps</p><h1>How the sweeps compare</h1>${seasonHeadline({ tonight, findings }).map((line) => html`<p><strong>${line}</strong></p>`)}</header>${seasonPicture(sweeps)}${timePicture(sweeps, losses)}<section>${dataTable(
    "Grades",
    gradeTable(sweeps.map(({ grade }) => grade)),
  )}${[gradesOnLoss(losses) ?? [], GRADE_NOTES].flat().map((note) => html`<p>${note}</p>`)}<dl class="facts">${criteria.map(
    ({ grade, meaning }) => html`<div><dt>${grade}</dt><dd>${meaning}</dd></div>`,
  )}</dl></section>${tables.map(
    ({ name, above, ...table }) =>
      html`<section><h2>${name}</h2><p>${above}</p>${table.rows.length === 0 ? null : dataTable(name, table)}</section>`,
  )}${findings.length === 0 ? null : html`<section><h2>Over all sweeps</h2>${findingList(findings)}</section>`}<section><h2>Each sweep</h2>${first === undefined ? null : html`<p>What you can use without a tuner (SWR up to ${first.result.limits.swr}:1):</p>`}<ul class="contents">${sweeps.map(
    ({ result }, i) => html`<li><a href="#s${i}">${result.sweep.label}</a>: ${withoutTuner(result)}</li>`,
  )}</ul>${
    unreadable.length === 0
      ? null
      : html`<h2>Not read</h2><ul>${unreadable.map(({ reason }) => html`<li>${reason}</li>`)}</ul>`
  }</section></article>`;
  return page(`${sweeps.length} sweeps`, [
    overview,
    ...sweeps.map(sweepSection),
    ...(first === undefined ? [] : [closing(first.result)]),
  ]);
}

/** All deployments at a glance. */
function seasonPicture(sweeps: readonly GradedSweep[]): Markup | null {
  const [first] = sweeps;
  const grid =
    first &&
    seasonGrid(
      sweeps.map(({ grade }) => grade),
      first.result.limits.swr,
    );
  return grid
    ? html`<section><h2>At a glance</h2><figure class="scroll" tabindex="0">${grid}</figure></section>`
    : null;
}

/** Loss, dips and shares by date, where loss over time was asked for. */
function timePicture(sweeps: readonly GradedSweep[], losses: GradeReport["losses"]): Markup | null {
  const picture =
    losses.length === 0
      ? null
      : seasonTime(
          sweeps.map(({ grade }) => grade),
          losses,
        );
  return picture && html`<section><h2>Over time</h2><figure class="scroll" tabindex="0">${picture}</figure></section>`;
}

/** What stands once at the end of every report. */
const closing = ({ plan, limits }: { readonly plan: PlanInfo; readonly limits: Limits }): Markup =>
  html`<article>${cautionSection(CAUTIONS)}${methodSection(plan, limits)}</article>`;
