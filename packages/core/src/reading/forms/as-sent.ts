import { withoutEntities } from "./entities.js";

/** Octets as mails write them (RFC 2045, section 6.7). */
const OCTET = /=([\dA-F]{2})/g;
const IS_QUOTED_PRINTABLE = /=(?:3D|20\r?\n|C[23]=[89AB]|E2=)/;
/** Marks of what is quoted, before each of its lines; a bar is one where no other follows. */
const QUOTE = /^[ \t]*(?:(?:>[ \t]?)+|\|(?![^\n]*\|))/gm;
/** What a forum shows in another dress: "[b]40m[/b]". */
const DRESS = /\[\/?(?:b|i|u|s|code|pre|size|color|font|center|list|\*)(?:=[^\]\n]{0,40})?\]/gi;
const QUOTED_POST = /\[quote[^\]\n]{0,60}\][^[]{0,2000}\[\/quote\]/gi;
/** A cell as a spreadsheet keeps it from being taken for a number: ="7.05". */
const FORMULA = /(^|[,;\t])="([^"\n]*)"(?=[,;\t\r\n]|$)/gm;

/** A text as it was before a mail, a forum or a spreadsheet dressed it; null where none did. */
export function asSent(content: string): string | null {
  const decoded = IS_QUOTED_PRINTABLE.test(content) ? octetsDecoded(content) : content;
  const bare = withoutEntities(decoded.replace(QUOTED_POST, "").replace(DRESS, ""))
    .replace(QUOTE, "")
    .replace(FORMULA, "$1$2");
  return withoutMargins(bare) ?? (bare === content ? null : bare);
}

/** Rows of a sheet without the letters of its columns and the numbers of its rows; null for anything else. */
function withoutMargins(content: string): string | null {
  const [letters = "", ...rows] = content.split(/\r\n|\n|\r/).filter((line) => line.trim() !== "");
  const areNumbered = rows.every((row, i) => row.startsWith(`${i + 1},`) || /^\d+[;\t]/.test(row));
  if (!/^[,;\t]A[,;\t]B(?:[,;\t][C-Z])*\s*$/.test(letters) || !areNumbered) return null;
  return rows.map((row) => row.replace(/^\d+[,;\t]/, "").replace(/[,;\t]+$/, "")).join("\n");
}

function octetsDecoded(content: string): string {
  const octets = content.replace(/=\r?\n/g, "").replace(OCTET, (_, digits: string) => `%${digits}`);
  try {
    return decodeURIComponent(octets.replace(/%(?![\dA-F]{2})/g, "%25"));
  } catch {
    return content;
  }
}
