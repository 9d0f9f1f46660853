/** The scanner of numbers against Number(), which the language's own specification makes exact (ECMA-262, StringToNumber). */
import { describe, expect, test } from "vitest";
import { COMMA, POINT } from "../../packages/core/src/reading/text/ascii.js";
import { numberFromText, scanNumber } from "../../packages/core/src/reading/text/scan-numbers.js";
import { inUnit, SHIFTS } from "../support/decimal-text.js";
import { bytesOf } from "../support/known-load.js";
import { fc } from "../support/property.js";

describe("a scanned number", () => {
  const digits = fc.stringMatching(/^[0-9]{0,25}$/);
  const decimalText = fc
    .tuple(
      fc.constantFrom("", "-", "+"),
      digits,
      fc.option(digits, { nil: null }),
      fc.option(fc.integer({ min: -345, max: 345 }), { nil: null }),
      fc.constantFrom("e", "E", "e+0"),
    )
    .filter(([, whole, fraction]) => whole.length + (fraction?.length ?? 0) > 0)
    .map(([sign, whole, fraction, exponent, mark]) => {
      const power = exponent === null ? "" : `${exponent < 0 ? mark.charAt(0) : mark}${exponent}`;
      return `${sign}${whole}${fraction === null ? "" : `.${fraction}`}${power}`;
    });

  function scan(text: string, shift = 0, mark = POINT): number {
    const bytes = bytesOf(text);
    const target = new Float64Array(1);
    expect(scanNumber(bytes, 0, shift, mark, target, 0)).toBe(bytes.length);
    return target[0] ?? Number.NaN;
  }

  test("is what Number() makes of the same text, to the last bit and the sign of zero", () => {
    fc.assert(
      fc.property(decimalText, (text) => {
        expect(Object.is(scan(text), Number(text)), text).toBe(true);
        expect(Object.is(scan(text.replace(".", ","), 0, COMMA), Number(text)), text).toBe(true);
        expect(Object.is(numberFromText(text), Number(text)), text).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });

  test("is any double again that was printed with its fewest digits", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const printed = Object.is(value, -0) ? "-0" : String(value);
        expect(Object.is(scan(printed), value), printed).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });

  test("with its mark moved is Number() of the text with that exponent", () => {
    fc.assert(
      fc.property(digits, digits, fc.constantFrom(3, 6, 9), (whole, fraction, shift) => {
        fc.pre(whole.length + fraction.length > 0);
        expect(Object.is(scan(`${whole}.${fraction}`, shift), Number(`${whole}.${fraction}e${shift}`))).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  test("of kilohertz, megahertz and gigahertz is exactly the whole number of hertz", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300_000_000_000 }), (frequencyHz) => {
        for (const unit of ["kHz", "MHz", "GHz"] as const) {
          expect(scan(inUnit(frequencyHz, unit), SHIFTS[unit])).toBe(frequencyHz);
        }
      }),
      { numRuns: 3000 },
    );
  });

  test.each(["", "-", "+", ".", "-.", "e5", ".e5", "x", " 1"])("%j is none", (text) => {
    const bytes = bytesOf(text);
    expect(scanNumber(bytes, 0, 0, POINT, new Float64Array(1), 0)).toBe(-1);
    expect(numberFromText(text)).toBeNaN();
  });

  test("of a text knows nothing of the longer text before it", () => {
    for (const length of [200, 64, 63, 62, 5, 1]) {
      const text = "9".repeat(length);
      expect(numberFromText(text)).toBe(Number(text));
      expect(numberFromText("1e")).toBeNaN();
      expect(numberFromText("")).toBeNaN();
    }
  });

  test.each(["1e", "1e+", "1x", "1.2.3", "1-", "0x7", "1_0", "1 2"])("%j is not taken for one as a whole", (text) => {
    expect(numberFromText(text)).toBeNaN();
  });
});
