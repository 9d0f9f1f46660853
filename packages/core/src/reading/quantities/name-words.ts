/** Words of a header: lower case, no accents, "|Z|" as "mag z", brackets and separators as blanks. */
export function wordsOf(header: string): readonly string[] {
  return (
    header
      // What follows a dash with an equals sign is a setting of the run, not part of the name; "x:1" is how SWR is written.
      .replace(/ - [^=]*=.*$/, "")
      .replace(/\b[xn] ?: ?1\b|\b1 ?: ?[xn]\b/gi, " ")
      // R_s and X_p are one name, S₁₁ is S11, µ the one that keyboards have.
      .replace(/\b([rx])_([sp])\b/gi, "$1$2")
      // Z' and Z'', Zr and Zi, S11_r and S11_i are parts.
      .replace(/(?<![\p{L}\d])([zy])\s?(?:''|"|″)/giu, "$1 im ")
      .replace(/(?<![\p{L}\d])([zy])\s?['′’]/giu, "$1 re ")
      .replace(/(?<![\p{L}\d])([zy]|s\d\d|gamma)_?r(?![\p{L}\d])/giu, "$1 re ")
      .replace(/(?<![\p{L}\d])([zy]|s\d\d|gamma)_?i(?![\p{L}\d])/giu, "$1 im ")
      .replaceAll("_", " ")
      .replace(/[\u2080-\u2089]/g, (digit) => String(digit.charCodeAt(0) - 0x2080))
      .replace(/[\u00b5\u03bc]/g, "u")
      .replace(
        /(?<=[\p{L}\d])\s*(?:\|\||\/\/|[\u2225\u2016])|^\s*(?:\|\||\/\/|[\u2225\u2016])\s*(?=\p{L})/gu,
        " parallel ",
      )
      .replace(/\|([^|]{1,20})\|/g, " mag $1 ")
      .replace(/\u2126|(?<!\p{Script=Greek})[Ωω](?!\p{Script=Greek})/gu, "ohm")
      .replace(/[ßẞ]/g, "ss")
      .normalize("NFD")
      .replace(/\p{M}/gu, "")
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
      .split(/[^\p{L}\p{N}°%]+/u)
      .flatMap(
        (word) =>
          GLUED.exec(word)
            ?.slice(1)
            .filter((part) => part !== undefined) ?? [word],
      )
      .filter((word) => word !== "")
  );
}

/** A part and its subject, or a name and its unit of frequency, written as one word: "ReZ", "FreqMHz". */
const GLUED =
  /^(?:(re|im|mag|ang|arg)(z|s11|s22|gamma)|(z|s11|s22|gamma)(re|im|real|imag|mag|phase|ang)|(f|[a-z]{2,}?)([kmg]?hz))$/;
