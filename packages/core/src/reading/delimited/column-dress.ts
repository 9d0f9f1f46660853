import { quote, ReadError } from "../../input/read-error.js";
import type { ColumnRole, Quantity } from "../options/column-role.js";
import { frequencyUnitOf, UNIT_EXPONENTS } from "../options/units.js";
import { roleFromHeader } from "../quantities/columns.js";
import { readCell } from "./cells.js";
import { type CellUnit, type DressedNumber, dressedNumber } from "./dressed-number.js";

/** How the numbers of a column are dressed, and what they mean without that. */
export interface ColumnDress {
  readonly name: string;
  readonly role: ColumnRole;
  /** What the cells state; null where they state none */
  readonly unit: CellUnit | null;
  /** Power of ten of the unit that name and role mean */
  readonly power: number;
  /** Between thousands; null where there is none */
  readonly mark: string | null;
}

/** What name and role say of a column, before its cells are looked at; `isNamed`: the name is what tells the role. */
export interface ColumnTitle {
  readonly name: string;
  readonly role: ColumnRole;
  readonly isNamed: boolean;
}

const OHMS: readonly Quantity[] = [
  ...(["resistance", "reactance", "reactance-magnitude", "impedance-magnitude"] as const),
  ...(["parallel-resistance", "parallel-reactance"] as const),
];
const ANGLES: readonly Quantity[] = ["angle", "impedance-angle", "reflection-angle"];
const QUANTITIES: Readonly<Record<CellUnit["kind"], readonly Quantity[]>> = {
  frequency: ["frequency"],
  resistance: OHMS,
  decibel: ["s11-db", "return-loss"],
  degrees: ANGLES,
  radians: ANGLES,
  percent: ["reflection-magnitude", "reflected-power"],
};

/**
 * How a column is dressed: alike in all of its cells, and as its name allows.
 *
 * @returns null where it is not, so that nothing is certain of it
 */
export function dressOf(cells: readonly string[], title: ColumnTitle, port: number): ColumnDress | null {
  const filled = cells.filter((cell) => readCell(cell, "point").kind !== "missing");
  const numbers = filled.map(dressedNumber);
  const unit = numbers.find((number) => number?.unit)?.unit ?? null;
  const mark = numbers.find((number) => number?.mark)?.mark ?? null;
  const undressed: ColumnDress = { ...title, unit, power: 0, mark };
  if (unit === null && mark === null) return undressed;
  if (!numbers.every((number) => number !== null)) return null;
  if (numbers.some((number) => number.unit?.kind !== unit?.kind)) return null;
  if (mark !== null && !isMarkedThroughout(numbers, mark)) return null;
  return unit === null ? undressed : withUnit(undressed, unit, title.isNamed, port);
}

/** Whether a mark is the only one, and no number beside those with it may be another with a mark of its own. */
function isMarkedThroughout(numbers: readonly DressedNumber[], mark: string): boolean {
  const couldBeDecimal = mark === "." || mark === ",";
  const powers = new Set(numbers.map(({ unit }) => unit?.power));
  if (couldBeDecimal && powers.size > 1) return false;
  return numbers.every(
    (number) =>
      number.mark === mark ||
      (number.mark === null && (number.digits.includes(mark) || !MAY_BE_MARKED.test(number.digits))),
  );
}

/** A number whose one mark may stand before decimals or between thousands. */
const MAY_BE_MARKED = /^[+-]?[1-9]\d{0,2}([.,])\d{3}$/;

/**
 * A number of a column without certain marks that may be a fraction or more than a thousand, while no other number of the
 * column shows which.
 *
 * @param certain mark that stands between the thousands of another column
 * @returns null where there is none: all have three decimals, or some have another number of them
 */
export function doubtIn(
  cells: readonly string[],
  unit: CellUnit | null,
  certain: string | null,
): { readonly cell: string; readonly mark: string } | null {
  const numbers = cells.flatMap((cell) => dressedNumber(cell)?.digits ?? []);
  const fractions = numbers.filter((digits) => /[.,]/.test(digits));
  const mark = MAY_BE_MARKED.exec(fractions[0] ?? "")?.[1];
  if (mark === undefined || !fractions.every((digits) => MAY_BE_MARKED.exec(digits)?.[1] === mark)) return null;
  const isDoubtful =
    mark === certain ||
    // In kHz three decimals are no less likely than thousands; beside whole numbers they are less.
    (unit !== null && (unit.kind === "frequency" ? unit.power <= 3 : fractions.length < numbers.length));
  return isDoubtful ? { cell: fractions[0] as string, mark } : null;
}

/** Holds the unit of the cells against name and role, which take it up where they state none. */
function withUnit(dress: ColumnDress, unit: CellUnit, isNamed: boolean, port: number): ColumnDress | null {
  const { role, name } = dress;
  if (role.quantity === "other" || role.quantity === "transmission") {
    return unit.kind === "frequency" ? null : dress;
  }
  const named = `${name} (${unit.name})`;
  const asItIs = { name, role };
  const withItsUnit = { name: named, role: isNamed ? roleFromHeader(named, port) : statedBy(role, unit) };
  // An angle whose name states no unit is taken for degrees, and said to be a guess.
  const titles = unit.kind === "degrees" ? [withItsUnit, asItIs] : [asItIs, withItsUnit];
  for (const title of titles) {
    const power = agreedPower(title.role, unit);
    if (power !== null) return { ...dress, ...title, power };
  }
  return null;
}

/** Power of ten of a column's unit, where its role and the unit of its cells agree; null where they do not. */
function agreedPower(role: ColumnRole, { kind }: CellUnit): number | null {
  if (!QUANTITIES[kind].includes(role.quantity)) return null;
  switch (kind) {
    case "frequency":
      return role.frequencyUnit ? UNIT_EXPONENTS[role.frequencyUnit] : null;
    case "resistance":
      return role.factor === undefined ? 0 : Math.log10(role.factor);
    case "degrees":
      return role.radians ? null : 0;
    case "radians":
      return role.radians ? 0 : null;
    case "percent":
      return role.percent ? 0 : null;
    case "decibel":
      return 0;
  }
}

/** A role that the user named, with the unit that the cells state. */
function statedBy(role: ColumnRole, { kind, name }: CellUnit): ColumnRole {
  if (kind === "frequency") return { ...role, frequencyUnit: frequencyUnitOf(name) };
  if (kind === "radians") return { ...role, radians: true };
  return kind === "percent" ? { ...role, percent: true } : role;
}

/** A cell's number by itself, in the column's unit. @throws ReadError `bad-row` where its marks are not those of thousands */
export function bareCell(cell: string, dress: ColumnDress, place: { file: string; line: number }): string {
  if (dress.unit === null && dress.mark === null) return cell;
  const number = dressedNumber(cell);
  if (number === null) return cell;
  const power = number.unit === null ? 0 : number.unit.power - dress.power;
  const digits = dress.mark === null ? number.digits : withoutMarks(number.digits, dress.mark, place);
  return power === 0 ? digits : `${digits}e${power}`;
}

function withoutMarks(digits: string, mark: string, place: { file: string; line: number }): string {
  const groups = digits.split(mark);
  const isGrouped = groups.slice(1).every((group) => /^\d{3}(?!\d)/.test(group));
  if (isGrouped && (groups.length === 1 || !/^[+-]?0/.test(digits))) return groups.join("");
  throw new ReadError({
    code: "bad-row",
    ...place,
    found: `${quote(digits)} in a column whose thousands are marked with ${quote(mark)}`,
    expected: "three digits after each mark",
  });
}
