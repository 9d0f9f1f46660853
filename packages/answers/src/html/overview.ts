import type { GradeReport } from "../judged/report.js";
import { seasonGrid } from "../svg/season-grid.js";
import { seasonTime } from "../svg/season-time.js";
import { GRADE_NOTES, gradeTable } from "../text/grade.js";
import { html, type Markup } from "../text/markup.js";
import type { SeasonTable } from "../text/season-table.js";
import type { Voice } from "../words/remedies.js";
import { gradesOnLoss, seasonHeadline } from "../words/season.js";
import { dataTable } from "./data-table.js";
import { findingList } from "./remarks.js";

/**
 * How several sweeps compare: what stands out, pictures of all, grades, and what was asked for besides.
 *
 * @param tables what the deployment log makes of them: ranking, groups, drifts, where they were asked for
 */
export function overview(report: GradeReport, tables: readonly SeasonTable[], voice: Voice): readonly Markup[] {
  const { sweeps, limits, criteria, findings, losses } = report;
  // A ranking is the answer to a question; what the log teaches comes behind the grades.
  const asked = tables.filter(({ isRanking }) => isRanking);
  const others = tables.filter(({ isRanking }) => !isRanking);
  return [
    html`<header><p class="label">${sweeps.length} sweeps</p><h1>How the sweeps compare</h1>${seasonHeadline(report).map((line) => html`<p><strong>${line}</strong></p>`)}</header>`,
    ...asked.map(tableSection),
    ...pictureOf("At a glance", seasonGrid(sweeps, limits.swr)),
    ...pictureOf("Over time", losses.length === 0 ? null : seasonTime(sweeps, losses)),
    html`<section>${dataTable("Grades", gradeTable(sweeps))}${[gradesOnLoss(losses) ?? [], GRADE_NOTES].flat().map((note) => html`<p>${note}</p>`)}<dl class="facts">${criteria.map(
      ({ grade, meaning }) => html`<div><dt>${grade}</dt><dd>${meaning}</dd></div>`,
    )}</dl></section>`,
    ...others.map(tableSection),
    ...(findings.length === 0
      ? []
      : [html`<section><h2>Over all sweeps</h2>${findingList(findings, voice)}</section>`]),
  ];
}

const tableSection = ({ name, above, columns, rows }: SeasonTable): Markup =>
  html`<section><h2>${name}</h2><p>${above}</p>${rows.length === 0 ? null : dataTable(name, { columns, rows })}</section>`;

const pictureOf = (title: string, picture: Markup | null): readonly Markup[] =>
  picture === null
    ? []
    : [html`<section><h2>${title}</h2><figure class="scroll" tabindex="0">${picture}</figure></section>`];

/** What could not be read; nothing where all could be. */
export const notRead = ({ unreadable }: Pick<GradeReport, "unreadable">): Markup | null =>
  unreadable.length === 0
    ? null
    : html`<h2>Not read</h2><ul>${unreadable.map(({ reason }) => html`<li>${reason}</li>`)}</ul>`;
