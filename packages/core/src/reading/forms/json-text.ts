import { ReadError } from "../../input/read-error.js";

/** What a text of JSON holds. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** @returns null for what is no JSON */
export function parsed(content: string): Json | null {
  try {
    return JSON.parse(content) as Json;
  } catch {
    return null;
  }
}

/** JSON in each line, as one list. */
export function parsedLines(content: string): Json | null {
  const lines = content.split(/\r\n|\n|\r/).filter((line) => line.trim() !== "");
  const values = lines.map((line) => parsed(line.replace(/,\s*$/, "")));
  return lines.length > 1 && values.every((value) => value !== null) ? values : null;
}

/** Why a text that is JSON cannot be read; null where it is none. */
export function jsonWithoutTable(content: string, file: string): ReadError | null {
  if (!/^\s*[[{]/.test(content) || parsed(content) === null) return null;
  return new ReadError({
    code: "no-data",
    file,
    found: "JSON, and no table of frequencies and readings in it that can be read",
    expected: "a list for each column, or a list of objects",
    remedy: 'Write it as { "frequency_mhz": [7.0, 7.1], "swr": [1.9, 1.3] }, a sweep in each file.',
  });
}
