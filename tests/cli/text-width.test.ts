/** Held against the package string-width, which knows more cases and takes a tenth of a short command to load. */

import stringWidth from "string-width";
import { expect, test } from "vitest";
import { textWidth } from "../../packages/answers/src/text/text-width.js";
import { fc } from "../support/property.js";

test.each([
  "plain",
  "50 Ω ± 3 °, -10 µs … “quoted” – ≤ 2:1",
  "Übergröße, Čeština, Ελλάδα, Україна",
  "日本語のラベル",
  "한국어",
  "ﾊﾝｶｸ",
  "e\u0301 composed of two",
  "\u200bzero\u00adwidth\u202e",
  "👍🏽 👨‍👩‍👧 🇩🇪 ✔️ ⌚ ①",
  "│─┐█▁⣿",
])("%s is as wide as string-width says", (text) => {
  expect(textWidth(text)).toBe(stringWidth(text));
});

// Signs such as a telephone, which terminals show as text unless told otherwise, string-width takes for pictures.
test("so is any text but for signs that can be pictures", () => {
  const text = fc.string({ unit: "grapheme" }).filter((text) => !/\p{Extended_Pictographic}/u.test(text));
  fc.assert(
    fc.property(text, (text) => {
      expect(textWidth(text)).toBe(stringWidth(text));
    }),
    { numRuns: 2000, seed: 20260501 },
  );
});
