import { once } from "../../numbers/once.js";
import { isInSomeBand } from "../notes/note-place.js";
import { OVER_WORD, SAME_WORD, SWR_WORD } from "../notes/note-words.js";
import { withPlainNumbers } from "../notes/plain-numbers.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { FormRow, FormTable } from "./form.js";
import { quantityIn, swrWord } from "./title-words.js";

const NUMBER = "[-−–]?\\d+(?:[.,]\\d+)?";
const UNIT = "[kMG]?Hz";
/** Lines have no more of them in a row: without a bound the search would not end on a line of many. */
const BLANKS = "\\s{0,2}";
/** The bar of a plot made of signs: "21.000 |###### 2.5" */
const BAR = "[#*█▇▆▅▄▃▂▁▓▒░■▪]{1,200}|[=+o]{2,200}";
/** What may stand between a frequency and its reading: "3.5 ... 3.1", "28000/3.8", "3.5 (3.0)", "21 MHz  Z = 57-j18". */
const BETWEEN = `(?:${BLANKS}(?:[=:/@|(]|\\.{2,20}|…|(?<=[\\d\\p{L}])[-–—]>?(?=\\d)|[-–—]{1,20}>?(?![\\d.,])|→|=>|${BAR}|(?:${SWR_WORD}|z|rl|is|ist)(?!\\p{L})${BLANKS}[=:]?|\\s)){1,3}${BLANKS}`;
const POLAR = `\\d+(?:[.,]\\d+)?(?:\\s*(?:ohms?|[ΩΩ]))?\\s*∠\\s*${NUMBER}\\s*(?:°|deg(?!\\p{L}))?`;
const COMPLEX = `${POLAR}|${NUMBER}\\s*[+−–-]\\s*(?:[ij]\\s*\\d+(?:[.,]\\d+)?|\\d+(?:[.,]\\d+)?\\s*[ij])(?:\\s*(?:ohms?|[ΩΩ]))?`;
const patterns = once(() => ({
  pair: new RegExp(
    `\\s*(?:[,;|]|(?<=\\s)/(?=\\s))?\\s*(\\d+(?:[.,]\\d+)?(?:e[+-]?\\d+)?)\\s*(${UNIT})?${BETWEEN}(${COMPLEX}|(?:${OVER_WORD}\\s*|[<~≈]\\s*)?${NUMBER}(?:\\s*:\\s*1(?![\\d.,]))?(?:\\s*dB(?!\\p{L}))?[+*?!]?|(?:${SAME_WORD})(?!\\p{L})|["”〃]|'')(?![.,]?\\d|[.,][?_(x]|\\s*${UNIT})\\)?`,
    "iuy",
  ),
  frequency: new RegExp(
    `^\\s*(?:\\d+[.,]\\d+\\s*(?:${UNIT})?${BLANKS}[=:/@]|\\d+(?:[.,]\\d+)?\\s*${UNIT}(?!\\p{L})[^\\d]{0,20}\\d)`,
    "iu",
  ),
  unit: new RegExp(`(?<!\\p{L})(${UNIT})(?!\\p{L})`, "iu"),
  same: new RegExp(`^(?:${SAME_WORD}|["”〃]|'')$`, "iu"),
}));
/** "41 - j30 ohm" */
const IS_COMPLEX = /[ij]/i;
const IN_OHMS = /(?:ohms?|[ΩΩ])$/iu;
const namesImpedance = (line: string): boolean =>
  line.split(/[,;:()[\]]/).some((part) => roleFromHeader(part).quantity === "impedance-magnitude");
/** Of all lines with a number so many are pairs and nothing else, or it is another text. */
const LEAST_SHARE = 0.8;
const FEWEST_PAIRS = 2;
/** Words behind the last pair of a line. */
const REMARK = /^\D*$/;

/** What stands before the pairs of a line: an antenna, which has a table of its own then, or the band. */
const BEFORE = /^\s*(?:(\p{L}[^:\d]{0,40})|\d{1,4} ?c?m|\d{1,3} ?MHz):\s+(?=\d)/iu;

interface Pair {
  readonly series: string;
  readonly frequency: string;
  readonly unit: string | undefined;
  readonly reading: string;
  readonly line: number;
}

/**
 * Frequencies and readings in pairs, one or several a line, below words that say what they are: "SWR, dipole, MHz", then
 * "3.500 ... 3.1" or "28000/3.8 28500/1.1".
 */
