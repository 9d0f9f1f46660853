import { COMMA, MINUS, PLUS, POINT, ZERO } from "./ascii.js";

/** E, e, and the D, d of Fortran. What follows most numbers lies below the letters: one comparison for it. */
const isExponentMark = (byte: number) =>
  byte >= 0x44 && (byte === 0x45 || byte === 0x65 || byte === 0x44 || byte === 0x64);

/** 10^0 to 10^22: the powers of ten that a double holds exactly. */
const POWERS_OF_TEN = Float64Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));
const GREATEST_EXACT = Number.MAX_SAFE_INTEGER;
/** Exponents beyond this are all the same: infinite or zero. */
const GREATEST_EXPONENT = 9999;

/**
 * Scans a decimal number: digits with an optional sign, decimal mark (leading or trailing allowed) and exponent.
 *
 * Exactly the double nearest to what is printed, like Number(). Where the digits are an integer below 2^53 and the power of
 * ten is at most 22, both are exact and their product or quotient rounds once (W. D. Clinger, How to read floating point
 * numbers accurately, PLDI 1990); all others go through Number().
 *
 * @param shift the value is multiplied by 10^shift by moving the decimal mark, so that 7.1 MHz is exactly 7100000 Hz
 * @param decimalMark byte of the decimal mark, POINT or COMMA
 * @param target where the value is put, at `place`: a column that is being filled, so that nothing is allocated
 * @returns index of the first byte after the number; -1 where none starts at `start`
 */
export function scanNumber(
  bytes: Uint8Array,
  start: number,
  shift: number,
  decimalMark: number,
  target: Float64Array,
  place: number,
): number {
  let i = start;
  // Beyond the last byte there is nothing, which `| 0` makes a zero byte: no digit, so every loop ends there.
  let byte = (bytes[i] as number) | 0;
  const isNegative = byte === MINUS;
  if (isNegative || byte === PLUS) byte = (bytes[++i] as number) | 0;
  let mantissa = 0;
  let exponent = shift;
  const digitsStart = i;
  let digit = byte - ZERO;
  while (digit >>> 0 <= 9) {
    mantissa = mantissa * 10 + digit;
    digit = ((bytes[++i] as number) | 0) - ZERO;
  }
  let digits = i - digitsStart;
  if (digit + ZERO === decimalMark) {
    const fractionStart = ++i;
    digit = ((bytes[i] as number) | 0) - ZERO;
    while (digit >>> 0 <= 9) {
      mantissa = mantissa * 10 + digit;
      digit = ((bytes[++i] as number) | 0) - ZERO;
    }
    exponent -= i - fractionStart;
    digits += i - fractionStart;
  }
  if (digits === 0) return -1;
  const mantissaEnd = i;
  if (isExponentMark(digit + ZERO)) {
    const written = exponentAt(bytes, i + 1);
    if (written !== null) {
      i = written.next;
      exponent += written.value;
    }
  }
  // Leading zeros are digits too, but do not matter: 2^53 bounds what a double holds exactly.
  if (mantissa > GREATEST_EXACT || Math.abs(exponent) > 22) {
    target[place] = parseSlowly(bytes, start, mantissaEnd, decimalMark, exponent);
    return i;
  }
  const value =
    exponent < 0 ? mantissa / (POWERS_OF_TEN[-exponent] as number) : mantissa * (POWERS_OF_TEN[exponent] as number);
  target[place] = isNegative ? -value : value;
  return i;
}

/** The exponent written after its mark; null where there are no digits, and the mark is then no part of the number. */
function exponentAt(bytes: Uint8Array, start: number): { value: number; next: number } | null {
  const isNegative = bytes[start] === MINUS;
  const digitsStart = isNegative || bytes[start] === PLUS ? start + 1 : start;
  let value = 0;
  let i = digitsStart;
  for (let digit = digitAt(bytes, i); digit >= 0 && digit <= 9; digit = digitAt(bytes, ++i)) {
    value = Math.min(value * 10 + digit, GREATEST_EXPONENT);
  }
  return i === digitsStart ? null : { value: isNegative ? -value : value, next: i };
}

const digitAt = (bytes: Uint8Array, index: number) => ((bytes[index] as number) | 0) - ZERO;

/** By Number(); `exponent` is that of all digits as a whole number, so the decimal mark is left out. */
function parseSlowly(bytes: Uint8Array, start: number, end: number, decimalMark: number, exponent: number): number {
  let text = "";
  for (let i = start; i < end; i++) if (bytes[i] !== decimalMark) text += String.fromCharCode(bytes[i] as number);
  return Number(`${text}e${exponent}`);
}

/** Where the characters of a cell are put to be scanned, and its number: kept, since cells are many and short. */
const characters = new Uint8Array(64);
const scanned = new Float64Array(1);

/** A number from text that must be nothing else; NaN otherwise. Same grammar and shift as {@link scanNumber}. */
export function numberFromText(text: string, shift = 0, decimalMark: "." | "," = "."): number {
  const bytes = text.length < characters.length ? characters : new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code > 0x7e) return Number.NaN;
    bytes[i] = code;
  }
  // A zero byte ends every number, as the end of an array does.
  bytes[text.length] = 0;
  const next = scanNumber(bytes, 0, shift, decimalMark === "," ? COMMA : POINT, scanned, 0);
  return next === text.length && next > 0 ? (scanned[0] as number) : Number.NaN;
}
