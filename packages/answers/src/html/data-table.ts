import { html, type Markup } from "../text/markup.js";
import type { Table } from "../text/table.js";

/** A cell with more characters than this is broken into lines where the page is narrow. */
const LONG = 20;

/** A table, its name for those who hear the page; wider than the page, it scrolls by itself. */
export function dataTable(name: string, { columns, rows }: Table): Markup {
  const classOf = (c: number, text: string) => {
    if (columns[c]?.align === "right") return html` class="n"`;
    return text.length > LONG ? html` class="long"` : null;
  };
  const head = columns.map(({ title }, c) => html`<th scope="col"${classOf(c, title)}>${title}</th>`);
  const body = rows.map(
    (row) =>
      html`<tr>${row.map((cell, c) => (c === 0 ? html`<th scope="row"${classOf(c, cell)}>${cell}</th>` : html`<td${classOf(c, cell)}>${cell}</td>`))}</tr>`,
  );
  return html`<div class="scroll" tabindex="0" role="group" aria-label="${name}"><table><caption>${name}</caption><thead><tr>${head}</tr></thead><tbody>${body}</tbody></table></div>`;
}
