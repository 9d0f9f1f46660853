import { type Sweep, sweepInfo } from "@feedpoint/core";
import { html, type Markup } from "../text/markup.js";
import { span } from "../text/units.js";

/** More lines of a file's comments than these are counted, not shown. */
const MOST_COMMENTS = 40;

/** What was read, and how it was understood. */
export function sourceSection(sweeps: readonly { readonly sweep: Sweep; readonly role: string }[]): Markup {
  return html`<section><h2>What was read</h2>${sweeps.map(({ sweep, role }) => sourceOf(sweep, role))}</section>`;
}

function sourceOf(sweep: Sweep, role: string): Markup {
  const info = sweepInfo(sweep);
  const { comments } = sweep.source;
  const facts: readonly (readonly [string, string])[] = [
    ["File", info.file],
    ["Read as", info.description],
    ["Kind", info.kind === "vector" ? "size and angle of the reflection" : "size of the reflection only"],
    ["Range", `${span({ lowHz: info.startHz, highHz: info.stopHz })} MHz, ${info.points} points`],
    ["Reference", `${info.referenceOhms} Ω`],
    ["Taken", info.takenAt ?? "not stated"],
  ];
  const more = comments.length - MOST_COMMENTS;
  return html`${role === "only" ? null : html`<h3>${role === "before" ? "Before" : "After"}</h3>`}<dl class="facts">${facts.map(
    ([name, value]) => html`<div><dt>${name}</dt><dd>${value}</dd></div>`,
  )}</dl>${
    comments.length === 0
      ? null
      : html`<p>Comments in the file:</p><ul class="comments">${comments
          .slice(0, MOST_COMMENTS)
          .map(
            (comment) => html`<li>${comment}</li>`,
          )}${more > 0 ? html`<li>… and ${more} more lines</li>` : null}</ul>`
  }`;
}
