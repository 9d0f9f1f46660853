import { type ColumnRole, isReading } from "../options/column-role.js";
import type { FrequencyUnit } from "../options/units.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { TextLines } from "../text/text-lines.js";
import { COMMENT_MARK } from "./cells.js";
import { frequencyUnitIn } from "./frequency-statement.js";

/** The lines above the numbers, the header left out, and what they say of the columns. */
export interface Preamble {
  readonly comments: readonly string[];
  readonly frequencyUnit: FrequencyUnit | null;
  /** What the columns of readings hold, one or two; null where nothing says it */
  readonly readings: readonly ColumnRole[] | null;
}

/** @param header index of the header's line, -1 for none */
export function preambleOf(lines: TextLines, end: number, header: number): Preamble {
  const comments = commentsAbove(lines, end, header);
  const readings = namesOfReadings(comments)?.map((name) => roleFromHeader(name)) ?? null;
  return { comments, frequencyUnit: frequencyUnitIn(comments), readings };
}

const MOST_COMMENTS = 200;
const LONGEST_COMMENT = 2000;

/** The lines above the numbers without their comment marks, the header left out. */
export function commentsAbove(lines: TextLines, end: number, header: number): readonly string[] {
  return lines
    .texts(0, Math.min(end, MOST_COMMENTS))
    .filter((_, line) => line !== header)
    .map((line) =>
      line
        .slice(0, LONGEST_COMMENT)
        .replace(COMMENT_MARK, "")
        .replace(/^[\s"']+/, "")
        .replace(/[,;"\s]+$/, ""),
    )
    .filter((line) => line !== "");
}

/** What begins a line that says what was measured, in which form, and in which unit. */
const STATEMENTS = {
  subject:
    /^(?:parameter|quantity|measure[dm]\w*(?: (?:parameter|quantity|value))?|trace|readings?|values?|messgr\S+|grandeur|magnitud medida)(?:\s*[:=,;]\s*|\s+(?:is\s+)?)(.+)$/i,
  format:
    /^(?:data )?(?:format|form|display|presentation|representation|darstellung)(?:\s*[:=,;]\s*|\s+(?:is\s+)?)(.+)$/i,
  unit: /^(?:(?:data|y axis|y|value|reading)s? )?units?(?! of (?:the )?freq)(?: of (?:the )?(?:readings?|values?|data))?(?:\s*[:=,;]\s*|\s+(?:is\s+)?)(.+)$/i,
} as const;
const REAL_AND_IMAGINARY =
  /\breal\b.*\bimag|\bre\b.*\bim\b|\br ?[+,/&-] ?j ?x\b|\br (?:and|&) x\b|\bcomplex\b|\brectangular\b|\bcartesian\b/i;
const SIZE_AND_ANGLE = /(?:mag\w*|db|abs\w*|amplitude|size).*(?:angle|phase|deg)|\bpolar\b/i;

/**
 * What the columns of readings hold, as lines of the preamble say it in words for what was measured, in which form and in which
 * unit: "parameter: S11" with "format: real and imaginary", "unit of readings: SWR", "form, R + jX".
 *
 * @returns names of one column or two; null where the preamble does not say enough
 */
function namesOfReadings(comments: readonly string[]): readonly string[] | null {
  const said = (pattern: RegExp) => comments.map((comment) => pattern.exec(comment.trim())?.[1]).find(Boolean) ?? null;
  const subject = said(STATEMENTS.subject);
  const format = said(STATEMENTS.format);
  const unit = said(STATEMENTS.unit);
  if (subject === null && format === null && unit === null) return null;
  const form = `${format ?? ""} ${subject ?? ""}`;
  const what = subject === null ? "" : subject.replace(REAL_AND_IMAGINARY, "").replace(SIZE_AND_ANGLE, "").trim();
  const inUnit = unit === null ? "" : ` (${unit})`;
  if (REAL_AND_IMAGINARY.test(form)) {
    const isImpedance = /\br\b.*x\b/i.test(form) || roleFromHeader(what).quantity === "impedance-magnitude";
    return isImpedance ? ["R", "X"].map((part) => part + inUnit) : [`re(${what || "S11"})`, `im(${what || "S11"})`];
  }
  if (SIZE_AND_ANGLE.test(form)) {
    const isDecibel = /\bdb\b|\blog/i.test(form) || /\bdb\b/i.test(unit ?? "");
    return [isDecibel ? `${what || "S11"} (dB)` : `mag(${what || "S11"})`, `angle(${what || "S11"})`];
  }
  const names = [
    `${what} ${format ?? ""}${inUnit}`,
    `${what}${inUnit}`,
    `${what} ${format ?? ""}`,
    format ?? "",
    unit ?? "",
  ];
  const name = [...names, `S11 ${unit ?? ""}`].find((candidate) => {
    const role = roleFromHeader(candidate);
    return isReading(role) && !role.isAssumed;
  });
  return name === undefined ? null : [name];
}
