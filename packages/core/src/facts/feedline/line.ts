import { add, type Complex, complex, divide, multiply } from "../../numbers/complex.js";
import { DECIBELS_PER_NEPER } from "../../numbers/constants.js";

/**
 * What a length of line does to a reflection, to an impedance and to power.
 *
 * Sources: the ARRL Antenna Book, 1994, p. 24-9, and the 1991 ARRL Handbook, p. 16-14, as two mailing-list posts quote them (the
 * books were not seen); D. M. Pozar, Microwave Engineering, 4th ed., example 2.2. Losses are positive.
 */

/** A length of line at one frequency. */
export interface LineSection {
  /** Loss one way with a matched end, dB, 0 or more */
  readonly matchedLossDb: number;
  /** Electrical length, degrees */
  readonly lengthDegrees: number;
}

/**
 * Γ at the antenna's end of a line from Γ at the analyser's end, both against the line's own impedance: turned by twice the
 * line's length and grown by twice its loss.
 *
 * Source: D. M. Pozar, Microwave Engineering, 4th ed., chapter 2 (from memory).
 */
export const reflectionAtLoad = (reflection: Complex, section: LineSection): Complex =>
  alongLine(reflection, section, 1);

/** Γ at the analyser's end of a line from Γ at the antenna's end; the inverse of {@link reflectionAtLoad}. */
export const reflectionAtInput = (reflection: Complex, section: LineSection): Complex =>
  alongLine(reflection, section, -1);

/** Γ is turned by twice the line's length, there and back, and shrinks or grows by twice its loss. */
function alongLine(reflection: Complex, { matchedLossDb, lengthDegrees }: LineSection, sign: 1 | -1): Complex {
  const size = 10 ** ((sign * matchedLossDb) / 10);
  const angle = (sign * 2 * lengthDegrees * Math.PI) / 180;
  return multiply(reflection, complex(size * Math.cos(angle), size * Math.sin(angle)));
}

/**
 * ρ at the antenna's end from ρ at the analyser's end: ρ · 10^(dB / 10), the loss there and back.
 *
 * @returns 0 or more; 1 or more means that the loss cannot be as high as that
 */
export const magnitudeAtLoad = (inputMagnitude: number, matchedLossDb: number): number =>
  inputMagnitude * 10 ** (matchedLossDb / 10);

/**
 * All that a line loses: its matched loss and what standing waves add. Exact for a line whose own impedance is real;
 * typical, not exact, for one shorter than about a quarter wave.
 *
 * With a = 10^(matched dB / 10): total = 10 log10((a² - ρ²) / (a (1 - ρ²))).
 *
 * Sources: the 1991 ARRL Handbook, p. 16-14, and the ARRL Antenna Book, 1994, p. 24-9, as two mailing-list posts quote them (the
 * books were not seen).
 *
 * @param matchedLossDb dB one way, 0 or more
 * @param loadMagnitude ρ at the antenna's end, 0 or more
 * @returns dB; Infinity where nothing is accepted (ρ ≥ 1)
 * @example
 * ```ts
 * import { reflectionMagnitudeFromSwr, totalLossDb } from "@feedpoint/core";
 *
 * totalLossDb(2, reflectionMagnitudeFromSwr(8)); // → 4.837
 * ```
 */
export function totalLossDb(matchedLossDb: number, loadMagnitude: number): number {
  if (loadMagnitude >= 1) return Number.POSITIVE_INFINITY;
  const a = 10 ** (matchedLossDb / 10);
  const reflected = loadMagnitude * loadMagnitude;
  return 10 * Math.log10((a * a - reflected) / (a * (1 - reflected)));
}

/**
 * The impedance that a line shows with a load at its end, and what it loses, from voltage and current at both ends: exact
 * for any line, also one whose own impedance is complex.
 *
 * With γl = loss in neper + j length in radians: V = V_L cosh γl + Z0 I_L sinh γl, I = I_L cosh γl + (V_L / Z0) sinh γl.
 *
 * Source: D. M. Pozar, Microwave Engineering, 4th ed., chapter 2 (from memory).
 *
 * @param load impedance at the far end, Ω
 * @param characteristicOhms the line's own impedance, Ω
 * @returns the impedance at the near end, Ω, and the loss in dB; the loss of a load without resistance is not a number
 */
