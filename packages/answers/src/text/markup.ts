import { printableText } from "@feedpoint/core/for-command";

/** Text that is markup already; all else is escaped where it is put into some. */
export interface Markup {
  readonly markup: string;
}

export type Child = Markup | string | number | null | readonly Child[];

const ESCAPES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/**
 * Markup from a template. What is put into it is escaped, for elements and for quoted attributes alike, and control
 * characters become dots; lists are joined, null is nothing.
 *
 * @example html`<td title="${label}">${label}</td>`
 */
export function html(parts: TemplateStringsArray, ...children: readonly Child[]): Markup {
  return { markup: parts.map((part, i) => part + (i < children.length ? markupOf(children[i] ?? null) : "")).join("") };
}

/** Text of our own as markup, as it stands: style sheets, scripts. Never for anything that was read. */
export const trusted = (markup: string): Markup => ({ markup });

function markupOf(child: Child): string {
  if (child === null) return "";
  if (typeof child === "number") return String(child);
  if (typeof child === "string") return printableText(child).replace(/[&<>"']/g, (sign) => ESCAPES[sign] ?? "");
  return isMarkup(child) ? child.markup : child.map(markupOf).join("");
}

const isMarkup = (child: Markup | readonly Child[]): child is Markup => !Array.isArray(child);
