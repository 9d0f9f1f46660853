import type { NumbersNeeded } from "./smooth-change.js";
import { CLEARLY } from "./thresholds.js";

/** What an explanation may leave that is not quite the truth, and still be sure. */
export interface Nearly {
  /** Greatest share of the difference */
  readonly share: number;
  /** Fewest numbers that a smooth change needs beyond its own */
  readonly spare: number;
}

/** An explanation of a difference, by how much it explains for how little. */
export interface Fitted {
  /** Real numbers that it is free in */
  readonly numbers: number;
  /** Root mean square of what it leaves */
  readonly residual: number;
  /** It is sure as well where it leaves more than noise, but little for the numbers it has to spare; null: it must leave nothing */
  readonly nearly: Nearly | null;
}

/** Leaving more than this share of a difference, and more than is overlooked anyway, explains nothing. */
const LITTLE = 0.2;
/** Between two explanations of which one leaves up to this many times what the other does, nobody can choose. */
export const ALIKE = 1.25;

/**
 * Whether what is left of a difference is so little that it is explained, surely or not.
 *
 * @param enough what an explanation may leave over
 */
export const explains = ({ residual }: Pick<Fitted, "residual">, difference: number, enough: number): boolean =>
  residual < CLEARLY * difference && (residual <= enough || residual <= LITTLE * difference);

/** A cause must need this many numbers fewer than any smooth change that leaves as little. */
const LEAST_SPARE = 3;
/** What real lines and parts may leave, which are not quite of their impedance and value. */
export const OF_PARTS: Nearly = { share: 0.2, spare: 8 };

/** How explanations of one difference stand against any smooth change. */
export interface AgainstSmooth {
  /** Numbers that a smooth change needs beyond those of an explanation, to leave as little */
  readonly spareOf: (fitted: Fitted) => number;
  /** Leaves nothing but noise, with numbers to spare */
  readonly isExact: (fitted: Fitted) => boolean;
  /** Leaves little of the difference, with more numbers to spare */
  readonly isNear: (fitted: Fitted) => boolean;
}

/** @param tight what is noise, root mean square */
export function againstSmooth(numbersNeeded: NumbersNeeded, difference: number, tight: number): AgainstSmooth {
  const spareOf = ({ residual, numbers }: Fitted) => numbersNeeded(Math.max(residual, tight)) - numbers;
  return {
    spareOf,
    isExact: (fitted) => fitted.residual <= tight && spareOf(fitted) >= LEAST_SPARE,
    isNear: (fitted) =>
      fitted.nearly !== null &&
      fitted.residual <= fitted.nearly.share * difference &&
      spareOf(fitted) >= fitted.nearly.spare,
  };
}
