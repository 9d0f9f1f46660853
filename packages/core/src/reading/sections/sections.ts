import { BAND_WORD } from "../notes/note-words.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import { rewritten, type SourceText } from "../text/text.js";

/** A part of a text under a title, with what stands above and below all of them; its lines stand where they do in the whole. */
export interface Section {
  readonly title: string;
  readonly text: SourceText;
  /** Nothing but what stands below tells that it is a title */
  readonly isBare: boolean;
}

const COMMENT = /^(?:[#%!;*]|\/\/)\s*([^#%!;*]+?)$/;
/** What must stand below a title: names of columns, or, with nothing above it, rows. */
type Below = "header" | "rows" | null;

/** How titles are set off, the surest first; a comment is one only by what stands around it. */
const TITLES: readonly {
  readonly is: RegExp;
  readonly needs: Below;
  readonly isNamed?: boolean;
  readonly isBare?: boolean;
}[] = [
  {
    is: /^[^\p{L}]*(?:antennas?|aerial|antennen?|antennes?|antenna|antenă|antén[ay]|antenni|anten|antenn|antena|антенн?а|κεραία|アンテナ|天线|天線|안테나|trace|series|wire|draht|deployment)\s*[:=：]\s*(\S.*)$/iu,
    needs: null,
    isNamed: true,
  },
  { is: /^\[\s*([^[\]]+?)\s*\]$/, needs: null },
  { is: /^(?:={2,}|-{2,}|\*{2,}|_{2,}|~{2,}|>{2,}|\+{2,})\s*([^=*_~>+|]+?)\s*(?:[=*_~<+-]{2,})?$/, needs: null },
  { is: /^#{2,6}\s+([^#]+?)\s*#*$/, needs: null },
  { is: /^["']?([^:"']+)["']?:$/, needs: null },
  { is: COMMENT, needs: "header" },
  { is: COMMENT, needs: "rows" },
  { is: /^([^:]+)$/, needs: "header", isBare: true },
];

/** A title has few words and no number but that of an antenna, a height or a try; it states nothing. */
const LONGEST_TITLE = 40;
const MOST_WORDS = 6;
const IS_TITLE = /^(?=.*\p{L}{2})[^=,;\t|{}<>:"]+$/u;
const STATES = /\d ?(?:ohms?|Ω|[kmg]?hz|dB|W)(?!\p{L})/iu;
/** What is no sweep, or names none (from memory). */
const NO_SERIES =
  /^(?:.*(?:limit|marker|calib|setting|config|spec|mask|target|general|header|remark|summary|result|information|meta|option|measurement|comment|range|segment|half$|part|page|seite|sheet|block|continu)|(?:data|info|notes?|points?|sweeps?|readings?|values?|table|end(?!-fed)|begin)(?!\p{L}))/iu;
const IS_BAND = new RegExp(
  `^(?:${BAND_WORD}|\\d+(?:[.,]\\d+)? ?[kmg]hz|band \\S+)(?: band)?$|\\bbands?$|^(?:low|high|lower|upper|[hvu]hf)(?: bands?)?$`,
  "iu",
);

const MOST_TITLES = 20;
const FEWEST_LINES = 2;
/** Lines below a title in which the names of columns are looked for. */
const HEADER_REACH = 3;
/** Longer texts are not looked through. */
const MOST_BYTES = 4_000_000;

/** Whether a line holds numbers. */
const holdsNumbers = (line: string): boolean => /\d[^\d]+\d/.test(line.replace(/(?<=\d)\.(?=\d)/g, ""));

/** Whether a line begins with a number, and holds another. */
const isRow = (line: string): boolean => /^[^\p{L}]*\d/u.test(line) && holdsNumbers(line);

/** The sections of a text, each with a title of its own; null where it has none, or where the titles are those of bands. */
export function sectionsOf(source: SourceText): readonly Section[] | null {
  if (source.bytes.length > MOST_BYTES) return null;
  const lines = source.decode(0, source.bytes.length).split(/\r\n|\n|\r/);
  for (const { is, needs, isNamed = false, isBare = false } of TITLES) {
    const starts = lines.flatMap((line, index) => {
      const title = titleIn(line, is);
      return title === null || !standsAbove(needs, lines, index) ? [] : [{ title, index }];
    });
    const sections = starts.filter(({ index }, s) => {
      const end = starts[s + 1]?.index ?? lines.length;
      return lines.slice(index + 1, end).filter(holdsNumbers).length >= FEWEST_LINES;
    });
    const [first] = sections;
    const names = sections.map(({ title }) => title);
    if (first === undefined || sections.length < 2 || sections.length > MOST_TITLES) continue;
    // What one title leaves open would go to the section above it.
    if (new Set(names).size < names.length || !names.every(isNamed ? isNoBand : namesSeries)) continue;
    // Rows that stand above the first title belong to no section.
    const above = lines.slice(0, first.index);
    if (above.filter(isRow).length > 1 || (isBare && above.some((line) => BAND_AND_SWR.test(line)))) continue;
    return sections.map(({ title }, s) => ({
      title,
      text: rewritten(source, within(lines, sections, s).join("\n")),
      isBare,
    }));
  }
  return null;
}

/** What stands in a line that is set off as titles are; null for any other. */
function titleIn(line: string, pattern: RegExp): string | null {
  if (line.length > 2 * LONGEST_TITLE) return null;
  const title = pattern.exec(line.trim())?.[1]?.trim() ?? "";
  return title.length <= LONGEST_TITLE && /\p{L}{2}/u.test(title) ? title : null;
}

/** "17m SWR 1.7" */
const BAND_AND_SWR = /^\W*\d{1,3} ?c?m[\s:,=-].*\d/i;

const isNoBand = (title: string): boolean => !IS_BAND.test(title);

/** Whether a title may name an antenna, or an occasion. */
const namesSeries = (title: string): boolean =>
  IS_TITLE.test(title) &&
  title.split(/\s+/).length <= MOST_WORDS &&
  !STATES.test(title) &&
  !NO_SERIES.test(title) &&
  !IS_BAND.test(title) &&
  (roleFromHeader(title).quantity === "other" || GROUND_PLANE.test(title));
/** No conductance in parallel. */
const GROUND_PLANE = /^gp$/i;

function standsAbove(needed: Below, lines: readonly string[], index: number): boolean {
  if (needed === "header") return isAboveHeader(lines, index);
  if (needed === null) return true;
  const isFirst = !lines.slice(0, index).some(isRow);
  return (isFirst || (lines[index - 1] ?? "").trim() === "") && isRow(lines[index + 1] ?? "");
}

/** Whether names of columns stand straight below a line, or a little further below one that stands by itself. */
function isAboveHeader(lines: readonly string[], index: number): boolean {
  const line = lines[index] ?? "";
  if (isRow(line) || isHeader(line)) return false;
  const isApart = (lines[index - 1] ?? "").trim() === "" || !lines.slice(0, index).some(isRow);
  const below = lines.slice(index + 1, index + 1 + 2 * HEADER_REACH).filter((other) => other.trim() !== "");
  return below.slice(0, isApart ? HEADER_REACH : 1).some(isHeader);
}

/** Whether a line names columns, or is a note that names its band. */
const isHeader = (line: string): boolean =>
  BAND_AND_SWR.test(line) ||
  (!isRow(line) && line.split(/[\s,;|#()[\]]+/).some((word) => roleFromHeader(word).quantity === "frequency"));

/** The lines of a section, and those above the first and below the numbers of the last; the others are blank. */
function within(lines: readonly string[], sections: readonly { readonly index: number }[], s: number): string[] {
  const start = sections[s]?.index ?? 0;
  const end = sections[s + 1]?.index ?? lines.length;
  const first = sections[0]?.index ?? 0;
  const last = lines.findLastIndex(holdsNumbers);
  return lines.map((line, i) => (i < first || i > last || (i > start && i < end) ? line : ""));
}
