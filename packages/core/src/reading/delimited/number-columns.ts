import { type ColumnRole, isReading } from "../options/column-role.js";
import { DEFAULT_REFERENCE_OHMS } from "../options/read-options.js";
import type { NumberColumn } from "../quantities/determination.js";
import { QUANTITIES } from "../quantities/quantities.js";
import { referenceNamed } from "../quantities/reference-statement.js";
import { withBounds } from "../quantities/scale-end.js";
import type { Preamble } from "./preamble.js";
import { withoutStandIns } from "./stand-ins.js";
import type { TableColumn } from "./table-column.js";

/** Columns as quantities, without frequencies and what is not known. `texts` are the words around the table. */
export const numberColumns = (
  columns: readonly TableColumn[],
  roles: readonly ColumnRole[],
  frequencyHz: Float64Array,
  texts: readonly string[],
): readonly NumberColumn[] =>
  columns.flatMap((column, place) => {
    const role = roles[place] as ColumnRole;
    return numberColumn(withReactance(column, role, frequencyHz), place, role, texts);
  });

function numberColumn(
  column: TableColumn,
  place: number,
  role: ColumnRole,
  texts: readonly string[],
): readonly NumberColumn[] {
  if (role.quantity === "frequency" || role.quantity === "other") return [];
  // "More than" makes sense of SWR and ρ only; anywhere else such a cell holds no number.
  const scale = QUANTITIES[role.quantity].scale;
  const values = withoutStandIns(column.values, texts, role);
  const { settled, ceiling } =
    scale === undefined ? { settled: values, ceiling: null } : withBounds(values, column.atLeast, scale);
  if (settled.every(Number.isNaN)) return [];
  const { factor: stated = 1, offset = 0, isInDbm = false, ofPart } = role;
  const factor = ofPart === undefined ? stated : 1;
  const isAsRead = factor === 1 && offset === 0 && !isInDbm;
  return [
    {
      place,
      quantity: role.quantity,
      name: column.name,
      values: isAsRead ? settled : settled.map((value) => (isInDbm ? 10 ** (value / 10) : value * factor + offset)),
      ceiling,
      halfUnit: column.halfUnit,
      isAssumed: role.isAssumed ?? false,
      radians: role.radians ?? false,
      percent: role.percent ?? false,
      isNormalised: role.isNormalised ?? areNormalised(texts, role),
      isExtreme: role.isExtreme ?? false,
      isUnsigned: false,
      isInWatts: (role.isInWatts ?? false) || column.isInWatts === true,
    },
  ];
}

/** A column of capacitances or inductances in series as the reactances that they have, Ω. */
function withReactance(
  column: TableColumn,
  { ofPart, factor = 1 }: ColumnRole,
  frequencyHz: Float64Array,
): TableColumn {
  if (ofPart === undefined) return column;
  const reactanceOf = (value: number, row: number): number => {
    const angular = 2 * Math.PI * (frequencyHz[row] as number);
    return ofPart === "inductance" ? angular * value * factor : -1 / (angular * value * factor);
  };
  return { ...column, values: column.values.map(reactanceOf) };
}

/** What columns hold, as their names, the lines above and the impedance that readings are against tell it. */
export const rolesOfColumns = (columns: readonly TableColumn[], preamble: Preamble): readonly ColumnRole[] =>
  againstOneReference(columns, rolesWithPreamble(columns, preamble));

/** What columns hold; readings whose names do not say what they are take it from the preamble, where that says it. */
function rolesWithPreamble(columns: readonly TableColumn[], { readings }: Preamble): readonly ColumnRole[] {
  const roles = columns.map(({ role }) => role);
  // A letter may be a name of its own, and not that of half an admittance.
  const halves = roles.filter(({ quantity }) => quantity === "conductance" || quantity === "susceptance");
  const isSilent = (role: ColumnRole) =>
    role.quantity === "reflection" || role.quantity === "other" || (halves.length === 1 && halves.includes(role));
  if (readings === null || roles.some((role) => isReading(role) && !isSilent(role))) return roles;
  const silent = roles.filter(isSilent);
  const bare = roles.filter(({ quantity }) => quantity === "reflection");
  const wanted = readings.length === bare.length ? bare : silent;
  if (readings.length !== wanted.length) return roles;
  return roles.map((role) => readings[wanted.indexOf(role)] ?? role);
}

/**
 * What columns hold where the same reading of one antenna stands there against several impedances, "SWR (50 ohm)" and "SWR (75 ohm)":
 * those against another one than the first, or than 50 Ω where that is among them, are left alone.
 */
function againstOneReference(columns: readonly TableColumn[], roles: readonly ColumnRole[]): readonly ColumnRole[] {
  const stated = columns.map(({ name }, c) =>
    isReading(roles[c] as ColumnRole) && /\d/.test(name) && (IN_OHMS.test(name) || IN_BRACKETS.test(name))
      ? referenceNamed(name)
      : null,
  );
  const references = [...new Set(stated.filter((ohms) => ohms !== null))];
  const [first, second] = references;
  const areTwins = roles.some(
    (role, c) =>
      stated[c] !== null && roles.some((other, o) => o !== c && stated[o] !== null && other.quantity === role.quantity),
  );
  if (second === undefined || !areTwins) return roles;
  const kept = references.includes(DEFAULT_REFERENCE_OHMS) ? DEFAULT_REFERENCE_OHMS : first;
  return roles.map((role, c) => (stated[c] === null || stated[c] === kept ? role : { quantity: "other" }));
}

/** A bare number behind a name may be that of an antenna. */
const IN_BRACKETS = /[([](?:25|50|60|75|100|150|200|300|450|600)[)\]]\s*$/;
const IN_OHMS = /\d ?(?:ohms?|[Ω\u2126]|R(?!\p{L}))|z[0o₀]/iu;

/** Whether words around the table say that impedances in it are multiples of the reference. */
const areNormalised = (texts: readonly string[], { quantity }: ColumnRole): boolean =>
  /^(?:resistance|reactance|impedance-magnitude|parallel-)/.test(quantity) &&
  texts.some((text) => /normali|multiples|divided|z ?\/ ?z/i.test(text) && NORMALISED.test(text));
const NORMALISED =
  /\bz ?= ?z ?\/ ?z ?[o0₀]|\bnormali[sz]ed (?:imped\w*|values?|data)|(?:imped\w+|values?|data|r and x|z) (?:are|is|have been)? ?normali[sz]ed|(?:multiples of|divided by|normali[sz]ed to) z ?[o0₀]|(?:multiples of|divided by) \d+(?:[.,]\d+)? ?(?:ohms?|Ω|\u2126)/i;
