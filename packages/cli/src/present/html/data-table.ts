import { html, type Markup } from "../markup.js";
import type { Table } from "../table.js";

/** A table, its name for those who hear the page; wider than the page, it scrolls by itself. */
export function dataTable(name: string, { columns, rows }: Table): Markup {
  const kinds = columns.map(({ align }) => (align === "right" ? html` class="n"` : null));
  const head = columns.map(({ title }, c) => html`<th scope="col"${kinds[c] ?? null}>${title}</th>`);
  const body = rows.map(
    (row) =>
      html`<tr>${row.map((cell, c) => (c === 0 ? html`<th scope="row"${kinds[c] ?? null}>${cell}</th>` : html`<td${kinds[c] ?? null}>${cell}</td>`))}</tr>`,
  );
  return html`<div class="scroll" tabindex="0" role="group" aria-label="${name}"><table><caption>${name}</caption><thead><tr>${head}</tr></thead><tbody>${body}</tbody></table></div>`;
}
