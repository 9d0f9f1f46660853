import type { ColumnRole } from "../options/column-role.js";
import { frequencyUnitOf, UNIT_EXPONENTS } from "../options/units.js";
import { QUANTITIES, type QuantityRecord } from "../quantities/quantities.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import type { CellUnit } from "./cell-units.js";

/** What name and role say of a column; `isNamed`: the name is what tells the role. */
export interface ColumnTitle {
  readonly name: string;
  readonly role: ColumnRole;
  readonly isNamed: boolean;
}

/** A title that agrees with the unit of the cells below it, and that unit's power of ten over the one of the title. */
export interface TitleWithUnit extends ColumnTitle {
  readonly power: number;
}

/** The kind of unit that a quantity must have for cells with these. */
const KINDS: Readonly<Partial<Record<CellUnit["kind"], QuantityRecord["unit"]>>> = {
  frequency: "hertz",
  resistance: "ohm",
  conductance: "siemens",
  decibel: "decibel",
  degrees: "angle",
  radians: "angle",
  gons: "angle",
  percent: "share",
};

/** Holds the unit of a column's cells against its name and role, which take it up where they state none; null where they differ. */
export function titleWithUnit(title: ColumnTitle, unit: CellUnit, port: number): TitleWithUnit | null {
  const { role, name, isNamed } = title;
  const isLeftAlone = role.quantity === "other" || role.quantity === "transmission";
  if (isLeftAlone) return { ...title, power: 0 };
  const named = `${name} (${unit.name})`;
  const withItsUnit = {
    ...title,
    name: named,
    role: isNamed ? roleFromHeader(named, port) : statedBy(role, unit),
  };
  // A share of one becomes one of a hundred.
  if (unit.kind === "percent" && role.percent && role.factor === 100) {
    const { factor: _, ...share } = role;
    return { ...title, role: share, power: 0 };
  }
  // An angle whose name states no unit is taken for degrees, and said to be a guess.
  const titles = unit.kind === "degrees" ? [withItsUnit, title] : [title, withItsUnit];
  for (const candidate of titles) {
    const power = agreedPower(candidate.role, unit);
    if (power !== null) return { ...candidate, power };
  }
  return null;
}

/** Power of ten of a column's unit, where its role and the unit of its cells agree; null where they do not. */
function agreedPower(role: ColumnRole, { kind }: CellUnit): number | null {
  const needed = KINDS[kind];
  if (needed === undefined || QUANTITIES[role.quantity].unit !== needed) return null;
  switch (kind) {
    case "frequency":
      return role.frequencyUnit ? UNIT_EXPONENTS[role.frequencyUnit] : null;
    case "resistance":
    case "conductance":
      return role.factor === undefined ? 0 : Math.log10(Math.abs(role.factor));
    case "degrees":
      return role.radians ? null : 0;
    case "radians":
      return role.radians ? 0 : null;
    case "gons":
      return role.factor === undefined ? null : 0;
    case "percent":
      return role.percent ? 0 : null;
    default:
      return 0;
  }
}

/** A role that the user named, with the unit that the cells state. */
function statedBy(role: ColumnRole, { kind, name, power }: CellUnit): ColumnRole {
  if (kind === "frequency") return { ...role, frequencyUnit: frequencyUnitOf(name) };
  if (kind === "radians") return { ...role, radians: true };
  if (kind === "conductance") return { ...role, factor: 10 ** power };
  return kind === "percent" ? { ...role, percent: true } : role;
}
