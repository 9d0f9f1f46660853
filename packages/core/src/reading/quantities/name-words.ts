/** Words of a header: lower case, no accents, "|Z|" as "mag z", brackets and separators as blanks. */
export const wordsOf = (header: string): readonly string[] => {
  const name = spaced(header);
  return (PLAIN.test(name) ? name.toLowerCase().split(/[ (),.]+/) : spelledOut(name).split(/[^\p{L}\p{N}°%]+/u))
    .flatMap(
      (word) =>
        GLUED.exec(word)
          ?.slice(1)
          .filter((part) => part !== undefined) ?? [word],
    )
    .filter((word) => word !== "");
};

/** "R.O.S.", "V.S.W.R." */
export const DOTTED = /(?<!\p{L})(?:\p{L}\.){2,3}\p{L}\.?(?!\p{L})/gu;
export const withoutDots = (letters: string): string => letters.replaceAll(".", "");

/** "returnLossDb" in words. */
export const spaced = (name: string): string => name.replace(/(?<=[a-z]{2})(?=[A-Z][a-z])(?!Hz)/g, " ");

/** Letters of English alone, in which there is nothing to be spelled out: "Frequency (MHz)", but not "Zr", "pF", "S11" or "s.w.r.". */
const PLAIN = /^(?!.*\b(?:(?:(?:[zy]|gamma)[ri]|[pn]f|mohms?)\b|[vswr]{1,3}\.|[a-z]\.[a-z]\.[a-z]\b))[a-z (),.]*$/i;

/** A header in small letters, with words in the place of what stands for them. */
function spelledOut(header: string): string {
  return (
    header
      // What follows a dash with an equals sign is a setting of the run, not part of the name; "x:1" is how SWR is written.
      .replace(/ - [^=]*=.*$/, "")
      // l'impédance, dell'impedenza
      .replace(/(?<!\p{L})(?:[ld]|dell|nell|all)['’](?=\p{L})/giu, " ")
      .replace(/\b[xn] ?: ?1\b|\b1 ?: ?[xn]\b/gi, " ")
      // R_s and X_p are one name, S₁₁ is S11, µ the one that keyboards have.
      .replace(/\b([rx])_([sp])\b/gi, "$1$2")
      // Z' and Z'', Zr and Zi, S11_r and S11_i are parts.
      .replace(/(?<![\p{L}\d])([zy])\s?(?:''|"|″)/giu, "$1 im ")
      .replace(/(?<![\p{L}\d])([zy])\s?['′’]/giu, "$1 re ")
      .replace(/(?<![\p{L}\d])([zyΓγ]|s\d\d|gamma)_?r(?![\p{L}\d])/giu, "$1 re ")
      .replace(/(?<![\p{L}\d])([zyΓγ]|s\d\d|gamma)_?i(?![\p{L}\d])/giu, "$1 im ")
      // No capital: MΩ are a million of them.
      .replace(/(?<!\p{L})m(?:[Ωω\u2126]|ohms?)(?!\p{L})/gu, " milliohm ")
      .replace(DOTTED, withoutDots)
      .replace(/(?<!\p{L})series C(?=[\s,]*[([]?[pn]F)/giu, " capacitance ")
      .replace(/(?<!\p{L})series L(?=[\s,]*[([]?[nµμu]H)/giu, " inductance ")
      .replace(/(?<!\p{L})([pn])F(?!\p{L})/gu, (_, prefix: string) => (prefix === "p" ? " picofarad " : " nanofarad "))
      // "P+" and "P-" are the powers that go out and come back.
      .replace(/(?<!\p{L})P ?\+(?![\p{L}\d])/gu, " forward power ")
      .replace(/(?<!\p{L})P ?[-−–](?![\p{L}\d])/gu, " reflected power ")
      .replace(/kilo[- ](?=ohm)/gi, "kilo")
      .replaceAll("_", " ")
      .replace(/ℜ/g, " re ")
      .replace(/ℑ/g, " im ")
      .replace(/[\u2080-\u2089]/g, (digit) => String(digit.charCodeAt(0) - 0x2080))
      .replace(/(?<!\p{Script=Greek})[\u00b5\u03bc](?!\p{Script=Greek})/gu, "u")
      .replace(
        /(?<=[\p{L}\d])\s*(?:\|\||\/\/|[\u2225\u2016])|^\s*(?:\|\||\/\/|[\u2225\u2016])\s*(?=\p{L})/gu,
        " parallel ",
      )
      .replace(/\|Г\|/g, "|Γ|")
      .replace(/\|([^|]{1,20})\|/g, " mag $1 ")
      .replace(/\u2126|(?<!\p{Script=Greek})[Ωω](?!\p{Script=Greek})/gu, "ohm")
      .replace(/.+/su, withoutAccents)
      // Greek letters that stand alone are signs.
      .replace(/(?<!\p{Script=Greek})[Γγ](?!\p{Script=Greek})/gu, " gamma ")
      .replace(/(?<!\p{Script=Greek})ρ(?!\p{Script=Greek})/gu, " rho ")
      .replace(/∠|(?<!\p{Script=Greek})[θϑφ](?!\p{Script=Greek})/gu, " theta ")
      .toLowerCase()
      .replace(/(?<![a-z])s ?[([{]? ?(\d) ?[,;:]? ?(\d)(?!\d) ?[)\]}]?/g, " s$1$2 ")
      .replace(/(?<![a-z])(?:v\.)?s\.?w\.?r\.?(?![a-z])/g, " swr ")
      .replace(/(?<![a-z])r\.l\.?(?![a-z])/g, " rl ")
      .replace(/(?<![a-z\d])\d+ ?log/g, " log ")
      .replace(/([°%])/g, " $1 ")
  );
}

/** A part and its subject, or a name and its unit of frequency, written as one word: "ReZ", "FreqMHz". */
const GLUED =
  /^(?:(re|im|mag|ang|arg)(z|s11|s22|gamma)|(z|s11|s22|gamma)(re|im|real|imag|mag|phase|ang)|(f|[a-z]{2,}?)([kmg]?hz))$/;

/** Letters with a stroke or without a dot, and joined ones, which no decomposition parts from what they are written over. */
const LETTERS: Readonly<Record<string, string>> = {
  ß: "ss",
  ẞ: "ss",
  ł: "l",
  Ł: "L",
  ø: "o",
  Ø: "O",
  æ: "ae",
  Æ: "AE",
  ı: "i",
  đ: "d",
  œ: "oe",
};

/** A text without accents. */
export const withoutAccents = (text: string): string =>
  text
    .replace(/[ßẞłŁøØæÆıđœ]/g, (letter) => LETTERS[letter] ?? letter)
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    // Words are compared as they are composed: Hangul would fall apart into single signs.
    .normalize("NFC");
