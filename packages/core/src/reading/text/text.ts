import { ReadError } from "../../input/read-error.js";
import type { Delimiter } from "../options/read-options.js";
import { BRACKET, ESCAPE, SEMICOLON, ZERO } from "./ascii.js";

/** A file's bytes, known to be text, with their encoding settled once and for all readers. */
export interface SourceText {
  readonly file: string;
  /** UTF-8 or Latin-1 without byte-order mark, so that every ASCII character is one byte of its own value */
  readonly bytes: Uint8Array;
  /** What decoding has met so far: "UTF-8" until a character outside ASCII shows otherwise, "Latin-1", "UTF-16", or another by its name */
  readonly encoding: string;
  /** The delimiter of a text that was written anew, cell by cell */
  readonly delimiter?: Delimiter | undefined;
  /** The characters of a range of bytes */
  decode(start: number, end: number): string;
}

/** First bytes of common formats that are no text, and what to call them. */
const SIGNATURES: readonly { readonly bytes: readonly number[]; readonly what: string; readonly remedy?: string }[] = [
  { bytes: [0x89, 0x50, 0x4e, 0x47], what: "a PNG picture" },
  { bytes: [0xff, 0xd8, 0xff], what: "a JPEG picture" },
  { bytes: [0x47, 0x49, 0x46, 0x38], what: "a GIF picture" },
  { bytes: [0x42, 0x4d], what: "a BMP picture" },
  { bytes: [0x25, 0x50, 0x44, 0x46], what: "a PDF document" },
  {
    bytes: [0x50, 0x4b, 0x03, 0x04],
    what: "a ZIP archive or a spreadsheet workbook",
    remedy: "Unpack it, or save the sheet as CSV, and read that.",
  },
  { bytes: [0xd0, 0xcf, 0x11, 0xe0], what: "an old office document", remedy: "Save the sheet as CSV and read that." },
  { bytes: [0x1f, 0x8b], what: "a gzip archive", remedy: "Unpack it first." },
];

const EXPORT_REMEDY = "Export the sweep from the analyser as Touchstone (.s1p) or CSV and read that.";

/** 1 for control characters other than those that texts hold: tab, line ends, form feed and a closing Ctrl-Z. */
const STRAY = Uint8Array.from({ length: 256 }, (_, byte) =>
  byte < 0x20 && ![0x09, 0x0a, 0x0c, 0x0d, 0x1a].includes(byte) ? 1 : 0,
);
const GREATEST_STRAY_SHARE = 0.02;
/** Bytes at the start that are looked at; what follows must still be numbers to be read. */
const BINARY_SAMPLE = 1024;
/** As many are looked at below a signature: two letters (BM) may begin an honest text, which has no stray characters. */
const SIGNATURE_SAMPLE = 512;

/**
 * Settles whether bytes are text and in which encoding: a byte-order mark decides, else UTF-16 by its zero bytes, else
 * strict UTF-8, else Latin-1, which cannot fail.
 *
 * @throws ReadError `empty` or `not-text`
 */
export function sourceText(given: Uint8Array, file: string): SourceText {
  // A plain view, whatever kind of byte array was given: the scanners are fastest when they only ever meet one kind.
  const bytes = withoutColours(new Uint8Array(given.buffer, given.byteOffset, given.byteLength));
  if (bytes.length === 0) {
    throw new ReadError({ code: "empty", file, found: "the file is empty (0 bytes)", remedy: EXPORT_REMEDY });
  }
  const signature = SIGNATURES.find(
    (entry) => entry.bytes.every((byte, i) => bytes[i] === byte) && hasStray(bytes, SIGNATURE_SAMPLE),
  );
  if (signature !== undefined) {
    throw new ReadError({
      code: "not-text",
      file,
      found: `this is ${signature.what}`,
      expected: "a text file with numbers",
      remedy: signature.remedy ?? EXPORT_REMEDY,
    });
  }
  const isPlain = !hasStray(bytes, BINARY_SAMPLE);
  const sixteen = markedOrder(bytes) ?? (isPlain ? null : sixteenBitOrder(bytes));
  if (sixteen !== null) {
    const text = new TextDecoder(sixteen).decode(bytes);
    return rewritten({ file, encoding: "UTF-16" }, text.replace(/^\uFEFF/, ""));
  }
  if (!isPlain) refuseBinary(bytes, file);
  const hasMark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
  return eightBitText(file, hasMark ? bytes.subarray(3) : bytes);
}

const UTF_8 = new TextDecoder("utf-8");
/** What the numbers between bracket and letter are written with. */
const IN_NUMBERS: ReadonlySet<number> = new Set([...Array.from({ length: 10 }, (_, digit) => ZERO + digit), SEMICOLON]);
/** "m" sets a colour, "K" clears what is left of a line. */
const ENDS_OF_ESCAPE: ReadonlySet<number> = new Set([0x6d, 0x4b]);

