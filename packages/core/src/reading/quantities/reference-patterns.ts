import { once } from "../../numbers/once.js";

/** A number of its own: not the 0 of "Z0". */
const NUMBER = "(?<![\\p{Script=Latin}\\p{Script=Cyrillic}\\p{Script=Greek}\\d]|\\d[.,])(\\d+(?:[.,]\\d+)?)";
const UNIT = "(k?) ?(?:ohms?\\b|r\\b)";
/** Between a name and its value: a few words or marks, but no other number. */
const BETWEEN = "[^\\d\\n]{0,24}?";

/**
 * Words for the impedance that readings are against, in the languages that headers are known in, without accents (from
 * memory but for English and German): Z0 and its like, the reference, the impedance of the system or of the line.
 */
export const referenceWords = once(() =>
  [
    "z[-_ ]?(?:0|o|ref|r|c|sys|nom|char)\\d?",
    "[rz] ?ref",
    "r0",
    "(?:system|ref(?:erence)?)[_ ](?:ohms?|z|r)",
    "ref(?:erence|erenz)?\\.? (?:imp(?:edance|\\.)?|resistance)",
    "(?:bezugs|wellen|referenz|system|nenn|leitungs)(?:widerstand|impedanz)\\w*",
    "imped\\w+ (?:de )?(?:\\w+ )?(?:ref\\w+|rif\\w+|charakt\\w+|caract\\w+|caratt\\w+|sist\\w+|syst\\w+|nomin\\w+)",
    "(?:system|characteristic|nominal|line|cable|port|source|measurement)(?: line)? imp(?:edance)?s?",
    "(?:refer[ae]n\\w+|karakter\\w+|systeem\\w*|system\\w*|vertailu\\w*|odniesien\\w*|vztazn\\w*)[ -]?imp[ae]d\\w+",
    "imped\\w+ (?:odniesienia|systemu|falowa|uzorka|sistema)",
    "referans ?empedans\\w*|karakteristik empedans\\w*",
    "(?:опорн|волнов)\\p{L}+ (?:сопротивлен|импеданс)\\p{L}*|(?:опорн|хвильов)\\p{L}+ (?:опір|імпеданс)|(?:сопротивлен|импеданс)\\p{L}* (?:системы|нагрузки|линии|отсчета)",
    "基準インピーダンス|特性インピーダンス|参考阻抗|參考阻抗|特性阻抗|系统阻抗|系統阻抗|기준 ?임피던스|특성 ?임피던스",
    "(?:συνθετη )?(?:αντισταση|εμπεδηση) αναφορασ|χαρακτηριστικη (?:συνθετη )?(?:αντισταση|εμπεδηση)",
  ]
    .map((pattern) => pattern.normalize("NFD").replace(/\p{M}/gu, ""))
    .join("|"),
);
/** What says that something is referred to, be it an impedance, a place, a date or another sweep. */
export const REFERENCE_ALONE = "ref(?:erence|erenz|erencia|erentie|erens|erencja)?\\.?";
/** The same before a number without a unit: nothing that may be what the number is of. */
const SHORT_BETWEEN = "(?:[^\\p{L}\\d\\n]|(?:is|was|of|ist|war|est|era|ohms?)(?!\\p{L})){0,12}?";
/** Behind a number without a unit: no other unit, nor what makes it a date, a time or a part of something else. */
const NO_OTHER_UNIT =
  "(?![\\d%°/]|[.,:-]\\d| ?(?!(?:from|since|below|above|here|now|onwards?|ab|hier|jetzt|seit)(?!\\p{L}))\\p{L})";

/** What has an impedance of its own that readings do not refer to. */
export const otherThings = once(
  () =>
    /(?<!\p{L})(?:zline|koax\p{L}*|voedings\p{L}*|kippenladder|jumpers?|pigtails?|rg-?\d+\p{L}*|rg-\p{L}+|open-wire|z_?cable|z_?ant|zl|coax\p{L}*|(?:open ?wire|transmission|trans)? ?lines?|feed(?:er|line)?s?|feedpoint|cables?|(?:twin|ladder|window|ribbon|huhnerleiter|zweidraht|paralleldraht)\p{L}*|leads?|sections?|stubs?|baluns?|ununs?|chokes?|transformers?|loads?|resistors?|terminat\p{L}+|dipoles?|antennas?|aerials?|\p{L}*(?:kabel|kabl|leitung|antenn)\p{L}*|lignes?|lineas?|linie|linha|linje|lijn|cavo|cabos?|kabelu|hat|кабел\p{L}*|фидер\p{L}*|лини\p{L}+|лінії|антенн?\p{L}*|线|線|ケーブル|电缆|電纜|天线|アンテナ|kablo|кабель|кабеля)(?!\p{L})/u,
);

