/** Of all lines so many are wrapped alike. */
const LEAST_SHARE = 0.8;

/** A longer line is none of these; patterns would take long to find that out. */
const LONGEST_LINE = 2000;

const SHORT_UNIT = /^(\s*\d+(?:[.,]\d+)?)\s*([MkG])(?=\s*[,;\t])/;

const IS_REMARK = /^\s*(?:[#%!]|\/\/)/;

/** How whole lines may be wrapped, begin with an empty cell or have their cells joined, and each line without that; "7.05M" means MHz. */
const WRAPPINGS: readonly { readonly is: RegExp; readonly bare: (line: string) => string }[] = [
  { is: /^\s*"[^"]*[,;\t][^"]*"\s*$/, bare: (line) => line.trim().slice(1, -1) },
  { is: /^\s*\(.*\)[,;]?\s*$/, bare: (line) => line.trim().replace(/^\(|\)[,;]?$/g, "") },
  { is: /^\s*[•◦▪‣·●○✓✔→»>]\s*\d/, bare: (line) => line.replace(/^\s*[•◦▪‣·●○✓✔→»>]\s*(?=\d)/, "") },
  {
    is: /^[^&]*&.*\\\\\s*(?:\\hline\s*)?$/,
    bare: (line) =>
      line
        .replace(/\s*\\\\\s*(?:\\hline\s*)?$/, "")
        .replace(/\s*(?<!\\)&\s*/g, "\t")
        .replace(/\\([_%&#])/g, "$1")
        .replace(/\$\\(Omega|Gamma)\$/g, (_, letter: string) => (letter === "Omega" ? "Ω" : "Γ")),
  },
  { is: /^\s*\d{1,3}M\d{1,6}\s*[,;\t\s]/, bare: (line) => line.replace(/^(\s*\d{1,3})M(?=\d)/, "$1.") },
  // Commas before decimals, and with a blank between the cells: "3,508, 1,17".
  { is: /^\s*\d+,\d+(?:,\s+[-−]?\d+,\d+)+\s*$/, bare: (line) => line.trim().replace(/,\s+/g, "\t") },
  { is: /^\s*\d{1,3}\)\s+\d/, bare: (line) => line.replace(/^(\s*\d{1,3})\)/, "$1") },
  { is: /^\s*\d\S*\s+\S+.*;\s*$/, bare: (line) => line.replace(/;\s*$/, "") },
  { is: /^\s*[-–—*+]\s+\d/, bare: (line) => line.replace(/^\s*[-–—*+]\s+(?=\d)/, "") },
  { is: /^\s*[|!].*(?:\|\||!!)/, bare: (line) => line.replace(/^\s*[|!]\s*/, "").replace(/\s*(?:\|\||!!)\s*/g, "\t") },
  { is: /^\s*\S+ +\S+.*\s\|(?:\s+\S+ +\S|\s*$)/, bare: (line) => line.trim().replace(/\s*\|\s*| {2,}/g, "\t") },
  { is: /^\s*'[^']*'(?:\s*[,;\t]\s*'[^']*')+\s*$/, bare: (line) => line.replace(/'/g, '"') },
  { is: /^\s*'[\d+-]/, bare: (line) => line.replace(/(^|[;,\t])\s*'(?=[\d+-])/g, "$1") },
  { is: /^\s*\S.*?\s(?:->|=>|→)\s/, bare: (line) => line.replace(/\s+(?:->|=>|→)\s+/g, "\t") },
  { is: /^[;,\t]\s*[^;,\t\s]/, bare: (line) => line.slice(1) },
  { is: SHORT_UNIT, bare: (line) => line.replace(SHORT_UNIT, "$1 $2Hz") },
  { is: /^\s*[^:]*\S\s?:\s+\S[^:]*$/, bare: (line) => line.replace(/\s?:\s+/, "\t") },
  { is: /^[^~]*[^~\s]~[^~\s][^~]*(?:~[^~]*)*$/, bare: (line) => line.replaceAll("~", "\t") },
];

/** Lines of a table that frame its rows and hold none: "{|", "|-". */
const IS_FRAME = /^\s*(?:\{\||\|[-}]|\\(?:begin|end|hline|toprule|midrule|bottomrule))/;

/** The text without quotes or brackets around its lines or cells, or with blanks for the arrows between these; null for any other. */
export function withoutWrapping(content: string): string | null {
  const lines = content.split(/\r\n|\n|\r/);
  const rows = lines.filter((line) => /\d/.test(line) && !IS_REMARK.test(line));
  for (const { is, bare } of WRAPPINGS) {
    const isWrapped = (line: string) => line.length <= LONGEST_LINE && is.test(line);
    const wrapped = rows.filter(isWrapped).length;
    if (rows.length < 2 || wrapped < LEAST_SHARE * rows.length) continue;
    return lines
      .filter((line) => !IS_FRAME.test(line))
      .map((line) => (isWrapped(line) ? bare(line) : line))
      .join("\n");
  }
  return null;
}

/** The text with whole numbers where rows have only the decimals of their first one: 10.100, .110, .120; null for any other. */
export function withWholeNumbers(content: string): string | null {
  let whole = "";
  let isAny = false;
  const lines = content.split(/\r\n|\n|\r/).map((line) => {
    const [, before = "", digits = "", rest = ""] = /^([\s"]*)(\d*)([.,]\d.*)$/.exec(line) ?? [];
    if (digits !== "") whole = digits;
    if (rest === "" || digits !== "" || whole === "") return line;
    isAny = true;
    return before + whole + rest;
  });
  return isAny ? lines.join("\n") : null;
}

const NUMBERED = /^\s*(\d{1,5})\s*[:)|]?\s+(?=\S)/;
const FEWEST_NUMBERED = 3;

/** The text without the numbers that an editor or a terminal shows before its lines, of which one holds words; null for any other. */
export function withoutLineNumbers(content: string): string | null {
  const lines = content.split(/\r\n|\n|\r/);
  const numbers = lines.map((line) => Number(NUMBERED.exec(line)?.[1] ?? Number.NaN));
  const first = numbers.findIndex((number) => Number.isFinite(number));
  const end = numbers.findIndex((number, i) => i > first && number !== (numbers[first] ?? 0) + i - first);
  const last = end < 0 ? lines.length : end;
  const isWorded = lines.slice(first, last).some((line) => /^[\s\d:)|]*\p{L}/u.test(line));
  if (first < 0 || last - first < FEWEST_NUMBERED || !isWorded || lines.slice(last).some((line) => /\d/.test(line)))
    return null;
  return lines.map((line, i) => (i >= first && i < last ? line.replace(NUMBERED, "") : line)).join("\n");
}
