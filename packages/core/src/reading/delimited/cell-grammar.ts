import { ABOUT_WORD, OR_MORE, OVER_WORD, UNDER_WORD } from "../notes/note-words.js";
import type { DecimalMark, Delimiter } from "../options/read-options.js";
import { numberFromText } from "../text/scan-numbers.js";
import { type CellUnit, OTHER_UNIT, UNIT, unitOf } from "./cell-units.js";
import { type ComplexCell, complexCell, HAS_IMAGINARY } from "./complex-cell.js";

/** How the cells of a delimited text are told apart and written. */
export interface CellDialect {
  readonly delimiter: Delimiter;
  readonly decimal: DecimalMark;
  /** The user said what the decimal mark is: the other mark then stands between thousands, however few */
  readonly isDecimalStated: boolean;
  /** Nothing but the delimiter splits columns, as the user says or a form of table has it */
  readonly isDelimiterStated: boolean;
}

/** A number as a cell holds it. */
export interface NumberCell {
  readonly kind: "number";
  /** Without unit and marks between thousands, with a decimal point */
  readonly digits: string;
  /** As it stands in its cell, without the unit */
  readonly printed: string;
  readonly unit: CellUnit | null;
  /** Between thousands */
  readonly mark: string | null;
  /** Beside the number stands what people leave there: "~2.3", "3.4*", "1.6 (wind)" */
  readonly isRemarked: boolean;
  /** Its comma was taken for a slipped decimal point */
  readonly isSlipped: boolean;
  /** Another number, if a mark in it stands between thousands, as others of its column must show */
  readonly grouped: NumberCell | null;
}

/** What a cell holds where a number is expected. */
export type Cell =
  | NumberCell
  | ComplexCell
  /** "more than" a number, or off the scale altogether (null) */
  | { readonly kind: "at-least"; readonly digits: string | null; readonly isRemarked: boolean }
  | { readonly kind: "missing" }
  /** `grouped`: a number, if a mark in it stands between thousands, as other numbers of its column must show */
  | { readonly kind: "text"; readonly grouped: NumberCell | null };

/** Marks that only ever stand between thousands: apostrophes, blanks, those of fixed and narrow width among them, and "_". */
const GROUPING = "['’_ \u00a0\u2009\u202f]";
const NUMBER = "[+-]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)(?:e[+-]?\\d+)?";
/** Digits by threes: with a mark that could be a decimal one only where it stands twice, or another one does for decimals. */
const BY_POINTS = "(?:\\.\\d{3}){2,}(?:,\\d+)?|(?:\\.\\d{3})+,\\d+";
const BY_COMMAS = "(?:,\\d{3}){2,}(?:\\.\\d+)?|(?:,\\d{3})+\\.\\d+";
const GROUPED = `[+-]?[1-9]\\d{0,2}(?:(?:${GROUPING}\\d{3})+(?:[.,]\\d+)?|${BY_POINTS}|${BY_COMMAS})`;
const DRESSED = new RegExp(`^(${GROUPED}|${NUMBER})\\s*(?:(${UNIT})|(${OTHER_UNIT}))?$`, "iu");
const UNDRESSED = new RegExp(`^(?:${GROUPED}|${NUMBER})$`, "i");
const IS_GROUPED = new RegExp(`^${GROUPED}$`);
/** A number whose one mark may stand before decimals or between thousands. */
export const MAY_BE_GROUPED = /^[+-]?[1-9]\d{0,2}([.,])\d{3}$/;
const BESIDE = new RegExp(`^\\s*"?[+-]?\\d(?:.*\\d)?\\s?(?:${UNIT})(?!\\p{L})`, "iu");
const JOINABLE = new RegExp(`(\\d)[ \\t]+(?=(?:${UNIT})(?:[ \\t]|$))`, "giu");

/** Whether a line begins with a number, and a unit stands beside one in it. */
export const hasUnitBeside = (line: string): boolean => BESIDE.test(line);