export function pairsUnderTitle(content: string): FormTable | null {
  const given = content.split(/\r\n|\n|\r/).map((line) =>
    plainly(line.replace(/\s{3,}/g, "  "))
      .replace(/^\s*;/, "#")
      // "swr = {  # MHz: SWR"
      .replace(/^\s*\w+\s*=\s*[{[(]\s*#/, "#"),
  );
  const lines = withTitleApart(given);
  const isApart = lines !== given;
  const perLine = lines.map((line, i) => pairsIn(line, i + 1));
  const first = perLine.findIndex((pairs) => pairs !== null);
  const title = lines.slice(0, Math.max(0, first)).filter((line) => line.trim() !== "");
  // Names of columns have been refused before, for what they say.
  if (title.some((line) => /offset|Δ/iu.test(line) || (!isApart && (areNames(line) || namesFrequency(line)))))
    return null;
  const pairs = perLine.flatMap((found) => found ?? []);
  const areComplex = pairs.every(({ reading }) => IS_COMPLEX.test(reading));
  const areImpedances =
    areComplex && (title.some(namesImpedance) || pairs.every(({ reading }) => IN_OHMS.test(reading)));
  const quantity = areImpedances ? "Z" : quantityIn(title);
  const unit = unitOf(title, pairs);
  const below = lines.flatMap((line, i) =>
    i >= first && (/\d\D+\d/.test(line.replace(/(?<=\d)[.,](?=\d)/g, "")) || patterns().frequency.test(line))
      ? [i]
      : [],
  );
  const others = [
    ...lines.flatMap((line, i) => (i < first && beginsWithPair(line) ? [i] : [])),
    ...below.filter((i) => perLine[i] === null),
  ];
  const areNamed = new Set(pairs.map(({ series }) => series)).size > 1;
  const areMost = below.length - others.length >= LEAST_SHARE * below.length;
  if (quantity === null || unit === null || pairs.length < FEWEST_PAIRS || !areMost) return null;
  if (!perLine.every((line) => areAlong(line ?? [])) || (!areNamed && !areAlong(pairs))) return null;
  return {
    name: "pairs under a title",
    comments: lines.filter((line, i) => perLine[i] === null && !others.includes(i) && line.trim() !== ""),
    header: [unit === "" ? "frequency" : `frequency (${unit})`, quantity, ...(areNamed ? ["antenna"] : [])],
    rows: withRepeats(pairs, areNamed),
    leftOut: others.map((i) => i + 1),
  };
}

/** Lines, the title that stands before the first pairs in their line put above them. */
function withTitleApart(lines: readonly string[]): readonly string[] {
  const titleOf = (line: string) => /^\s*\p{L}[^\d]*?(?=\d)/u.exec(line)?.[0] ?? "";
  const first = lines.findIndex((line, i) => {
    const title = titleOf(line);
    return swrWord().test(title) && pairsIn(line.slice(title.length), i + 1) !== null;
  });
  if (first < 0) return lines;
  const title = titleOf(lines[first] ?? "");
  return [...lines.slice(0, first), title, (lines[first] ?? "").slice(title.length), ...lines.slice(first + 1)];
}

/** "46 ohms resistive, 35 ohms capacitive" and "0.2 at −24 degrees" as complex numbers, and numbers as they are mostly written. */
const plainly = (line: string): string =>
  withPlainNumbers(line)
    .replace(/(?<=\d)\s+at\s+([+−-]?\d+(?:[.,]\d+)?)\s*(?:°|deg(?:rees)?)(?!\p{L})/giu, "∠$1°")
    .replace(
      /(\d+(?:[.,]\d+)?) ?(?:ohms?|Ω) resistive[,;]?(?: and)? (\d+(?:[.,]\d+)?) ?(?:ohms?|Ω) (capacitive|inductive)/giu,
      (_, resistance: string, reactance: string, kind: string) =>
        `${resistance} ${/^c/i.test(kind) ? "-" : "+"} j${reactance} ohm`,
    );

/** Whether a line is split as the names of columns are. */
const areNames = (line: string): boolean => /[;\t|]|\S\s{2,}\S/.test(line.trim());

/** Whether a line names the frequency in a word, and not by its unit alone or in brackets. */
const namesFrequency = (line: string): boolean =>
  !/\s(?:and|und|et)\s/i.test(line) &&
  line
    .replace(/\([^()]*\)/g, " ")
    .split(/[^\p{L}]+/u)
    .some((word) => word.length > 1 && !patterns().unit.test(word) && roleFromHeader(word).quantity === "frequency");

/** The pairs that a line is; null where there is anything else with a number in it. */
function pairsIn(line: string, number: number): readonly Pair[] | null {
  const { pair } = patterns();
  const pairs: Pair[] = [];
  const [before = "", series = ""] = BEFORE.exec(line) ?? [];
  let position = before.length;
  for (;;) {
    pair.lastIndex = position;
    const match = pair.exec(line);
    if (match === null) break;
    const [whole, frequency = "", unit, reading = ""] = match;
    pairs.push({ series: series.trim(), frequency, unit, reading, line: number });
    position += whole.length;
  }
  return pairs.length > 0 && REMARK.test(line.slice(position)) ? pairs : null;
}

/** Whether a line above the pairs begins as they do: "40m: 7.1 MHz 1.5 or so at 7.2". */
function beginsWithPair(line: string): boolean {
  const { pair, frequency } = patterns();
  pair.lastIndex = BEFORE.exec(line)?.[0].length ?? 0;
  return pair.test(line) || frequency.test(line);
}

/** The one unit of frequency that stands above or beside the numbers; none where their size tells it, null where nothing does. */
function unitOf(title: readonly string[], pairs: readonly Pair[]): string | null {
  const told = title.flatMap((line) => patterns().unit.exec(line)?.[1] ?? []);
  const units = new Set([...told, ...pairs.flatMap(({ unit }) => unit ?? [])].map((unit) => unit.toLowerCase()));
  if (units.size === 0) return pairs.every(({ frequency }) => isInSomeBand(numberOf(frequency))) ? "" : null;
  return units.size === 1 ? ([...units][0] as string) : null;
}

const numberOf = (printed: string): number => Number(printed.replace(",", "."));

/** Whether the frequencies go one way. */
function areAlong(pairs: readonly Pair[]): boolean {
  const values = pairs.map(({ frequency }) => numberOf(frequency));
  const steps = values.slice(1).map((value, i) => Math.sign(value - (values[i] ?? 0)));
  return steps.every((step) => step !== 0 && step === steps[0]);
}

/** Rows, with what "same" stands for. */
function withRepeats(pairs: readonly Pair[], areNamed: boolean): readonly FormRow[] {
  let last = "";
  return pairs.map(({ series, frequency, reading, line }) => {
    if (!patterns().same.test(reading)) last = reading;
    return { cells: [frequency, last, ...(areNamed ? [series] : [])], line };
  });
}
