/** Where the last scan left off: the number and the index of the first byte after it. */
export const scanned = { value: 0, next: 0 };

const ZERO = 0x30;
const PLUS = 0x2b;
const MINUS = 0x2d;
const POINT = 0x2e;
const isDigit = (byte: number | undefined) => byte !== undefined && byte >= ZERO && byte <= ZERO + 9;
/** E, e, and the D, d of Fortran. */
const isExponentMark = (byte: number | undefined) => byte === 0x45 || byte === 0x65 || byte === 0x44 || byte === 0x64;

/** 10^0 to 10^22: the powers of ten that a double holds exactly. */
const POWERS_OF_TEN = Float64Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));
const MOST_EXACT_DIGITS = 15;

/**
 * Scans a decimal number: digits with an optional sign, decimal mark (leading or trailing allowed) and exponent.
 *
 * Exactly the double nearest to what is printed, like Number(). Up to 15 digits the value is one exact integer times or
 * divided by one exact power of ten, which rounds once (W. D. Clinger, How to read floating point numbers accurately,
 * PLDI 1990); longer ones go through Number().
 *
 * @param decimalMark byte of the decimal mark: 0x2e for a point, 0x2c for a comma
 * @param shift the value is multiplied by 10^shift by moving the decimal mark, so that 7.1 MHz is exactly 7100000 Hz
 * @returns whether a number starts at `start`; the result is left in {@link scanned}
 */
export function scanNumber(bytes: Uint8Array, start: number, end: number, shift = 0, decimalMark = POINT): boolean {
  let i = start;
  const negative = bytes[i] === MINUS;
  if (negative || bytes[i] === PLUS) i++;
  let mantissa = 0;
  let digits = 0;
  let significant = 0;
  let exponent = shift;
  for (; i < end && isDigit(bytes[i]); i++) {
    mantissa = mantissa * 10 + ((bytes[i] as number) - ZERO);
    if (mantissa > 0) significant++;
    digits++;
  }
  if (i < end && bytes[i] === decimalMark) {
    i++;
    for (; i < end && isDigit(bytes[i]); i++) {
      mantissa = mantissa * 10 + ((bytes[i] as number) - ZERO);
      if (mantissa > 0) significant++;
      digits++;
      exponent--;
    }
  }
  if (digits === 0) return false;
  const exponentStart = i;
  let written = 0;
  if (i < end && isExponentMark(bytes[i])) {
    let j = i + 1;
    const negativeExponent = bytes[j] === MINUS;
    if (negativeExponent || bytes[j] === PLUS) j++;
    if (j < end && isDigit(bytes[j])) {
      for (; j < end && isDigit(bytes[j]); j++) written = Math.min(written * 10 + ((bytes[j] as number) - ZERO), 9999);
      if (negativeExponent) written = -written;
      i = j;
    }
  }
  exponent += written;
  scanned.next = i;
  if (significant <= MOST_EXACT_DIGITS && exponent >= -22 && exponent <= 22) {
    const value = exponent < 0 ? mantissa / at10(-exponent) : mantissa * at10(exponent);
    scanned.value = negative ? -value : value;
    return true;
  }
  scanned.value = parseSlowly(bytes, start, exponentStart, decimalMark, written + shift);
  return true;
}

const at10 = (power: number) => POWERS_OF_TEN[power] as number;

function parseSlowly(bytes: Uint8Array, start: number, end: number, decimalMark: number, exponent: number): number {
  let text = "";
  for (let i = start; i < end; i++) {
    text += bytes[i] === decimalMark ? "." : String.fromCharCode(bytes[i] as number);
  }
  return Number(`${text}e${exponent}`);
}

/** A number from text that must be nothing else; NaN otherwise. Same grammar and shift as {@link scanNumber}. */
export function numberFromText(text: string, shift = 0, decimalMark: "." | "," = "."): number {
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code > 0x7e) return Number.NaN;
    bytes[i] = code;
  }
  const found = scanNumber(bytes, 0, bytes.length, shift, decimalMark === "," ? 0x2c : POINT);
  return found && scanned.next === bytes.length ? scanned.value : Number.NaN;
}
