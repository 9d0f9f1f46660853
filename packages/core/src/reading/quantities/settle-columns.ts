import { quote, ReadError } from "../../input/read-error.js";
import { at, type Column } from "../../numbers/column.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { ColumnRole } from "../options/column-role.js";
import type { ReadOptions } from "../options/read-options.js";
import type { FrequencyUnit } from "../options/units.js";
import { isAngleOfImpedance, WITH_AN_ANGLE } from "./angle-subject.js";
import { columnsText, guessedColumns } from "./column-names.js";
import type { NumberColumn } from "./determination.js";
import { isFolded } from "./folded.js";
import { QUANTITIES } from "./quantities.js";
import { referenceNamed } from "./reference-statement.js";

/** The table that columns are from, and what the user says of it. */
export interface TableAround {
  readonly file: string;
  readonly frequencyHz: Column;
  readonly unit: FrequencyUnit;
  readonly roles: readonly ColumnRole[];
  /** With the reference impedance that is stated, where none is asked for */
  readonly options: ReadOptions;
}

/**
 * Settles what a column means from its neighbours and its values: gives angles and parts without a subject theirs, turns
 * a misnamed return loss round, takes a reactance or an angle that lost its sign for what it is.
 *
 * @throws ReadError `ambiguous` where two columns hold the same, or a column could be two things
 */
export function settleColumns(
  columns: readonly NumberColumn[],
  table: TableAround,
  findings: Finding[],
): readonly NumberColumn[] {
  const plain = columns.filter(
    ({ isExtreme, quantity }) =>
      !isExtreme || !columns.some((other) => !other.isExtreme && other.quantity === quantity),
  );
  const withSubjects = plain.map((column) => settleSubject(column, plain, table, findings));
  const settled = withSubjects.map((column) =>
    settleSign(column, table.frequencyHz, table.options.signedReactance === true, findings),
  );
  refuseDuplicates(settled, table);
  return settled;
}

function settleSubject(
  column: NumberColumn,
  columns: readonly NumberColumn[],
  table: TableAround,
  findings: Finding[],
): NumberColumn {
  const { file, options } = table;
  const { quantity, name, values, isAssumed, percent } = column;
  if (isAssumed) {
    if (quantity !== "s11-db" && greatestSize(values) > GREATEST_REFLECTION * (percent ? 100 : 1)) {
      throw new ReadError({
        code: "ambiguous",
        file,
        found: `${quote(name)} does not say of what, and its values are too large for a reflection`,
        remedy: `Say what the columns hold, such as ${guessedColumns(table.roles, table.unit)}`,
      });
    }
    findings.push(finding("caution", "reflection-assumed", { name: quote(name), readAs: "reflection" }));
  }
  if (quantity === "real") return { ...column, quantity: "reflection-real" };
  if (quantity === "imaginary") return { ...column, quantity: "reflection-imaginary" };
  if (quantity === "reflection") return settleBareReflection(column, table, findings);
  // No size is negative: "S11 mag" over -6.5.
  if (
    quantity === "reflection-magnitude" &&
    !percent &&
    values.every((value) => !(value > 0)) &&
    greatestSize(values) > 0
  )
    return { ...column, quantity: "s11-db" };
  const isPower = columns.some((other) => other.quantity === "forward-power");
  if (quantity === "reflected-power" && !isPower && !column.percent && greatestSize(values) <= 1) {
    throw new ReadError({
      code: "ambiguous",
      file,
      found: `${quote(name)} holds nothing above 1 and does not say whether it is in per cent or a share of the power`,
      remedy: `Write % into its name, or say ${told(table, column, "reflected-power")}, or skip for this one.`,
    });
  }
  if (
    quantity === "reflected-power" &&
    column.percent &&
    !/pow|puiss|leist|poten|effekt|moc|teho|\bp(?!\p{L})/iu.test(name) &&
    /reflected/i.test(name)
  ) {
    findings.push(finding("caution", "reflection-assumed", { name: quote(name), readAs: "power" }));
  }
  if (quantity.endsWith("angle")) noteAngleUnit(column, findings);
  if (quantity !== "angle") return column;
  if (columns[columns.indexOf(column) - 1]?.quantity === "transmission") return { ...column, quantity: "transmission" };
  if (isAngleOfImpedance(column, columns, options)) return { ...column, quantity: "impedance-angle" };
  // An SWR is read off an impedance as often as off a reflection.
  if (!columns.some((other) => WITH_AN_ANGLE.includes(other.quantity))) {
    findings.push(finding("caution", "reflection-assumed", { name: quote(name), readAs: "angle" }));
  }
  return { ...column, quantity: "reflection-angle" };
}

/** Beyond this no part of a reflection coefficient lies, calibration errors included. */
const GREATEST_REFLECTION = 1.5;

/** "S11" alone: all negative is dB, all between 0 and about 1 a magnitude. */
function settleBareReflection(column: NumberColumn, table: TableAround, findings: Finding[]): NumberColumn {
  const isMagnitude = sign(column.values) >= 0 && greatestSize(column.values) <= GREATEST_REFLECTION;
  if (!isMagnitude && sign(column.values) >= 0) {
    throw new ReadError({
      code: "ambiguous",
      file: table.file,
      found: `${quote(column.name)} does not say whether it is in dB or a magnitude`,
      remedy: `Say it: ${told(table, column, "s11-db")} or ${told(table, column, "rho")}`,
    });
  }
  findings.push(
    finding("caution", "reflection-assumed", { name: quote(column.name), readAs: isMagnitude ? "magnitude" : "dB" }),
  );
  if (isMagnitude) return { ...column, quantity: "reflection-magnitude" };
  // "More than" makes no sense of dB: such a cell holds no number.
  const { ceiling, values } = column;
  const known = ceiling === null ? values : values.map((value) => (value < ceiling ? value : Number.NaN));
  return { ...column, quantity: "s11-db", values: known, ceiling: null };
}

