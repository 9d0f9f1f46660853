/** "3/4" behind a whole number, as decimals. */
const PARTS: Readonly<Record<string, string>> = {
  "1/4": ".25",
  "1/3": ".33",
  "1/2": ".5",
  "2/3": ".67",
  "3/4": ".75",
};
const MIXED = new RegExp(`(?<![\\d.,/])(\\d{1,2})[ +](${Object.keys(PARTS).join("|")})(?![\\d/])`, "g");
/** No frequency of HF in kHz has so few digits before its decimals: beside another decimal mark this one stands between thousands. */
const MARKED_KILOHERTZ = /(?<![\d.,])([1-9]\d?)([.,])(\d{3})(?=\s?khz(?!\p{L}))/giu;

/** "50M500": the unit stands where the decimal mark would. */
const UNIT_AS_MARK = /(?<![\w.,])(\d{1,3})M(\d{1,6})(?![\w.,])/g;

/** A line with decimals for "1 3/4", without the mark in "14.000 kHz" beside "1,5", and with one in "50M500". */
export const withPlainNumbers = (line: string): string =>
  line
    .replace(UNIT_AS_MARK, "$1.$2 MHz")
    .replace(MIXED, (_, whole: string, part: string) => whole + PARTS[part])
    .replace(MARKED_KILOHERTZ, (given, thousands: string, mark: string, rest: string) =>
      (mark === "." ? /\d,\d/ : /\d\.\d/).test(line) ? thousands + rest : given,
    );
