import { type ColumnRole, isReading } from "../options/column-role.js";
import { type FrequencyUnit, frequencyUnitOf } from "../options/units.js";
import { wordsOf } from "../quantities/name-words.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { TextLines } from "../text/text-lines.js";
import { COMMENT_MARK } from "./cells.js";

const MOST_COMMENTS = 200;

/** The lines above the numbers without their comment marks, the header left out. */
export function preambleOf(lines: TextLines, end: number, header: number): readonly string[] {
  return lines
    .texts(0, Math.min(end, MOST_COMMENTS))
    .filter((_, line) => line !== header)
    .map((line) =>
      line
        .replace(COMMENT_MARK, "")
        .replace(/^[\s"']+/, "")
        .replace(/[,;"\s]+$/, ""),
    )
    .filter((line) => line !== "");
}

/** Words beside a frequency and its unit that state the one to be in the other. */
const STATING = /\b(?:units?|einheit|in|en|unite|unidad|unita|eenheid|enhet|enhed|are|is|all|axis)\b/;

/** The unit of frequency that a line of the preamble states: "frequency unit: MHz", "all frequencies in kHz". */
export function frequencyUnitIn(comments: readonly string[]): FrequencyUnit | null {
  for (const comment of comments) {
    const line = comment.replace(/\bx axis\b/i, "frequency");
    if (line.length > LONGEST_STATEMENT || /\d/.test(line)) continue;
    const words = wordsOf(line);
    const units = words.map(frequencyUnitOf).filter((unit) => unit !== null);
    const isOfFrequency = words.some(
      (word) => frequencyUnitOf(word) === null && roleFromHeader(word).quantity === "frequency",
    );
    if (units.length === 1 && isOfFrequency && STATING.test(words.join(" "))) return units[0] ?? null;
  }
  return null;
}

const LONGEST_STATEMENT = 80;
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

/**
 * What the columns hold where no header stands over them but the preamble says it.
 *
 * @returns null where the preamble does not say enough
 */
export function rolesFromPreamble(comments: readonly string[], columns: number): readonly ColumnRole[] | null {
  const frequencyUnit = frequencyUnitIn(comments);
  const names = namesOfReadings(comments);
  if (frequencyUnit === null || names === null || columns < names.length + 1) return null;
  const isSure = columns === names.length + 1 || names.length > 1;
  return isSure ? [{ quantity: "frequency", frequencyUnit }, ...names.map((name) => roleFromHeader(name))] : null;
}

/** Readings whose names do not say what they are take it from the preamble, where that says it. */
export function withPreambleRoles(roles: readonly ColumnRole[], comments: readonly string[]): readonly ColumnRole[] {
  // A letter may be a name of its own, and not that of half an admittance.
  const halves = roles.filter(({ quantity }) => quantity === "conductance" || quantity === "susceptance");
  const isSilent = (role: ColumnRole) =>
    role.quantity === "reflection" || role.quantity === "other" || (halves.length === 1 && halves.includes(role));
  if (roles.some((role) => isReading(role) && !isSilent(role))) return roles;
  const names = namesOfReadings(comments);
  const silent = roles.filter(isSilent);
  const bare = roles.filter(({ quantity }) => quantity === "reflection");
  const wanted = names?.length === bare.length ? bare : silent;
  if (names === null || names.length !== wanted.length) return roles;
  return roles.map((role) => (wanted.includes(role) ? roleFromHeader(names[wanted.indexOf(role)] ?? "") : role));
}

const COLUMN_WORD =
  "(?:column|col\\.?|field|spalte|colonne|columna|coluna|colonna|kolom|kolumn|kolonne|sarake|sloupec|kolumna|столбец|колонка|стовпець|oszlop|s[uü]tun|coloan[aă]|στήλη|列|第|열)";
const NUMBERED = new RegExp(`^${COLUMN_WORD}\\s*#?\\s*(\\d+)\\s*列?\\s*[:=.)–-]?\\s*(.+)$`, "iu");
/** An entry of a list: "1. frequency (MHz)" */
const ENTRY = /^(\d{1,2})[.)]\s+(\p{L}.*)$/u;
const LISTED =
  /^(?:columns?|cols|fields?|spalten|colonnes|columnas|colunas|colonne|kolommen|header|order(?: of columns)?)\s*[:=]\s*(.+)$/iu;

/** "The rows hold the frequency in MHz and R and X in ohm": the names in a line that begins them with the frequency. */
function namesInSentence(comment: string): readonly string[] {
  const [, unit, rest = ""] = /\bfreq\w*\.? in ([kmg]?hz),? (?:and )?(.+?)(?:,? without.*|[.;])?$/i.exec(comment) ?? [];
  if (unit === undefined) return [];
  const readings = rest.split(/\s*,\s*|\s+and\s+/).map((name) => name.replace(/^the\s+/i, ""));
  return readings.every((name) => isReading(roleFromHeader(name))) ? [`frequency (${unit})`, ...readings] : [];
}

/** The names in a list; commas and bars may stand within them where something else parts them. */
function listedNames(list: string): readonly string[] {
  const mark = [";", "\t", ",", "|"].find((candidate) => list.includes(candidate));
  return mark === undefined ? [] : list.split(mark).map((name) => name.trim());
}

/** The names of the columns where the preamble lists them: "column 1: frequency in MHz" and so on, or "columns: f, R, X". */
export function namesFromPreamble(comments: readonly string[], columns: number): readonly string[] | null {
  const numbered = comments
    .map((comment) => NUMBERED.exec(comment) ?? ENTRY.exec(comment))
    .filter((match) => match !== null);
  const names = numbered.map(([, , name = ""]) => name);
  const listed = comments.map((comment) => LISTED.exec(comment)?.[1]).find((list) => list !== undefined);
  const sentence = comments.map(namesInSentence).find((told) => told.length === columns);
  if (sentence !== undefined) return sentence;
  const found = numbered.length === columns ? names : listedNames(listed ?? "");
  const roles = found.map((name) => roleFromHeader(name));
  const isHeader = roles.some(({ quantity }) => quantity === "frequency") && roles.some(isReading);
  return found.length === columns && isHeader ? found : null;
}