/** What a spreadsheet makes of "1.9": "01. Sep". */
const MONTH = "(?:jan|feb|m[aä]r|mrz|apr|ma[iy]|jun|jul|aug|sep|o[kc]t|nov|de[cz])\\p{L}*";
const DAY = new RegExp(`(?<![\\d.,])([0-3]?\\d\\.?)[ \\t]+(${MONTH})(?!\\p{L})`, "giu");
const MONTH_BEHIND = new RegExp(`^\\.?\\s*${MONTH}\\.?\\s*\\d*$`, "iu");

/** "0.25 at 147.5 deg", "0.25 / 147.5°" */
const POLAR_IN_WORDS = /(\d)\s+(?:at|\/)\s+([+−-]?\d+(?:[.,]\d+)?)\s*(?:°|deg(?:rees)?)(?=\s|$)/g;

/** Puts units, and the parts of complex numbers and of ratios, that stand after a blank to their numbers, where blanks split the columns. */
export function withNumbersJoined(line: string): string {
  if (!/^\s*[+-]?[\d.,]/.test(line)) return line;
  const joined = line
    .replace(JOINABLE, "$1")
    .replace(DAY, "$1$2")
    .replace(/([<>≤≥~≈])\s+(?=\d)/g, "$1")
    .replace(/(\d)\s+(±|\+\/-|\+-)\s*(?=\d)/g, "$1$2")
    .replace(/(\d)\s+@\s+(?=[+-]?\d)/g, "$1@")
    .replace(/(\d)\s+:\s+(?=\d)/g, "$1:")
    .replace(POLAR_IN_WORDS, "$1∠$2deg");
  return HAS_IMAGINARY.test(joined) || joined.includes("∠") ? joined.replace(/\s*([+−-]|∠)\s+/g, "$1") : joined;
}

/** No special form of a number ("> 10", "---", "1.5:1") is longer than this. */
const LONGEST_SPECIAL = 24;
const LONGEST_REMARK = 80;
/** Digits and marks that make no number in one dialect but may in another; no special form is written so. */
const MARKED_DIGITS = /^[+-]?\d[\d.,]*$/;
/** Digits behind which another delimiter stands: the row is split by that. */
const GOES_ON = /^[+-]?[\d.,]+[;\t|]/;
const MISSING: Cell = { kind: "missing" };
export const TEXT: Extract<Cell, { readonly kind: "text" }> = { kind: "text", grouped: null };
const OFF_SCALE: Cell = { kind: "at-least", digits: null, isRemarked: false };

/** Reads a cell: a number with what may stand beside it, "> 10" and its like, nothing ("", "---", "NaN"), or text. */
export function readCell(given: string, dialect: CellDialect): Cell {
  const cell = given.replace(/^[−–](?=[\d.,])/, "-");
  const value = plainNumber(cell, dialect);
  if (Number.isFinite(value)) return plain(cell, dialect);
  if (!Number.isNaN(value)) return OFF_SCALE;
  if (cell === "") return MISSING;
  // Digits and marks hold no complex number and no remark, but perhaps a slip.
  if (MARKED_DIGITS.test(cell)) {
    const number = dressed(cell, dialect) ?? (cell.includes(",") ? withRemark(cell, dialect) : null);
    return number !== null && !number.isRemarked ? number : { ...(number ?? TEXT), grouped: perhapsGrouped(cell) };
  }
  if (GOES_ON.test(cell)) return TEXT;
  const read =
    special(cell, dialect) ?? dressed(cell, dialect) ?? complexOf(cell, dialect) ?? remarked(cell, dialect) ?? TEXT;
  return read.kind === "text" || (read.kind === "number" && read.isRemarked)
    ? { ...read, grouped: perhapsGrouped(cell) }
    : read;
}

/** A cell's value, times a power of ten. */
export const numberOf = ({ digits }: { readonly digits: string }, shift = 0): number => numberFromText(digits, shift);

const markOf = ({ decimal }: CellDialect) => (decimal === "comma" ? "," : ".");
const plainNumber = (text: string, dialect: CellDialect): number => numberFromText(text, 0, markOf(dialect));
const withPoint = (digits: string, { decimal }: CellDialect): string =>
  decimal === "comma" ? digits.replace(",", ".") : digits;

const plain = (printed: string, dialect: CellDialect): NumberCell =>
  numberCell(withPoint(printed, dialect), printed, null, null);

