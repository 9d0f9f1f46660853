/** Dots of a braille character, by column and row; the characters from U+2800 on are sums of these. */
const DOTS = [
  [0x01, 0x02, 0x04, 0x40],
  [0x08, 0x10, 0x20, 0x80],
] as const;
const EMPTY_BRAILLE = 0x2800;

/** Dots across and down in a character. */
export const DOTS_ACROSS = 2;
export const DOTS_DOWN = 4;

/** Rows of characters that are drawn on. */
export interface Canvas {
  readonly width: number;
  readonly height: number;
  readonly cells: string[][];
}

export const emptyCanvas = (width: number, height: number): Canvas => ({
  width,
  height,
  cells: Array.from({ length: height }, () => Array.from({ length: width }, () => " ")),
});

/** Puts a character at a place, over whatever is there. */
export function put({ cells }: Canvas, column: number, row: number, character: string): void {
  const line = cells[row];
  if (line !== undefined && column >= 0 && column < line.length) line[column] = character;
}

/** Sets one dot. A character that is there and is no braille gives way. */
export function putDot(canvas: Canvas, dotColumn: number, dotRow: number): void {
  const [column, row] = [Math.floor(dotColumn / DOTS_ACROSS), Math.floor(dotRow / DOTS_DOWN)];
  const bit = DOTS[dotColumn % DOTS_ACROSS === 0 ? 0 : 1][dotRow % DOTS_DOWN] ?? 0;
  const code = canvas.cells[row]?.[column]?.codePointAt(0) ?? 0;
  const there = code > EMPTY_BRAILLE && code < EMPTY_BRAILLE + 256 ? code - EMPTY_BRAILLE : 0;
  put(canvas, column, row, String.fromCodePoint(EMPTY_BRAILLE + (there | bit)));
}

/** The rows as text. */
export const linesOf = ({ cells }: Canvas): readonly string[] => cells.map((line) => line.join(""));
