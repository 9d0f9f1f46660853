/** A complex number in one cell; its parts with a decimal point. */
export interface ComplexCell {
  readonly kind: "complex";
  readonly parts: readonly [string, string];
  /** Magnitude and angle, and not real and imaginary part */
  readonly isPolar: boolean;
}

const PART = "(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)(?:e[+-]?\\d+)?";
const RECTANGULAR = new RegExp(`^([+-]?${PART})([+-])(?:[ij][*·]?(${PART})|(${PART})[*·]?[ij])$`, "i");
const ANGLES = [`(?:∠|/_|<)([+-]?${PART})(?:°|deg)?`, `@([+-]?${PART})(?:°|deg)?`, `(?:at|/)([+-]?${PART})(?:°|deg)`];
const POLAR = new RegExp(`^([+]?${PART})(?:${ANGLES.join("|")})$`, "i");
/** "(40.1, -12)", "complex(40.1, -12)" */
const PAIR = /^(?:complex)?\(\s*([+-]?\d+(?:\.\d+)?)\s*[,;]\s*([+-]?\d+(?:\.\d+)?)\s*\)$/;
/** Something like "j0.17" or "0.17i", which only a complex number has. */
export const HAS_IMAGINARY = /[+−-]\s*[ij]\s*\*?[\d.]|[\d.]\s*\*?[ij](?![\p{L}\d])/iu;

/** A complex number: "0.19-0.17i", "(0.19 - j0.17)", "40+j12 ohm", "0.3∠-60°". */
export function complexCell(cell: string): ComplexCell | null {
  if (!/\d/.test(cell) || !/[ij∠@<_(/]|\bat\b/i.test(cell)) return null;
  const bare = cell
    .replace(/\s*(?:ohms?|[ΩΩ])$/iu, "")
    .replace(/\s/g, "")
    .replace(/[−–]/g, "-")
    .replace(/^\((.*)\)$/, "$1");
  const polar = cell
    .replace(/\s*(?:ohms?|[ΩΩ])\s*(?=[∠@])/iu, "")
    .replace(/\s/g, "")
    .replace(/[−–]/g, "-");
  const [, magnitude, signed, marked, worded] = POLAR.exec(polar) ?? [];
  const angle = signed ?? marked ?? worded;
  if (magnitude !== undefined && angle !== undefined) {
    return { kind: "complex", parts: [magnitude.replace(",", "."), angle.replace(",", ".")], isPolar: true };
  }
  const pair = PAIR.exec(cell);
  if (pair !== null) return { kind: "complex", parts: [pair[1] ?? "", pair[2] ?? ""], isPolar: false };
  const [, real, sign = "", after, before] = RECTANGULAR.exec(bare) ?? [];
  const size = after ?? before;
  if (real === undefined || size === undefined) return null;
  const imaginary = sign === "-" ? `-${size}` : size;
  return { kind: "complex", parts: [real.replace(",", "."), imaginary.replace(",", ".")], isPolar: false };
}