/** A text without what sets colours on a terminal: escape, bracket, digits and semicolons, a letter (ISO/IEC 6429; from memory). */
function withoutColours(bytes: Uint8Array): Uint8Array {
  if (!bytes.subarray(0, BINARY_SAMPLE).includes(ESCAPE)) return bytes;
  const plain = new Uint8Array(bytes.length);
  let length = 0;
  for (let i = 0; i < bytes.length; i++) {
    const end = bytes[i] === ESCAPE && bytes[i + 1] === BRACKET ? endOfNumbers(bytes, i + 2) : i;
    if (end > i && ENDS_OF_ESCAPE.has(bytes[end] as number)) i = end;
    else plain[length++] = bytes[i] as number;
  }
  return plain.subarray(0, length);
}

function endOfNumbers(bytes: Uint8Array, start: number): number {
  let end = start;
  while (end < bytes.length && IN_NUMBERS.has(bytes[end] as number)) end++;
  return end;
}

/** Text of one byte per ASCII character. Which encoding the others have is settled, over all bytes, at the first one. */
function eightBitText(file: string, bytes: Uint8Array): SourceText {
  let settled: { encoding: "UTF-8" | "Latin-1"; decoder: TextDecoder } | null = null;
  const settle = () => {
    settled = isUtf8(bytes)
      ? { encoding: "UTF-8", decoder: UTF_8 }
      : { encoding: "Latin-1", decoder: new TextDecoder("windows-1252") };
    return settled.decoder;
  };
  return {
    file,
    bytes,
    get encoding() {
      return settled?.encoding ?? "UTF-8";
    },
    decode(start, end) {
      const slice = bytes.subarray(start, end);
      const decoder = settled?.decoder ?? (isAscii(slice) ? UTF_8 : settle());
      return decoder.decode(slice);
    },
  };
}

export function isAscii(bytes: Uint8Array): boolean {
  for (let i = 0; i < bytes.length; i++) if ((bytes[i] as number) > 0x7f) return false;
  return true;
}

/** Another content for a text, of the same file and found in the same encoding. */
export function rewritten(
  { file, encoding }: Pick<SourceText, "file" | "encoding">,
  content: string,
  delimiter?: Delimiter,
): SourceText {
  const bytes = new TextEncoder().encode(content);
  return { file, bytes, encoding, delimiter, decode: (start, end) => UTF_8.decode(bytes.subarray(start, end)) };
}

/** Whether any of the first bytes is one that texts do not hold; zero is such a byte too. */
function hasStray(bytes: Uint8Array, sample: number): boolean {
  const end = Math.min(bytes.length, sample);
  for (let i = 0; i < end; i++) if (STRAY[bytes[i] as number] === 1) return true;
  return false;
}

type SixteenBitOrder = "utf-16le" | "utf-16be";

function markedOrder(bytes: Uint8Array): SixteenBitOrder | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  return bytes[0] === 0xfe && bytes[1] === 0xff ? "utf-16be" : null;
}

function sixteenBitOrder(bytes: Uint8Array): SixteenBitOrder | null {
  const sample = bytes.subarray(0, BINARY_SAMPLE);
  let zerosAtEven = 0;
  let zerosAtOdd = 0;
  for (let i = 0; i < sample.length; i++) {
    if (sample[i] !== 0) continue;
    if (i % 2 === 0) zerosAtEven++;
    else zerosAtOdd++;
  }
  const half = sample.length / 2;
  if (zerosAtOdd > 0.8 * half && zerosAtEven === 0) return "utf-16le";
  if (zerosAtEven > 0.8 * half && zerosAtOdd === 0) return "utf-16be";
  return null;
}

function refuseBinary(bytes: Uint8Array, file: string): void {
  // Padding of zeros at the end is harmless and common; zeros within count as stray.
  let end = bytes.length;
  while (end > 0 && bytes[end - 1] === 0) end--;
  if (end === 0) throw new ReadError({ code: "empty", file, found: "the file holds nothing but zero bytes" });
  const head = bytes.subarray(0, Math.min(end, BINARY_SAMPLE));
  let stray = 0;
  for (let i = 0; i < head.length; i++) stray += STRAY[head[i] as number] as number;
  if (stray > GREATEST_STRAY_SHARE * head.length) {
    throw new ReadError({
      code: "not-text",
      file,
      found: "this is not a text file",
      expected: "a text file with numbers",
      remedy: EXPORT_REMEDY,
    });
  }
}

/** Whether bytes are UTF-8; of a part of a text but for a character that it cuts off at its end. */
export function isUtf8(bytes: Uint8Array, isPart = false): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes, { stream: isPart });
    return true;
  } catch {
    return false;
  }
}
