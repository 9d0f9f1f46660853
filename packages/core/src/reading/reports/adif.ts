/**
 * The open log format ADIF: ADI, whose fields state their length, and ADX, the same as XML (adif.org, 3.1.7). Fields by name, in
 * upper case; what is not known is kept, what stands between fields is no part of it.
 */
export type AdifRecord = ReadonlyMap<string, string>;

/** A tag at a place: `<NAME:LENGTH>`, `<NAME:LENGTH:TYPE>`, `<EOH>`, `<EOR>`. */
const TAG = /<([A-Za-z_][\w ]*?)(?::(\d+)(?::([A-Za-z]))?)?>/y;

/** Whether a text is ADIF of either kind. */
export const isAdif = (text: string): boolean => isAdx(text) || /<(?:EOR|EOH)>/i.test(text);

const isAdx = (text: string): boolean =>
  /^\s*(?:<\?xml[^>]*>\s*)?(?:<!-{2}(?:(?!-{2}>).)*-{2}>\s*)*<ADX[\s>]/is.test(text);

/** The records of a text that {@link isAdif}. */
export const adifRecords = (text: string): readonly AdifRecord[] => (isAdx(text) ? adxRecords(text) : adiRecords(text));

/** Data may hold "<": what a length counts is skipped whole. A record that the text breaks off in counts as far as it goes. */
function adiRecords(text: string): readonly AdifRecord[] {
  const records: AdifRecord[] = [];
  let fields = new Map<string, string>();
  for (let place = text.indexOf("<"); place >= 0; place = text.indexOf("<", place)) {
    TAG.lastIndex = place;
    const [tag, name = "", length] = TAG.exec(text) ?? [];
    if (tag === undefined) {
      place++;
      continue;
    }
    place += tag.length;
    const key = name.toUpperCase();
    if (length !== undefined) {
      const data = counted(text, place, Number(length));
      fields.set(key, data.trim());
      place += data.length;
    } else if (key === "EOH") fields = new Map();
    else if (key === "EOR") {
      if (fields.size > 0) records.push(fields);
      fields = new Map();
    }
  }
  if (fields.size > 0) records.push(fields);
  return records;
}

/**
 * The data of a stated length, which counts characters, or the bytes that they take in UTF-8, as its writer did: the one behind
 * which a tag, a blank or the end follows.
 */
function counted(text: string, start: number, length: number): string {
  const byCharacters = text.slice(start, start + length);
  if (isCleanEnd(text, start + length) || isAscii(byCharacters)) return byCharacters;
  let bytes = 0;
  let end = start;
  while (bytes < length && end < text.length) {
    const code = text.codePointAt(end) ?? 0;
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
    end += code < 0x10000 ? 1 : 2;
  }
  return bytes === length && isCleanEnd(text, end) ? text.slice(start, end) : byCharacters;
}

const isCleanEnd = (text: string, end: number): boolean => end >= text.length || /[<\s]/.test(text.charAt(end));
const isAscii = (text: string): boolean => !/[^\0-\x7f]/.test(text);

const RECORD = /<RECORD>(.*?)<\/RECORD>/gis;
const ELEMENT = /<([A-Za-z_]\w*)(?:\s[^>]*)?>([^<]*)<\/\1>/g;

/** Comments are no fields, and what a section of character data holds is data. */
const withoutSections = (text: string): string =>
  text
    .replace(/<!-{2}(?:(?!-{2}>).)*-{2}>/gs, "")
    .replace(/<!\[CDATA\[((?:(?!\]\]>).)*)\]\]>/gs, (_, data: string) =>
      data.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;"),
    );

const adxRecords = (text: string): readonly AdifRecord[] =>
  Array.from(
    withoutSections(text).matchAll(RECORD),
    ([, record = ""]) =>
      new Map(
        Array.from(record.matchAll(ELEMENT), ([, name = "", data = ""]) => [
          name.toUpperCase(),
          unescaped(data).trim(),
        ]),
      ),
  );

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

const unescaped = (text: string): string =>
  text.replace(/&(?:#(\d+)|#x([0-9a-f]+)|(\w+));/gi, (whole, decimal, hex, name) => {
    if (name !== undefined) return ENTITIES[name.toLowerCase()] ?? whole;
    const code = decimal === undefined ? Number.parseInt(hex, 16) : Number(decimal);
    return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
