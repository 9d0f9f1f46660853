import { quote, ReadError } from "../../input/read-error.js";
import { type Cell, MAY_BE_GROUPED, type NumberCell, TEXT } from "./cell-grammar.js";
import type { CellUnit } from "./cell-units.js";

/** Whether a mark may also stand before decimals. */
export const isDecimalMark = (mark: string | null): boolean => mark === "." || mark === ",";

/** A number whose only mark is that of the thousands in its column: "950.000" above "1.000.000". */
export function grouped(cell: Cell, mark: string): Cell {
  if ((cell.kind === "text" || cell.kind === "number") && cell.grouped?.mark === mark) return cell.grouped;
  if (cell.kind !== "number" || cell.mark !== null || MAY_BE_GROUPED.exec(cell.printed)?.[1] !== mark) return cell;
  return { ...cell, digits: cell.printed.replace(mark, ""), mark };
}

/**
 * Holds all numbers of a column to the mark that some have between their thousands.
 *
 * @throws ReadError `bad-row` where it does not stand before three digits; `ambiguous` where another number's mark may be the
 *   decimal one
 */
export function refuseOtherMarks(cells: readonly Cell[], mark: string, lines: Uint32Array, file: string): void {
  const units = new Set(cells.flatMap((cell) => (cell.kind === "number" ? [cell.unit?.power] : [])));
  for (const [row, cell] of cells.entries()) {
    if (cell.kind !== "number" || cell.mark === mark) continue;
    const isGrouped = MAY_BE_GROUPED.exec(cell.printed)?.[1] === mark;
    if (cell.printed.includes(mark) && !isGrouped) {
      throw new ReadError({
        code: "bad-row",
        file,
        line: lines[row] as number,
        found: `${quote(cell.printed)} in a column whose thousands are marked with ${quote(mark)}`,
        expected: "three digits after each mark",
      });
    }
    const isOther = !isGrouped && MAY_BE_GROUPED.test(cell.printed);
    if (isOther || (isDecimalMark(mark) && units.size > 1)) throw doubtful(cell, file);
  }
}

/** A column without the few numbers that have marks between thousands where more of the others deny it: "5.000.550" among "7.16176". */
export function withoutFewMarks(cells: readonly Cell[]): readonly Cell[] {
  const isMarked = (cell: Cell) => cell.kind === "number" && cell.mark !== null && isDecimalMark(cell.mark);
  const marked = cells.filter(isMarked);
  const [first] = marked;
  const mark = first?.kind === "number" ? first.mark : null;
  if (mark === null) return cells;
  const denied = cells.filter(
    (cell) =>
      cell.kind === "number" && cell.mark === null && cell.printed.includes(mark) && !MAY_BE_GROUPED.test(cell.printed),
  );
  return denied.length > marked.length ? cells.map((cell) => (isMarked(cell) ? TEXT : cell)) : cells;
}

/**
 * Refuses a number of a column without certain marks that may be a fraction or more than a thousand, while no other number of
 * the column shows which: "1.523" beside "7.100.000", "14.100 kHz", "1.234 ohm" beside "980 ohm".
 */
export function refuseDoubt(
  numbers: readonly NumberCell[],
  unit: CellUnit | null,
  certain: string | null,
  file: string,
): void {
  const fractions = numbers.filter(({ printed }) => /[.,]/.test(printed));
  const [first] = fractions;
  const mark = MAY_BE_GROUPED.exec(first?.printed ?? "")?.[1];
  if (first === undefined || mark === undefined) return;
  if (!fractions.every(({ printed }) => MAY_BE_GROUPED.exec(printed)?.[1] === mark)) return;
  const isDoubtful =
    mark === certain ||
    // In kHz three decimals are no less likely than thousands; beside whole numbers they are less.
    (unit !== null && (unit.kind === "frequency" ? unit.power <= 3 : fractions.length < numbers.length));
  if (isDoubtful) throw doubtful(first, file);
}

const doubtful = ({ printed }: NumberCell, file: string): ReadError =>
  new ReadError({
    code: "ambiguous",
    file,
    found: `${quote(printed)} may be a fraction or a number above a thousand`,
    remedy: "Say which mark fractions have: --decimal point or --decimal comma.",
  });