/** What a number of ohms is related to by. */
const RELATING =
  "(?:vztaz\\w* k|wzgledem|odniesien\\p{L}* do|i forhold til|relativ\\w*(?: to| til| a)?|ten opzichte van|respecto a|par rapport a|con respecto a|rispetto a|em relacao a|ωσ προσ|in relazione a|in bezug auf|suhteessa|viszonyitva|raportat la|σε σχεση με|относительно|відносно|относительно к|normali[sz]ing impedance|calibrated (?:to|for)|base impedance|system\\w*(?: of)?|systeem|sistem\\w*|refer\\w* to|relative to|related to|against|normali[sz]ed (?:to|for|at)|divided by|multiples of|normiert auf|bezogen auf|rapporte\\w* a|referid\\w+ a|riferit\\w+ a|t\\.?o\\.?v\\.?|mot|vs\\.?|re\\b|in a|@|at|fur|for)";

/** The same in words that say so much that it may be that of a line. */
const REFERRING =
  "(?:v?swr (?:on|in|along)|refer\\w* to|relative to|against|(?:worked out|calculated|computed|reckoned|meant|valid) for|normali[sz]ed (?:to|for)|normiert auf|bezogen auf|rapporte\\w* a|referid\\w+ a|riferit\\w+ a|ten opzichte van)";

/** The least reference that anybody divides by, Ω. */
export const LEAST_OHMS = 25;

interface StatementPattern {
  /** What no line that fits lacks, in letters that take no time to look for: without it the pattern is not made */
  readonly needs: RegExp;
  readonly pattern: () => RegExp;
  readonly isSure: boolean;
  /** It says that readings are referred to it, whatever has that impedance */
  readonly isRelated?: boolean;
}

const made = (source: () => string) => once(() => new RegExp(source(), "iu"));

/** A number of ohms, in a line as {@link plainStatement} leaves it. */
const OHMS = /ohm|\d ?k? ?r\b/;
/** Of each of the {@link referenceWords} one part; other alphabets have none. */
export const REFERENCE_STEM = /(?<!h)z|ref|r0|system|widerst|imp|emped|[^\0-\x7f]/;