const numberCell = (
  digits: string,
  printed: string,
  unit: NumberCell["unit"],
  mark: NumberCell["mark"],
): NumberCell => ({ kind: "number", digits, printed, unit, mark, isRemarked: false, isSlipped: false, grouped: null });

/** "> 10", "over 10" */
const MORE_THAN = new RegExp(`^(?:>=?|≥|⩾|${OVER_WORD})\\s*([\\d.,].*)$`, "iu");
/** "1.7 or more" */
const AND_MORE = new RegExp(`^([\\d.,]+)\\s+${OR_MORE}$`, "iu");

function special(cell: string, dialect: CellDialect): Cell | null {
  if (cell.length > LONGEST_SPECIAL) return null;
  if (/^([-–—.*?]+|[+-]?nan|n\/?a|null|none|#n\/a|-?1\.#(ind|qnan|snan)\w*)$/i.test(cell)) return MISSING;
  if (/^(\+?(?:inf(?:init[ey]|inity)?|unendlich|infini(?:to)?|oneindig)|∞|1\.#inf\w*|ol|over)$/i.test(cell))
    return OFF_SCALE;
  if (!/\d/.test(cell)) return null;
  const bound = MORE_THAN.exec(cell) ?? AND_MORE.exec(cell);
  if (bound !== null) {
    const limit = readCell((bound[1] as string).replace(/:1$/, ""), dialect);
    if (limit.kind === "number" && !limit.isRemarked) {
      return { kind: "at-least", digits: limit.digits, isRemarked: false };
    }
  }
  const imaginary = /^([+-]?)\s*[ij]\s*([\d.,]+)$/.exec(cell);
  if (imaginary !== null) return readCell(`${imaginary[1]}${imaginary[2]}`, dialect);
  const ratio = /^(?:=?\s*([\d.,]+)\s*(?::|\/|to|zu|à|a)\s*1|1\s*(?::|to|zu|à|a)\s*([\d.,]+)|=\s*([+-]?[\d.,]+))$/.exec(
    cell,
  );
  return ratio === null ? null : readCell((ratio[1] ?? ratio[2] ?? ratio[3]) as string, dialect);
}

/** A complex number; with a decimal comma "(27,55)" is a negative one, as accounts have them, and no pair. */
const complexOf = (cell: string, { decimal }: CellDialect): ComplexCell | null =>
  decimal === "comma" && /^\(\d+,\d+\)$/.test(cell) ? null : complexCell(cell);

/** A number and the unit behind it. */
function partsOf(cell: string): { printed: string; unit: CellUnit | null } | null {
  if (UNDRESSED.test(cell)) return { printed: cell, unit: null };
  if (MARKED_DIGITS.test(cell) || !/\d/.test(cell)) return null;
  const [, printed, unit, other] = DRESSED.exec(cell) ?? [];
  return printed === undefined ? null : { printed, unit: unitOf(unit, other) };
}

function dressed(cell: string, dialect: CellDialect): NumberCell | null {
  const parts = partsOf(cell);
  if (parts === null) return null;
  const { printed, unit } = parts;
  const mark = groupingIn(printed, dialect);
  if (mark === null && !Number.isFinite(plainNumber(printed, dialect))) return null;
  // Blanks may split columns beside commas and tabs: "7,500 100,0" is no 500 100, and "144 100<tab>200" no 144 100.
  const { delimiter, isDelimiterStated } = dialect;
  const isSure =
    delimiter === "semicolon" ||
    delimiter === "bar" ||
    (delimiter === "tab" && isDelimiterStated) ||
    printed.split(" ").length > 2;
  if (mark === " " && !isSure) return null;
  const digits = mark === null ? withPoint(printed, dialect) : withoutMarks(printed, mark);
  return numberCell(digits, printed, unit, mark);
}

/** "950.000" with a decimal comma: no number, unless others of its column have thousands marked so. */
function perhapsGrouped(cell: string): NumberCell | null {
  const { printed, unit } = partsOf(cell) ?? { printed: "", unit: null };
  const mark = MAY_BE_GROUPED.exec(printed)?.[1];
  return mark === undefined ? null : numberCell(printed.replace(mark, ""), printed, unit, mark);
}

const withoutMarks = (printed: string, mark: string): string => printed.split(mark).join("").replace(",", ".");

/** What stands between the thousands of a number; a mark that may stand before decimals where the user's word leaves no other. */
function groupingIn(printed: string, dialect: CellDialect): string | null {
  if (IS_GROUPED.test(printed)) return /[^\d+-]/.exec(printed)?.[0] ?? null;
  const mark = MAY_BE_GROUPED.exec(printed)?.[1] ?? null;
  // Beside a decimal point a comma within quotes stands between thousands, where commas split the columns.
  if (mark === "," && dialect.delimiter === "comma" && dialect.decimal === "point") return mark;
  return dialect.isDecimalStated && mark !== markOf(dialect) ? mark : null;
}

const ABOUT = new RegExp(`^(?:${ABOUT_WORD}|${UNDER_WORD})\\s*`, "i");
/** What people put behind a number: marks, brackets, a note. */
const BEHIND =
  /^(?:\s*[*+†‡]+\)|\s*[*?!†★☆✓✔\p{Emoji_Presentation}]+|\s*\([^()]*\)|\s*(?:#|<-|\/\/).*|\s*(?:at|@|with)\s*\d+(?:[.,]\d+)?\s*m?W|\s*(?:±|\+\/-|\+-)\s*\d+(?:[.,]\d+)?\s*%?|\s*[[(]?(?:@|at|in|re|z0 ?=)?\s*\d+(?:[.,]\d+)?\s*(?:ohms?|[ΩΩ])[\])]?|\s+\p{L}{3,}[\p{L}\s]*)+$/u;
/** Another unit changes the number, and is no remark. */
const UNIT_BEHIND = /^\s*(?:[kmg]?hz|[kmg]?ohms?|deg|rad|dbm?|volts?|watts?)\b/i;
const REMARKED = /^([+-]?\d+(?:[.,]\d+)?)(\+(?!\/?-))?/;

/**
 * A number and a remark, as people leave them in a table: "~2.3", "3.4*", "1.6 (wind)", "10+", "<1.2", "(22)" for a negative
 * one, and a decimal comma among points.
 */
function remarked(cell: string, dialect: CellDialect): Cell | null {
  if (cell.length > LONGEST_REMARK || !/\d/.test(cell)) return null;
  const negative = /^\(\s*(\d+(?:[.,]\d+)?)\s*\)$/.exec(cell)?.[1];
  if (negative !== undefined) return withRemark(`-${negative}`, dialect);
  const behind = /^(\d+(?:[.,]\d+)?)[-−]$/.exec(cell)?.[1];
  if (behind !== undefined) return withRemark(`-${behind}`, dialect);
  const text = cell.replace(ABOUT, "").replace(/^−/, "-");
  const match = REMARKED.exec(text);
  if (match === null) return null;
  const rest = text.slice(match[0].length);
  if (rest !== "" && (UNIT_BEHIND.test(rest) || MONTH_BEHIND.test(rest) || !BEHIND.test(rest))) return null;
  const number = withRemark(match[1] ?? "", dialect);
  return number === null || match[2] === undefined
    ? number
    : { kind: "at-least", digits: number.digits, isRemarked: true };
}

function withRemark(printed: string, dialect: CellDialect): NumberCell | null {
  if (Number.isFinite(plainNumber(printed, dialect))) return { ...plain(printed, dialect), isRemarked: true };
  // A comma that does not split cells is a slip of the pen, or of a spreadsheet, for the decimal point.
  if (dialect.decimal === "comma" || dialect.delimiter === "comma") return null;
  const slipped = printed.replace(",", ".");
  return Number.isFinite(numberFromText(slipped))
    ? { ...plain(slipped, dialect), isRemarked: true, isSlipped: true }
    : null;
}

/** Half of one unit in the last place of a number, what rounding in print may hide. */
export function halfUnitOf(digits: string): number {
  const match = /^[+-]?\d*(?:\.(\d*))?(?:[ed]([+-]?\d+))?$/i.exec(digits);
  return match === null ? 0 : 0.5 * 10 ** (Number(match[2] ?? 0) - (match[1]?.length ?? 0));
}
