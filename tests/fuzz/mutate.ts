import { numbersFrom } from "./random.js";

/** Pieces that real files hold in the wrong place, and that a reader may stumble over. */
const PIECES = [
  "NaN",
  "inf",
  "-",
  "1e999",
  "-0",
  "0x10",
  "1,5",
  "1.2.3",
  "#",
  "!",
  "[",
  "]",
  "[Version] 2.0",
  "[Number of Ports] 1",
  "# GHz S MA R 50",
  "BEGIN",
  "END",
  '"',
  "'",
  ";",
  ",",
  "\t",
  "\r",
  "\n",
  "\u0000",
  "\u001a",
  "\ufeff",
  "Ω",
  "\u202e",
  "=cmd()",
  "__proto__",
  "9".repeat(400),
  " ".repeat(300),
].map((text) => new TextEncoder().encode(text));

const MOST_CHANGES = 8;
const LONGEST = 200_000;

/**
 * A file with a few changes, always the same for the same seed: bytes turned over, taken out, doubled; pieces put in; lines
 * swapped, cut short or repeated; part of another file spliced in.
 */
export function mutated(original: Uint8Array, other: Uint8Array, seed: number): Uint8Array {
  const random = numbersFrom(seed);
  let bytes = original;
  const changes = 1 + random.below(MOST_CHANGES);
  for (let change = 0; change < changes; change++) {
    const kind = random.below(CHANGES.length);
    bytes = (CHANGES[kind] as Change)(bytes, other, random);
  }
  return bytes.slice(0, LONGEST);
}

type Random = ReturnType<typeof numbersFrom>;
type Change = (bytes: Uint8Array, other: Uint8Array, random: Random) => Uint8Array;

const CHANGES: readonly Change[] = [
  (bytes, _, random) =>
    bytes.map((byte, i) => (i === random.fixed(bytes.length) ? byte ^ (1 << random.below(8)) : byte)),
  (bytes, _, random) => cut(bytes, random.below(bytes.length + 1), 1 + random.below(40)),
  (bytes, _, random) => bytes.slice(0, random.below(bytes.length + 1)),
  (bytes, _, random) =>
    insert(bytes, random.below(bytes.length + 1), PIECES[random.below(PIECES.length)] as Uint8Array),
  (bytes, other, random) => {
    const from = random.below(other.length + 1);
    return insert(bytes, random.below(bytes.length + 1), other.slice(from, from + random.below(2000)));
  },
  (bytes, _, random) => {
    const from = random.below(bytes.length + 1);
    const part = bytes.slice(from, from + random.below(300));
    return insert(bytes, from, part);
  },
  (bytes, _, random) =>
    onLines(bytes, (lines) => swapped(lines, random.below(lines.length), random.below(lines.length))),
  (bytes, _, random) => onLines(bytes, (lines) => lines.filter((_line, i) => i !== random.fixed(lines.length))),
  (bytes, _, random) => {
    const [from, to] = [
      [",", ";"],
      [".", ","],
      [" ", "\t"],
      ["\n", "\r"],
      ["\n", "\r\n"],
      ["e", "E"],
    ][random.below(6)] as [string, string];
    return onText(bytes, (text) => text.replaceAll(from, to));
  },
];

const cut = (bytes: Uint8Array, at: number, length: number) => joined([bytes.slice(0, at), bytes.slice(at + length)]);
const insert = (bytes: Uint8Array, at: number, piece: Uint8Array) =>
  joined([bytes.slice(0, at), piece, bytes.slice(at)]);

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let place = 0;
  for (const part of parts) {
    all.set(part, place);
    place += part.length;
  }
  return all;
}

/** Latin-1 both ways, so that every byte survives. */
function onText(bytes: Uint8Array, change: (text: string) => string): Uint8Array {
  const text = change(Buffer.from(bytes).toString("latin1"));
  return new Uint8Array(Buffer.from(text, "latin1"));
}

const onLines = (bytes: Uint8Array, change: (lines: readonly string[]) => readonly string[]) =>
  onText(bytes, (text) => change(text.split("\n")).join("\n"));

function swapped(lines: readonly string[], a: number, b: number): readonly string[] {
  return lines.map((line, i) => (i === a ? (lines[b] ?? line) : i === b ? (lines[a] ?? line) : line));
}