/** Angles of a sweep that all lie within this may be radians. */
const LARGEST_IN_RADIANS = 3.15;

function noteAngleUnit({ name, values, radians }: NumberColumn, findings: Finding[]): void {
  // "grad" is German for a degree, and another word for a gon.
  if (/\bgrad\b/i.test(name))
    findings.push(finding("caution", "angle-unit-assumed", { name: quote(name), largest: 360, other: "gons" }));
  if (radians || /deg|grad|°/i.test(name) || greatestSize(values) > LARGEST_IN_RADIANS) return;
  findings.push(
    finding("caution", "angle-unit-assumed", { name: quote(name), largest: LARGEST_IN_RADIANS, other: "radians" }),
  );
}

function settleSign(column: NumberColumn, frequencyHz: Column, isSigned: boolean, findings: Finding[]): NumberColumn {
  const { quantity, values, name } = column;
  if (quantity === "return-loss" && sign(values) < 0) {
    findings.push(finding("info", "return-loss-negative", { name: quote(name) }));
    return { ...column, quantity: "s11-db" };
  }
  if (quantity === "s11-db" && sign(values) > 0) {
    findings.push(finding("caution", "s11-positive", { name: quote(name) }));
    return { ...column, quantity: "return-loss" };
  }
  const isSigless =
    (quantity === "reactance" || quantity === "impedance-angle" || quantity === "reflection-angle") &&
    !isSigned &&
    looksUnsigned(values, frequencyHz) &&
    // Angles from 0 to a full turn need no sign.
    !(quantity === "reflection-angle" && greatestSize(values) > (column.radians ? Math.PI : 180) + HALF_TURN_MARGIN);
  if (!isSigless) return withoutLostSign(column, isSigned, findings);
  findings.push(finding("caution", "reactance-without-sign", { name: quote(name) }));
  return { ...column, quantity: `${quantity}-magnitude` };
}

function withoutLostSign(column: NumberColumn, isSigned: boolean, findings: Finding[]): NumberColumn {
  const { quantity, values, name } = column;
  if (isSigned || !QUANTITIES[quantity].isFoldable || !values.every((value) => !(value < 0)) || !isFolded(values)) {
    if (quantity === "reactance" && !isSigned && falls(values)) {
      findings.push(finding("caution", "sign-on-trust", { name: quote(name) }));
    }
    return column;
  }
  findings.push(finding("caution", "reactance-without-sign", { name: quote(name) }));
  return { ...column, isUnsigned: true };
}

/** Whether a reactance lies above zero throughout and falls with frequency, which that of an antenna seldom does. */
const falls = (values: Column): boolean =>
  values.length >= 3 &&
  values.every((value) => value > 0) &&
  at(values, values.length - 1) < at(values, 0) &&
  at(values, values.length >> 1) < at(values, 0);

/** Rounding in print of an angle of half a turn, degrees or radians. */
const HALF_TURN_MARGIN = 0.01;

function greatestSize(values: Column): number {
  let greatest = 0;
  for (let i = 0; i < values.length; i++) {
    const size = Math.abs(at(values, i));
    if (size > greatest) greatest = size;
  }
  return greatest;
}

/** Negative where practically all values are below zero, positive where practically all are above. */
function sign(values: Column): number {
  let below = 0;
  let above = 0;
  for (let i = 0; i < values.length; i++) {
    const value = at(values, i);
    if (value < 0) below++;
    else if (value > 0) above++;
  }
  if (below > 0.9 * (below + above)) return -1;
  return above > 0.9 * (below + above) ? 1 : 0;
}

/** Whether a column that should carry signs has lost them: nowhere negative over a wide range, or down to zero and up again. */
function looksUnsigned(values: Column, frequencyHz: Column): boolean {
  let least = Number.POSITIVE_INFINITY;
  let greatest = 0;
  for (let i = 0; i < values.length; i++) {
    const value = at(values, i);
    if (value < 0) return false;
    if (value < least) least = value;
    if (value > greatest) greatest = value;
  }
  const first = at(frequencyHz, 0);
  const last = at(frequencyHz, frequencyHz.length - 1);
  const isWide = Math.abs(last - first) > 0.1 * Math.max(first, last);
  return greatest > 0 && values.length >= 3 && (isWide || least < 0.1 * greatest || isFolded(values));
}

function refuseDuplicates(columns: readonly NumberColumn[], table: TableAround): void {
  const twins = columns.filter(
    ({ quantity }, c) => quantity !== "transmission" && columns.findIndex((other) => other.quantity === quantity) < c,
  );
  const [twin] = twins;
  if (twin === undefined) return;
  const first = columns.find(({ quantity }) => quantity === twin.quantity);
  const skipped = new Map(twins.map(({ place }) => [place, "skip"]));
  const isOfTwo = [first, twin].some((column) => referenceNamed(column?.name ?? "") !== null);
  throw new ReadError({
    code: "ambiguous",
    file: table.file,
    found: `${quote(first?.name ?? "")} and ${quote(twin.name)} both hold ${twin.quantity.replaceAll("-", " ")}`,
    remedy: `Say which counts, such as ${columnsText(table.roles, table.unit, skipped)}${isOfTwo ? " --reference-ohms 50" : ""}.`,
  });
}

/** What to say of the columns where one of them holds something else than its name says. */
const told = ({ roles, unit }: TableAround, { place }: NumberColumn, as: string): string =>
  columnsText(roles, unit, new Map([[place, as]]));