export function throughLine(
  load: Complex,
  characteristicOhms: Complex,
  { matchedLossDb, lengthDegrees }: LineSection,
): { inputImpedance: Complex; totalLossDb: number } {
  const neper = matchedLossDb / DECIBELS_PER_NEPER;
  const angle = (lengthDegrees * Math.PI) / 180;
  const cosh = complex(Math.cosh(neper) * Math.cos(angle), Math.sinh(neper) * Math.sin(angle));
  const sinh = complex(Math.sinh(neper) * Math.cos(angle), Math.cosh(neper) * Math.sin(angle));
  // For a current of 1 A in the load.
  const voltage = add(multiply(load, cosh), multiply(characteristicOhms, sinh));
  const current = add(cosh, multiply(divide(load, characteristicOhms), sinh));
  const power = voltage.real * current.real + voltage.imaginary * current.imaginary;
  return { inputImpedance: divide(voltage, current), totalLossDb: 10 * Math.log10(power / load.real) };
}

/** Effective values on a line at a power. */
export interface LineStress {
  /** V between the conductors */
  readonly volts: number;
  /** A in each conductor */
  readonly amperes: number;
}

/**
 * The most voltage and current that can stand anywhere on a line, effective values.
 *
 * Forward and reflected wave add up to most at one of the ends; a line too short to hold such a place has less.
 *
 * @param powerW power that goes into the line, W
 * @param inputMagnitude ρ at the analyser's end against the line's impedance, below 1
 */
export function greatestStress(
  powerW: number,
  characteristicOhms: number,
  inputMagnitude: number,
  matchedLossDb: number,
): LineStress {
  const forwardVolts = Math.sqrt((powerW * characteristicOhms) / (1 - inputMagnitude * inputMagnitude));
  const shrink = 10 ** (-matchedLossDb / 20);
  const sum = Math.max(1 + inputMagnitude, shrink + inputMagnitude / shrink);
  const volts = forwardVolts * sum;
  return { volts, amperes: volts / characteristicOhms };
}

/** Places along a line are looked at in steps of this: between two of them a wave hides less than 0.1 %. */
const STEP_DEGREES = 4;

/**
 * The most voltage and current on a line of known length, effective values: both waves are added up place by place.
 *
 * @param powerW power that goes into the line, W
 * @param inputReflection Γ at the analyser's end against the line's impedance, its size below 1
 */
export function stressAlong(
  powerW: number,
  characteristicOhms: number,
  inputReflection: Complex,
  { matchedLossDb, lengthDegrees }: LineSection,
): LineStress {
  const { real, imaginary } = inputReflection;
  const forward = Math.sqrt((powerW * characteristicOhms) / (1 - real * real - imaginary * imaginary));
  const steps = Math.max(1, Math.ceil(lengthDegrees / STEP_DEGREES));
  let [volts, ohmsTimesAmperes] = [0, 0];
  for (let k = 0; k <= steps; k++) {
    const share = k / steps;
    const shrink = 10 ** ((-matchedLossDb * share) / 20);
    const turn = (2 * lengthDegrees * share * Math.PI) / 180;
    // The reflected wave at this place over the forward one there.
    const back = multiply(inputReflection, complex(Math.cos(turn) / shrink ** 2, Math.sin(turn) / shrink ** 2));
    volts = Math.max(volts, shrink * Math.hypot(1 + back.real, back.imaginary));
    ohmsTimesAmperes = Math.max(ohmsTimesAmperes, shrink * Math.hypot(1 - back.real, back.imaginary));
  }
  return { volts: forward * volts, amperes: (forward * ohmsTimesAmperes) / characteristicOhms };
}

/**
 * Share of the power into a line that comes out at its end: 10^(-dB / 10).
 *
 * @param lossDb all that is lost, dB, 0 or more; see {@link totalLossDb}
 * @returns 0 to 1
 */
export const deliveredFraction = (lossDb: number): number => 10 ** (-lossDb / 10);
