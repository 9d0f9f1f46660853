/** What stands in a field of the station form, as text and as a value; a field that is empty states nothing. */
import type { FieldKind } from "./fields.js";

type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** A value as it is typed into its field. */
export function textOf(kind: FieldKind, value: unknown): string {
  if (value === undefined || value === null) return "";
  if (kind === "records") return (value as readonly object[]).map(pairsText).join("\n");
  if (kind === "keys") return Object.keys(value).join(", ");
  if (kind === "words") return (value as readonly string[]).join(", ");
  if (Array.isArray(value)) return value.join(", ");
  return typeof value === "object" ? pairsText(value) : String(value);
}

/** What was typed as a value; undefined where nothing was. What is no number stays text, which the check of the station names. */
export function statedIn(kind: FieldKind, text: string, before: unknown): Json | undefined {
  const typed = text.trim();
  if (typed === "") return undefined;
  switch (kind) {
    case "choice":
      return typed;
    case "yes":
      return true;
    case "number":
      return numberOrText(typed);
    case "words":
      return wordsOf(typed);
    case "by-key":
      return pairsOf(typed);
    case "number-or-by-key":
      return typed.includes(":") ? pairsOf(typed) : numberOrText(typed);
    case "numbers-or-word":
      return /\d/.test(typed) ? wordsOf(typed).map(numberOrText) : typed;
    case "keys":
      // What each held before, such as the width of a mode, stays.
      return Object.fromEntries(
        wordsOf(typed).map((key) => [key, (before as Record<string, Json> | undefined)?.[key] ?? {}]),
      );
    case "records":
      return typed.split("\n").map(pairsOf);
  }
}

const wordsOf = (text: string): readonly string[] =>
  text
    .split(",")
    .map((word) => word.trim())
    .filter((word) => word !== "");

const numberOrText = (text: string): Json => {
  const value = Number(text.replace(/^(\d+),(\d+)$/, "$1.$2"));
  return Number.isFinite(value) ? value : text;
};

const pairsText = (record: object): string =>
  Object.entries(record)
    .map(([key, value]) => `${key}: ${value}`)
    .join(", ");

function pairsOf(text: string): { readonly [key: string]: Json } {
  return Object.fromEntries(
    wordsOf(text).map((pair) => {
      const [key = "", ...rest] = pair.split(":");
      return [key.trim(), numberOrText(rest.join(":").trim())];
    }),
  );
}
