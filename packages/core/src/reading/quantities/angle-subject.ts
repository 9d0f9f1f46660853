import { median } from "simple-statistics";
import { at } from "../../numbers/column.js";
import type { Complex } from "../../numbers/complex.js";
import { impedanceFromReflection } from "../../reflection/impedance.js";
import type { Quantity } from "../options/column-role.js";
import { DEFAULT_REFERENCE_OHMS, type ReadOptions } from "../options/read-options.js";
import { determinationsOf } from "./assemble.js";
import { type Determination, type NumberColumn, reflectionAt } from "./determination.js";
import { medianDisagreement } from "./disagreement.js";

/** Columns that give ρ alone. */
const SIZES: readonly Quantity[] = ["swr", "return-loss", "s11-db", "reflection-magnitude", "reflected-power"];
/** Columns beside which an angle is theirs, or is compared with what they give. */
export const WITH_AN_ANGLE: readonly Quantity[] = [
  "reflection",
  ...SIZES.filter((quantity) => quantity !== "swr"),
  "reactance",
  "reactance-magnitude",
  "impedance-magnitude",
];

/**
 * Whether an angle that does not say of what is that of Z. Beside R and X, or other columns that tell Γ with its phase, it is the
 * one that they have; beside |Z| and nothing else it must be; else it is the one with which |Z| agrees with the other columns.
 */
export function isAngleOfImpedance(
  angle: NumberColumn,
  columns: readonly NumberColumn[],
  { referenceOhms = DEFAULT_REFERENCE_OHMS }: ReadOptions,
): boolean {
  const signed = columns.map((column) =>
    column.quantity === "reactance-magnitude" ? { ...column, quantity: "reactance" as const } : column,
  );
  const known = determinationsOf(signed, referenceOhms).find(({ isVector }) => isVector);
  if (known !== undefined) {
    const reflection = medianTurn(angle, known, (gamma) => gamma);
    return medianTurn(angle, known, (gamma) => impedanceFromReflection(gamma, referenceOhms)) < reflection;
  }
  const size = columns.find(({ quantity }) => quantity === "impedance-magnitude");
  if (size === undefined) return false;
  const others = columns.filter(({ quantity }) => SIZES.includes(quantity));
  const ofImpedance = determinationsOf([size, { ...angle, quantity: "impedance-angle" }], referenceOhms)[0];
  const [other] = determinationsOf(others, referenceOhms);
  if (ofImpedance === undefined || other === undefined) return true;
  return medianDisagreement(ofImpedance, other) < AGREEMENT;
}

/** Median of how far the size of an angle lies from that of what known columns give. */
function medianTurn({ values, radians }: NumberColumn, known: Determination, of: (gamma: Complex) => Complex): number {
  const turns: number[] = [];
  for (let row = 0; row < values.length; row++) {
    const { real, imaginary } = of(reflectionAt(known, row));
    // Angles may run on beyond a turn, or have lost their sign.
    const stated = (at(values, row) * (radians ? 1 : Math.PI / 180)) % (2 * Math.PI);
    const size = Math.abs(stated) > Math.PI ? 2 * Math.PI - Math.abs(stated) : Math.abs(stated);
    const turn = Math.abs(size - Math.abs(Math.atan2(imaginary, real)));
    if (Number.isFinite(turn)) turns.push(turn);
  }
  return turns.length === 0 ? Number.POSITIVE_INFINITY : median(turns);
}

/** Difference in ρ within which two columns say the same. */
const AGREEMENT = 0.03;
