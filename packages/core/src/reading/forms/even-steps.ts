import { once } from "../../numbers/once.js";
import { frequencyUnitOf, UNIT_EXPONENTS } from "../options/units.js";
import type { FormTable } from "./form.js";
import { quantityIn } from "./title-words.js";

const VALUE = "[^\\d\\n]{0,24}(\\d+(?:[.,]\\d+)?) ?([kMG]?Hz)(?!\\p{L})";
const patterns = once(() => ({
  start: new RegExp(`(?<!\\p{L})(?:start|first|from|begin\\p{L}*)(?!\\p{L})${VALUE}`, "iu"),
  stop: new RegExp(`(?<!\\p{L})(?:stop|end|last|to)(?!\\p{L})${VALUE}`, "iu"),
  step: new RegExp(`(?<!\\p{L})(?:steps?|increment|spacing)(?!\\p{L})${VALUE}`, "iu"),
}));
const NUMBERS_ALONE = /^[-+]?\d+(?:[.,]\d+)?(?:[\s;]+[-+]?\d+(?:[.,]\d+)?)*(?:\s*;)?$/;
const FEWEST_VALUES = 5;

/** Readings one behind the other, whose frequencies are told by the first one and the step, or by the first and the last. */
export function evenSteps(content: string): FormTable | null {
  const lines = content.split(/\r\n|\n|\r/).map((line) => line.trim());
  const words = lines.filter((line) => /\p{L}/u.test(line));
  const values = lines.filter((line) => NUMBERS_ALONE.test(line)).flatMap((line) => line.split(/[\s;]+/));
  const cells = values.filter((value) => value !== "");
  const others = lines.filter((line) => !NUMBERS_ALONE.test(line) && line !== "");
  const told = words.join("\n");
  const [start, stop, step] = (["start", "stop", "step"] as const).map((name) => hertzIn(patterns()[name].exec(told)));
  const quantity = quantityIn(words);
  if (start === null || start === undefined || quantity === null || cells.length < FEWEST_VALUES) return null;
  const even = step ?? (stop === null || stop === undefined ? null : (stop - start) / (cells.length - 1));
  if (even === null || even <= 0 || others.length > words.length) return null;
  // Both are told: they have to agree.
  if (step && stop && Math.abs(start + step * (cells.length - 1) - stop) > step / 2) return null;
  return {
    name: "readings in even steps",
    comments: words,
    header: ["frequency (Hz)", quantity],
    rows: cells.map((cell, i) => ({ cells: [String(Math.round(start + even * i)), cell], line: null })),
  };
}

function hertzIn(match: RegExpExecArray | null): number | null {
  const [, digits, unit = ""] = match ?? [];
  const known = frequencyUnitOf(unit);
  return digits === undefined || known === null ? null : Number(digits.replace(",", ".")) * 10 ** UNIT_EXPONENTS[known];
}
