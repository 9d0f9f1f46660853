/** What a quantity is: how it is named, printed and read back. */
import { abs, type Complex, gammaOf } from "./antenna.js";
import { words } from "./random.js";

export interface Unit {
  text: string;
  /** What a number in plain units (ohm, siemens, degrees, dB, watts, parts of one) is multiplied by. */
  scale: number;
}

export interface Column {
  names: readonly string[];
  units: readonly Unit[];
  /** Decimals at scale 1, fewest and most. */
  decimals: readonly [number, number];
  /** The unit must be told, or the number cannot be read. */
  unitNeeded: boolean;
}

/** One column or two that together tell a reflection. */
export interface Kind {
  id: string;
  first: Column;
  second: Column | null;
  /** Γ with its phase; otherwise only its magnitude, in `re`. */
  vector: boolean;
  encode: (z: Complex, reference: number) => readonly number[];
  decode: (first: number, second: number, reference: number) => Complex;
}

const unit = (text: string, scale = 1): Unit => ({ text, scale });

/** Units as they stand in headers; one that stands twice is as much more usual. */
export const OHM = [
  unit("ohm"),
  unit("ohms"),
  unit("Ω"),
  unit("Ohm"),
  unit("\u2126"),
  unit("kΩ", 1e-3),
  unit("kohm", 1e-3),
];
const RADIAN = Math.PI / 180;
export const DEGREE = [
  unit("deg"),
  unit("°"),
  unit("degrees"),
  unit("deg."),
  unit("rad", RADIAN),
  unit("radians", RADIAN),
];
export const SIEMENS = [unit("mS", 1e3), unit("S"), unit("µS", 1e6), unit("millisiemens", 1e3), unit("mS", 1e3)];
export const DB_ONLY = [unit("dB")];
export const DECIBEL = [...Array.from({ length: 6 }, () => unit("dB")), unit("db"), unit("decibel")];
export const PERCENT = [unit("%", 100), unit("percent", 100)];
export const WATT = [unit("W"), unit("watts"), unit("mW", 1e3)];
export const NO_UNIT = [unit("")];

/** A column whose unit may be left out: it is the usual one, or there is none. */
export function column(names: string, units: readonly Unit[], decimals: readonly [number, number]): Column {
  return { names: words(names), units, decimals, unitNeeded: false };
}

/** A column that nobody could read without its unit. */
export function unitColumn(names: string, units: readonly Unit[], decimals: readonly [number, number]): Column {
  return { ...column(names, units, decimals), unitNeeded: true };
}

/** |Γ| of an impedance. */
export const rhoAt = (z: Complex, reference: number): number => abs(gammaOf(z, reference));

/** A quantity without a phase. */
export function scalar(
  id: string,
  columns: readonly [Column, Column?],
  encode: (rho: number, z: Complex) => readonly number[],
  decode: (first: number, second: number, reference: number) => number,
): Kind {
  const [first, second = null] = columns;
  return {
    id,
    first,
    second,
    vector: false,
    encode: (z, reference) => encode(rhoAt(z, reference), z),
    decode: (...printed) => ({ re: Math.min(1, Math.max(0, decode(...printed))), im: 0 }),
  };
}

/** A pair that tells Γ with its phase. */
export function vector(
  id: string,
  [first, second]: readonly [Column, Column],
  encode: (gamma: Complex, z: Complex) => readonly number[],
  decode: (first: number, second: number, reference: number) => Complex,
): Kind {
  return { id, first, second, vector: true, encode: (z, reference) => encode(gammaOf(z, reference), z), decode };
}

/** The angle of a number in degrees, and a number from its magnitude and that. */
export const degrees = (a: Complex): number => (Math.atan2(a.im, a.re) * 180) / Math.PI;
