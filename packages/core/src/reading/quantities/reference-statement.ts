import { quote, ReadError } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";

/** A reference impedance that a line of text states, Ω, and the text. */
export interface ReferenceStatement {
  readonly ohms: number;
  readonly text: string;
  /** Whether it speaks of a reference, and not of an impedance that may be another */
  readonly isSure: boolean;
}

/** A remark speaks of anything, also of what the readings don't refer to. */
const IS_NOTE = /^\W*(?:note|remark|comment)s?\b/;
/** No line or analyser has an impedance below or beyond these, Ω; a number without a unit means something else then. */
const LEAST_OHMS = 5;
const GREATEST_OHMS = 2000;

/** A number of its own: not the 0 of "Z0". */
const NUMBER = "(?<![\\p{L}\\d]|\\d[.,])(\\d+(?:[.,]\\d+)?)";
const UNIT = "(k?) ?(?:ohms?\\b|r\\b)";
/** Between a name and its value: a few words or marks, but no other number. */
const BETWEEN = "[^\\d\\n]{0,24}?";

/**
 * Words for the impedance that readings are against, in the languages that headers are known in, without accents (from
 * memory but for English and German): Z0 and its like, the reference, the impedance of the system or of the line.
 */
const REFERENCE_WORDS = [
  "z[-_ ]?(?:0|o|ref|r|l|c|sys|nom|char)\\d?",
  "[rz] ?ref",
  "r0",
  "ref(?:erence|erenz)?\\.?(?: imp(?:edance|\\.)?| resistance)?",
  "reference",
  "(?:bezugs|wellen|referenz|system|nenn|leitungs)(?:widerstand|impedanz)\\w*",
  "imped\\w+ (?:de )?(?:\\w+ )?(?:ref\\w+|rif\\w+|caract\\w+|caratt\\w+|sist\\w+|syst\\w+|nomin\\w+)",
  "(?:system|characteristic|nominal|line|cable|port|source|measurement)(?: line)? imp(?:edance)?s?",
  "(?:referen\\w+|karakter\\w+|systeem\\w*|system\\w*|vertailu\\w*|odniesien\\w*|vztazn\\w*)[ -]?imped\\w+",
  "imped\\w+ (?:odniesienia|systemu|falowa|uzorka|sistema)",
  "referans ?empedans\\w*|karakteristik empedans\\w*",
  "(?:опорн|волнов)\\w+ (?:сопротивлен|импеданс)\\w*|(?:опорний|хвильовий) (?:опір|імпеданс)",
  "基準インピーダンス|特性インピーダンス|参考阻抗|特性阻抗|系统阻抗|기준 ?임피던스|특성 ?임피던스",
  "(?:συνθετη )?αντισταση αναφορασ|χαρακτηριστικη αντισταση",
]
  .map((pattern) => pattern.normalize("NFD").replace(/\p{M}/gu, ""))
  .join("|");
/** What a number of ohms is related to by. */
const RELATING =
  "(?:system\\w*|systeem|sistem\\w*|refer\\w* to|relative to|related to|against|normali[sz]ed (?:to|for|at)|normiert auf|bezogen auf|rapporte\\w* a|referid\\w+ a|riferit\\w+ a|t\\.?o\\.?v\\.?|mot|vs\\.?|re\\b|in a|@|at|fur|for)";

const PATTERNS: readonly { readonly pattern: RegExp; readonly isSure: boolean }[] = [
  {
    pattern: new RegExp(
      `(?:^|[^\\p{L}\\d])(?:${REFERENCE_WORDS})${BETWEEN}${NUMBER} ?(?:${UNIT})?(?!\\d|[.,]\\d|\\p{L}|%)`,
      "iu",
    ),
    isSure: true,
  },
  { pattern: new RegExp(`${RELATING} ${NUMBER} ?${UNIT}`, "iu"), isSure: true },
  {
    pattern: new RegExp(`${NUMBER}[ -]?${UNIT}[^\\d\\n]{0,12}(?:system|reference|ref\\b|sistem|systeem|bezug)`, "iu"),
    isSure: true,
  },
  {
    pattern: new RegExp(`v?swr[ _]*[(\\[]? ?(?:@|at|vs\\.?|re|z0 ?=|ref\\.?)? ?${NUMBER} ?(?:${UNIT}) ?[)\\]]?`, "iu"),
    isSure: true,
  },
  { pattern: /\bv?swr[ _(]{0,2}(25|75|100|200|300|450|600)()\b(?! *(?:m\b|points))/iu, isSure: true },
  {
    pattern: new RegExp(
      `^\\W*(?:impedance|impedanz|impedancia|impedenza|impedantie)s?\\W{1,4}${NUMBER} ?(?:${UNIT})?\\W*$`,
      "iu",
    ),
    isSure: true,
  },
  {
    pattern: new RegExp(
      `(?:impedance|impedanz|impedancia|impedenza|impedantie)s?${BETWEEN}${NUMBER} ?(?:${UNIT})?(?! ?dB)`,
      "iu",
    ),
    isSure: false,
  },
  { pattern: new RegExp(`\\(${NUMBER} ?${UNIT}\\)`, "iu"), isSure: false },
];

/** "Z₀ = 75 Ω" as "z0 = 75 ohm": no accents, no signs that are written in several ways. */
const plain = (text: string): string =>
  text
    .replace(/[Ωω\u2126]/gu, "ohm")
    .replace(/[\u2080-\u2089]/g, (digit) => String(digit.charCodeAt(0) - 0x2080))
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/ς/g, "σ")
    .toLowerCase();

const REFERENCE_NAME = new RegExp(`^(?:${REFERENCE_WORDS})\\W*(?:ohms?)?\\W*$`, "iu");

/** Whether a column's name says that it holds the reference impedance. */
export const isReferenceName = (name: string): boolean => REFERENCE_NAME.test(plain(name).trim());

/** The reference impedance that a line states; null where it states none. */
function referenceIn(text: string): ReferenceStatement | null {
  const line = plain(text);
  for (const { pattern, isSure } of PATTERNS) {
    const match = pattern.exec(line);
    if (match === null) continue;
    const ohms = Number((match[1] ?? "").replace(",", ".")) * (match[2] === "k" ? 1000 : 1);
    const isStated = isSure && !IS_NOTE.test(line);
    const isInOhms = isStated && match[2] !== undefined;
    if (isInOhms ? ohms > 0 : ohms >= LEAST_OHMS && ohms <= GREATEST_OHMS) return { ohms, text, isSure: isStated };
  }
  return null;
}

/** That a statement was used. */
export const referenceRead = ({ text, ohms }: ReferenceStatement): Finding =>
  finding("info", "reference-read", { text: quote(text.trim()), ohms });

/**
 * What several texts say of the reference impedance.
 *
 * @returns the first sure statement, or else the first that may be one; null for none
 * @throws ReadError `ambiguous` where two sure ones differ
 */
export function referenceOf(texts: readonly string[], file: string): ReferenceStatement | null {
  const found = texts.map(referenceIn).filter((statement) => statement !== null);
  const sure = found.filter(({ isSure }) => isSure);
  const [first] = sure;
  if (first === undefined) return found[0] ?? null;
  const other = sure.find(({ ohms }) => ohms !== first.ohms);
  if (other === undefined) return first;
  throw new ReadError({
    code: "ambiguous",
    file,
    found: `two reference impedances are stated, ${quote(first.text)} and ${quote(other.text)}`,
    remedy: "Say which one the readings refer to, such as --reference-ohms 50.",
  });
}
