import { quote } from "./read-error.js";

/**
 * Holds an argument of a call to what it must be.
 *
 * @param name as the caller knows it: "plan", "bands[1]"
 * @param expected what it must be, to be read after "must be"
 * @throws TypeError naming the argument, what it takes and what was given
 */
export function demand(holds: boolean, name: string, expected: string, given: unknown): void {
  if (!holds) throw new TypeError(`${name} must be ${expected}, got ${inWords(given)}`);
}

/** An object with keys, and no list. */
export const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

export const isFiniteAbove0 = (value: unknown): boolean =>
  typeof value === "number" && value > 0 && value < Number.POSITIVE_INFINITY;

/** A value in a few words. */
function inWords(value: unknown): string {
  if (typeof value === "string") return quote(value);
  if (typeof value === "function") return "a function";
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : "a list";
  if (value instanceof Promise) return "a promise, which must be awaited first";
  return typeof value === "object" && value !== null ? "another object" : String(value);
}
