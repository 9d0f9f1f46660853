import { once } from "../../numbers/once.js";
import type { ColumnRole } from "../options/column-role.js";

/** What numbers are said to stand for where nothing was measured (from memory). */
const meansNothing = once(
  () =>
    /(-?\d+(?:[.,]\d+)?)\s*(?:=|:|means?|stands? for|is|bedeutet|heißt|signifie|significa)\s*(?:not? (?:measured|measurement|readings?|data|values?|valid|swept|taken)|missing|invalid|n\/a|no reading|error|over(?:range|load)|(?:nicht|nichts|keine?) (?:gemessen|messung|wert)|fehlt|ungültig|pas (?:de )?mesur\p{L}*|non mesur\p{L}*|sin (?:medir|dato)|no medid[oa]|non misurat[oa]|niet gemeten)/giu,
);

/** A column without the numbers that stand for no reading: "9999 = not measured", or 999 where the SWR on either side is low. */
export function withoutStandIns(
  values: Float64Array,
  texts: readonly string[],
  { quantity }: ColumnRole,
): Float64Array {
  const told = new Set(texts.flatMap(standInsIn));
  if (told.size === 0 && quantity !== "swr") return values;
  const isNothing = (value: number, row: number) =>
    told.has(value) || (quantity === "swr" && isNines(value) && stands(values, row, -1) && stands(values, row, 1));
  return values.some(isNothing) ? values.map((value, row) => (isNothing(value, row) ? Number.NaN : value)) : values;
}

/** The numbers that words around a table explain so. */
const standInsIn = (text: string): readonly number[] =>
  /\d\s*(?:[=:]|\p{L})/u.test(text)
    ? [...text.matchAll(meansNothing())].map(([, digits = ""]) => Number(digits.replace(",", ".")))
    : [];

/** 99, 999.9 and the like */
const isNines = (value: number): boolean => value >= 99 && /^9+(?:\.9+)?$/.test(String(value));

/** An antenna's SWR does not rise from this to such a number between two readings (our own choice). */
const LOW_SWR = 5;

/** Whether the nearest reading to a side of a row that is no such number is low. */
function stands(values: Float64Array, row: number, side: 1 | -1): boolean {
  let other = row + side;
  while (other >= 0 && other < values.length && isNines(values[other] as number)) other += side;
  return other >= 0 && other < values.length && (values[other] as number) < LOW_SWR;
}
