import { lookUp } from "../../input/look-up.js";

/** A unit that stands beside a number in its cell. */
export interface CellUnit {
  /** As the name of a column states it */
  readonly name: string;
  /** `other`: none that a sweep's quantities have */
  readonly kind:
    | "frequency"
    | "resistance"
    | "conductance"
    | "decibel"
    | "degrees"
    | "radians"
    | "gons"
    | "percent"
    | "other";
  /** Of ten, to the unit without a prefix */
  readonly power: number;
}

const FREQUENCIES = { Hz: 0, kHz: 3, MHz: 6, GHz: 9 };
const UNITS: Readonly<Record<string, CellUnit>> = Object.fromEntries(
  [
    ...Object.entries(FREQUENCIES).map(([name, power]): CellUnit => ({ name, kind: "frequency", power })),
    { name: "ohm", kind: "resistance", power: 0 } as const,
    { name: "kohm", kind: "resistance", power: 3 } as const,
    { name: "mS", kind: "conductance", power: -3 } as const,
    { name: "dB", kind: "decibel", power: 0 } as const,
    { name: "deg", kind: "degrees", power: 0 } as const,
    { name: "rad", kind: "radians", power: 0 } as const,
    { name: "gon", kind: "gons", power: 0 } as const,
    { name: "%", kind: "percent", power: 0 } as const,
  ].map((unit) => [unit.name.toLowerCase(), unit]),
);
const DEGREES = ["°", "deg.", "degs", "degree", "degrees", "grad"];
/** Pattern of a unit that a quantity of a sweep may have. */
export const UNIT = "[kmg]?hz|k?ohms?|k?[Ω\u2126]|ms|db|°(?![CF])|deg(?:rees?|s|\\.)?|rad(?:ians?)?|gon|%";
/** Units beside numbers that no column of a sweep needs. */
export const OTHER_UNIT =
  "[mk]?w(?:atts?)?|[mk]?v|m?a|[°º][CF]|dbm|[cm]?m|ft|s|[np]f|[nuµ]h|mbar|hpa|km\\/h|m\\/s|kts?";
/** The unit that words matched by these patterns mean. */
export function unitOf(unit: string | undefined, other: string | undefined): CellUnit | null {
  if (other !== undefined) return { name: other, kind: "other", power: 0 };
  if (unit === undefined) return null;
  const word = unit.toLowerCase().replace(/[ωΩ\u2126]|ohms$/u, "ohm");
  return lookUp(UNITS, DEGREES.includes(word) ? "deg" : word.replace(/^radians?$/, "rad")) ?? null;
}