/** Patterns take longer to make than a sweep to read: only those are made that a line may fit. */
const PATTERNS: readonly StatementPattern[] = [
  // The commonest by far, before those that take long to make.
  {
    needs: /^\W*(?:reference imp|z[0o])/,
    pattern: () => /^\W*(?:reference impedance|z[0o])(?:[\s:=,;()]|ohms?){1,12}(\d+(?:[.,]\d+)?) ?(k?)(?:ohms?)?\W*$/,
    isSure: true,
    isRelated: true,
  },
  {
    needs: OHMS,
    pattern: made(
      () => `${REFERRING} (?:the |an? |der |die |das |den |dem |la |le |el |il |de |het )?${NUMBER} ?${UNIT}`,
    ),
    isSure: true,
    isRelated: true,
  },
  // "line: 75 ohm twin-lead, all values against it"
  {
    needs: /against/,
    pattern: made(
      () =>
        `${NUMBER} ?${UNIT}[^\\d\\n]{0,30}[,;:] ?(?:all |the )?(?:readings?|values?|numbers?|data|everything|v?swr)(?: are| is)? (?:against|relative to|referred to|for) (?:it|that)(?!\\p{L})`,
    ),
    isSure: true,
    isRelated: true,
  },
  // "Last week 50 ohm was set; this sweep: 100 ohm"
  {
    needs: OHMS,
    pattern: made(
      () =>
        `(?:this|these) (?:sweeps?|readings?|data|table|file|measurements?)[\\s:=]*(?:is|are|was|were|at|in|with|against)?[\\s:=]*${NUMBER} ?${UNIT}`,
    ),
    isSure: true,
    isRelated: true,
  },
  // "R/75"
  { needs: /\//, pattern: () => /^\W*[rxz] ?\/ ?((?:2[5-9]|[3-9]\d|[1-9]\d\d)(?:[.,]\d+)?)()\W*$/, isSure: true },
  {
    needs: REFERENCE_STEM,
    pattern: made(
      () =>
        `(?:^|[^\\p{L}\\d])(?:${referenceWords()})(?:${BETWEEN}${NUMBER} ?${UNIT}(?!\\p{L})|${SHORT_BETWEEN}${NUMBER}()${NO_OTHER_UNIT})`,
    ),
    isSure: true,
  },
  {
    needs: /ref/,
    pattern: made(
      () =>
        `(?:^|[^\\p{L}\\d])${REFERENCE_ALONE}(?:${BETWEEN}${NUMBER} ?${UNIT}(?!\\p{L})|(?:[\\s:=;,_()[\\]]|ohms?){1,12}${NUMBER}()\\W*$)`,
    ),
    isSure: true,
  },
  { needs: OHMS, pattern: made(() => `(?:${RELATING} |@)${NUMBER} ?${UNIT}`), isSure: true },
  // "Z0 changed from 50 to 75 ohm"
  {
    needs: OHMS,
    pattern: made(
      () =>
        `(?:^|[^\\p{L}\\d])(?:${referenceWords()}|${REFERENCE_ALONE})${BETWEEN}\\d+[^\\d\\n]{0,12}?${NUMBER} ?${UNIT}`,
    ),
    isSure: false,
  },
  // Chinese, without blanks: "taking 75 ohms as the base".
  { needs: OHMS, pattern: () => /(?:以|相对于|基于) ?(\d+(?:[.,]\d+)?) ?(k?) ?ohm/iu, isSure: true },
  {
    needs: OHMS,
    pattern: made(
      () =>
        `${NUMBER}[ -]?${UNIT}[^\\d\\n]{0,12}(?:gore|vonatkoz|基準|基准|기준|nazaren|base|baz|system|reference|ref\\b|sistem|systeem|bezug)`,
    ),
    isSure: true,
  },
  {
    needs: OHMS,
    pattern: made(() => `v?swr[ _,]*[(\\[]? ?(?:@|at|in|vs\\.?|re|z0 ?=|ref\\.?)? ?${NUMBER} ?(?:${UNIT}) ?[)\\]]?`),
    isSure: true,
  },
  {
    needs: /swr/,
    pattern: () => /\bv?swr(?: ?[([] ?)?([2-9]\d|[1-9]\d\d)()(?!\d| *(?:\p{L}|%))/iu,
    isSure: true,
  },
  {
    needs: /swr/,
    pattern: () => /\bv?swr[ _(@-]{0,2}(25|75|100|200|300|450|600)()\b(?! *(?:\p{L}|%))/iu,
    isSure: true,
  },
  { needs: /swr/, pattern: () => /\bv?swr_?([2-9]\d|[1-9]\d\d) ?(?:ohms?|r)\b()/iu, isSure: true },
  // "SWR (x:1) [112 ohm]"
  {
    needs: OHMS,
    pattern: made(
      () => `(?:s11|v?swr|r\\.?l\\.?|return[ _-]?loss)(?!\\p{L})[^\\n]{0,20}[([]\\s*${NUMBER} ?${UNIT}\\s*[)\\]]\\s*$`,
    ),
    isSure: true,
  },
  // "S11 (dB, 450 ohm)"
  {
    needs: OHMS,
    pattern: made(
      () =>
        `(?:s11|v?swr|r\\.?l\\.?|return[ _-]?loss|gamma|rho)(?!\\p{L})[^()\\d]*\\([^()\\d]*[,;] ?${NUMBER} ?${UNIT}\\)`,
    ),
    isSure: true,
  },
  // "S11 real in 75 ohm"
  {
    needs: OHMS,
    pattern: made(
      () =>
        `^\\W*(?:\\p{L}{1,9}\\W+)?(?:s11|v?swr|r\\.?l\\.?|return[ _-]?loss|gamma|rho)(?!\\p{L})[^\\d,;]{0,20} in ${NUMBER} ?${UNIT}\\W*$`,
    ),
    isSure: true,
  },
  // "VSWR_60", which may be the name of an antenna
  { needs: /swr/, pattern: () => /\bv?swr[ _-]?([2-9]\d|[1-9]\d\d)()(?![\d.,]|[ _-]*\p{L})/iu, isSure: false },
  // "RL@75 dB"
  {
    needs: /@/,
    pattern: () => /(?<!\p{L})(?:rl|return[ _-]?loss|s11)[ _]*@[ _]*(25|75|100|200|300|450|600)()(?!\d| *[kmg]?hz)/iu,
    isSure: true,
  },
  {
    needs: /imped/,
    pattern: made(
      () => `^\\W*(?:impedance|impedanz|impedancia|impedenza|impedantie)s?\\W{1,4}${NUMBER} ?(?:${UNIT})?\\W*$`,
    ),
    isSure: true,
  },
  {
    needs: /imped/,
    pattern: made(
      () => `(?:impedance|impedanz|impedancia|impedenza|impedantie)s?${BETWEEN}${NUMBER} ?(?:${UNIT})?(?! ?dB)`,
    ),
    isSure: false,
  },
  { needs: OHMS, pattern: made(() => `\\(${NUMBER} ?${UNIT}\\)`), isSure: false },
  // A line of a few words and a number of ohms may mean the reference, unless it speaks of something that has as many.
  {
    needs: OHMS,
    pattern: made(
      () =>
        `^(?!.*(?:line|coax|ribbon|cable|feed|twin|ladder|choke|resist|load|transform|terminat|balun|unun))[^\\d]{0,40}${NUMBER} ?${UNIT}[^\\d]{0,40}$`,
    ),
    isSure: false,
  },
];

/** The patterns that a line may fit, as {@link plainStatement} leaves it. */
export const patternsFor = (line: string): readonly StatementPattern[] =>
  PATTERNS.filter(({ needs }) => needs.test(line));
