/**
 * Where the last scan left off: the number, and the index of the first byte after it. Shared and written over by each
 * scan, so that scanning allocates nothing; the NaN makes the engine keep the field as a plain double.
 */
export const scanned = { value: Number.NaN, next: 0 };

const ZERO = 0x30;
const PLUS = 0x2b;
const MINUS = 0x2d;
export const POINT = 0x2e;
export const COMMA = 0x2c;
const isDigit = (byte: number) => byte >= ZERO && byte <= ZERO + 9;
/** E, e, and the D, d of Fortran. */
const isExponentMark = (byte: number) => byte === 0x45 || byte === 0x65 || byte === 0x44 || byte === 0x64;

/** 10^0 to 10^22: the powers of ten that a double holds exactly. */
const POWERS_OF_TEN = Float64Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));
/** Exponents beyond this are all the same: infinite or zero. */
const GREATEST_EXPONENT = 9999;

/**
 * Scans a decimal number: digits with an optional sign, decimal mark (leading or trailing allowed) and exponent.
 *
 * Exactly the double nearest to what is printed, like Number(). Where the digits are an integer below 2^53 and the power of
 * ten is at most 22, both are exact and their product or quotient rounds once (W. D. Clinger, How to read floating point
 * numbers accurately, PLDI 1990); all others go through Number().
 *
 * @param decimalMark byte of the decimal mark, POINT or COMMA
 * @param shift the value is multiplied by 10^shift by moving the decimal mark, so that 7.1 MHz is exactly 7100000 Hz
 * @returns whether a number starts at `start`; the result is left in {@link scanned}
 */
export function scanNumber(bytes: Uint8Array, start: number, end: number, shift: number, decimalMark: number): boolean {
  let i = start;
  let byte = i < end ? (bytes[i] as number) : 0;
  const isNegative = byte === MINUS;
  if (isNegative || byte === PLUS) byte = ++i < end ? (bytes[i] as number) : 0;
  let mantissa = 0;
  let exponent = shift;
  const digitsStart = i;
  while (isDigit(byte)) {
    mantissa = mantissa * 10 + (byte - ZERO);
    byte = ++i < end ? (bytes[i] as number) : 0;
  }
  let digits = i - digitsStart;
  if (byte === decimalMark) {
    const fractionStart = ++i;
    byte = i < end ? (bytes[i] as number) : 0;
    while (isDigit(byte)) {
      mantissa = mantissa * 10 + (byte - ZERO);
      byte = ++i < end ? (bytes[i] as number) : 0;
    }
    exponent -= i - fractionStart;
    digits += i - fractionStart;
  }
  if (digits === 0) return false;
  const mantissaEnd = i;
  if (isExponentMark(byte)) {
    let j = i + 1;
    const isNegativeExponent = bytes[j] === MINUS;
    if (isNegativeExponent || bytes[j] === PLUS) j++;
    const exponentStart = j;
    let written = 0;
    while (j < end && isDigit(bytes[j] as number)) {
      written = Math.min(written * 10 + ((bytes[j++] as number) - ZERO), GREATEST_EXPONENT);
    }
    if (j > exponentStart) i = j;
    exponent += isNegativeExponent ? -written : written;
  }
  scanned.next = i;
  // Leading zeros are digits too, but do not matter: 2^53 bounds what a double holds exactly.
  if (mantissa > Number.MAX_SAFE_INTEGER || exponent < -22 || exponent > 22) {
    scanned.value = parseSlowly(bytes, start, mantissaEnd, decimalMark, exponent);
    return true;
  }
  const value = exponent < 0 ? mantissa / at10(-exponent) : mantissa * at10(exponent);
  scanned.value = isNegative ? -value : value;
  return true;
}

const at10 = (power: number) => POWERS_OF_TEN[power] as number;

/** By Number(); `exponent` is that of all digits as a whole number, so the decimal mark is left out. */
function parseSlowly(bytes: Uint8Array, start: number, end: number, decimalMark: number, exponent: number): number {
  let text = "";
  for (let i = start; i < end; i++) if (bytes[i] !== decimalMark) text += String.fromCharCode(bytes[i] as number);
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
  const found = scanNumber(bytes, 0, bytes.length, shift, decimalMark === "," ? COMMA : POINT);
  return found && scanned.next === bytes.length ? scanned.value : Number.NaN;
}
