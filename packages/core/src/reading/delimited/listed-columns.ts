import { isReading } from "../options/column-role.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { TextLines } from "../text/text-lines.js";
import { type Header, rolesOf } from "./heading-line.js";
import { commentsAbove } from "./preamble.js";
import type { Dialect } from "./table-text.js";

const COLUMN_WORD =
  "(?:column|col\\.?|field|spalte|colonne|columna|coluna|colonna|kolom|kolumn|kolonne|sarake|sloupec|kolumna|столбец|колонка|стовпець|oszlop|s[uü]tun|coloan[aă]|στήλη|列|第|열)";
const NUMBERED = new RegExp(`^${COLUMN_WORD}\\s*#?\\s*(\\d+)\\s*列?\\s*[:=.)–-]?\\s*(.+)$`, "iu");
/** An entry of a list: "1. frequency (MHz)" */
const ENTRY = /^(\d{1,2})[.)]\s+(\p{L}.*)$/u;
const LISTED =
  /^(?:columns?|cols|fields?|spalten|colonnes|columnas|colunas|colonne|kolommen|header|order(?: of (?:the )?(?:columns|numbers|values))?)(?:\s*[:=]\s*|\s+(?:are|is|sind|sont|son|sono)\s+)(.+)$/iu;

/** "The rows hold the frequency in MHz and R and X in ohm": the names in a line that begins them with the frequency. */
function namesInSentence(comment: string): readonly string[] {
  const [, unit, rest = ""] = /\bfreq\w*\.? in ([kmg]?hz),? (?:and )?(.+?)(?:,? without.*|[.;])?$/i.exec(comment) ?? [];
  if (unit === undefined) return [];
  const readings = rest.split(/\s*,\s*|\s+and\s+/).map((name) => name.replace(/^the\s+/i, ""));
  return readings.every((name) => isReading(roleFromHeader(name))) ? [`frequency (${unit})`, ...readings] : [];
}

/** The names in a list of so many; commas and bars may stand within them where something else parts them. */
function listedNames(list: string, count: number): readonly string[] {
  const splits = [";", "\t", ",", " / ", " - ", " – ", "|"].map((mark) => list.split(mark).map((name) => name.trim()));
  return splits.find(({ length }) => length === count) ?? splits.find(({ length }) => length > 1) ?? [];
}

/** The columns that the preamble lists: "column 1: frequency in MHz" and so on, or "columns: f, R, X"; null where it does not. */
export function listedColumns(lines: TextLines, { firstDataLine, columns }: Dialect, port: number): Header | null {
  const names = namesIn(commentsAbove(lines, firstDataLine, -1), columns);
  return names === null ? null : { names, roles: rolesOf(names, port), lineIndex: -1, titles: [] };
}

/** The names that some lines list for so many columns; null where they do not. */
export function namesIn(comments: readonly string[], columns: number): readonly string[] | null {
  // Each form has a number, a colon or the frequency's unit in it.
  if (!comments.some((comment) => /[\d:=]|\bfreq\w*\.? in |^columns? /i.test(comment))) return null;
  const numbered = comments
    .map((comment) => NUMBERED.exec(comment) ?? ENTRY.exec(comment))
    .filter((match) => match !== null);
  const names = numbered.map(([, , name = ""]) => name);
  const listed = comments.map((comment) => LISTED.exec(comment)?.[1]).find((list) => list !== undefined);
  const sentence = comments.map(namesInSentence).find((told) => told.length === columns);
  if (sentence !== undefined) return sentence;
  const found = numbered.length === columns ? names : listedNames(listed ?? "", columns);
  const roles = found.map((name) => roleFromHeader(name));
  const isHeader = roles.some(({ quantity }) => quantity === "frequency") && roles.some(isReading);
  return found.length === columns && isHeader ? found : null;
}
