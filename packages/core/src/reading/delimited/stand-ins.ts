import { once } from "../../numbers/once.js";

/** What numbers are said to stand for where nothing was measured (from memory). */
const meansNothing = once(
  () =>
    /(-?\d+(?:[.,]\d+)?)\s*(?:=|:|means?|stands? for|is|bedeutet|heißt|signifie|significa)\s*(?:not? (?:measured|measurement|readings?|data|values?|valid|swept|taken)|missing|invalid|n\/a|no reading|error|over(?:range|load)|(?:nicht|nichts|keine?) (?:gemessen|messung|wert)|fehlt|ungültig|pas (?:de )?mesur\p{L}*|non mesur\p{L}*|sin (?:medir|dato)|no medid[oa]|non misurat[oa]|niet gemeten)/giu,
);

/** The numbers that, as words around a table say, stand for no reading: "9999 = not measured". */
export const standIns = (texts: readonly string[]): ReadonlySet<number> =>
  new Set(
    texts.flatMap((text) =>
      /\d\s*(?:[=:]|\p{L})/u.test(text)
        ? [...text.matchAll(meansNothing())].map(([, digits = ""]) => Number(digits.replace(",", ".")))
        : [],
    ),
  );
