import type { Part } from "../../bands/parts.js";
import { isVectorCurve, reflectionAt, reflectionMagnitudeAt } from "../../curve/curve.js";
import { type Feedline, sectionAt } from "../../facts/feedline/feedline.js";
import { reflectionAtLoad } from "../../facts/feedline/line.js";
import { type Place, placeOfReflection, powerAt } from "../../facts/matching/chain.js";
import { at } from "../../numbers/column.js";
import { add, type Complex, complex } from "../../numbers/complex.js";
import { changeReference } from "../../reflection/impedance.js";
import { rangeOf, type WishGrid } from "./wish-grid.js";

/** What is known of an antenna: its curves, and the line that they were swept through. */
export interface Antenna {
  /** Curves in the order in which they answer; all of them with phase, or all without */
  readonly parts: readonly Part[];
  /** Between analyser and antenna; null: what is told is told at the analyser's end */
  readonly feedline: Feedline | null;
  readonly hasPhase: boolean;
}

/** The curves of a deployment that an antenna is known by: those with phase where there are any. */
export function antennaOf(parts: readonly Part[], feedline: Feedline | null): Antenna {
  const curves = parts.filter(({ knows }) => knows === "curve");
  const withPhase = curves.filter(({ analysis }) => isVectorCurve(analysis.curve));
  const hasPhase = withPhase.length > 0;
  const used = hasPhase ? withPhase : curves;
  // Without phase a line of another impedance cannot be taken out.
  const isOfLine = ({ analysis }: Part) => analysis.curve.sweep.referenceOhms === feedline?.characteristicOhms;
  return { parts: used, feedline: hasPhase || used.every(isOfLine) ? feedline : null, hasPhase };
}

/** How an antenna may differ from what its sweep says. */
export interface Deviation {
  /** Added to Γ at the analyser */
  readonly reflection: Complex;
  /** The factor on its resistance */
  readonly resistance: number;
}

export const NO_DEVIATION: Deviation = { reflection: complex(0, 0), resistance: 1 };

/**
 * Voltage and current at the antenna.
 *
 * @param stretch the factor on a frequency, Hz: where a wire of the old length is what the new one is there
 * @param deviations one for each wish
 * @returns NaN where the sweep does not reach, and where the line alone explains what came back
 */
export function placeAtAntenna(
  antenna: Antenna,
  grid: WishGrid,
  stretch: (frequencyHz: number) => number,
  deviations: readonly Deviation[],
): Place {
  const { feedline } = antenna;
  const { frequencyHz } = grid;
  const ohms = feedline?.characteristicOhms ?? antenna.parts[0]?.analysis.curve.sweep.referenceOhms ?? 50;
  const real = new Float64Array(frequencyHz.length);
  const imaginary = new Float64Array(frequencyHz.length);
  deviations.forEach(({ reflection }, wish) => {
    const [start, end] = rangeOf(grid, wish);
    for (let i = start; i < end; i++) {
      const frequency = at(frequencyHz, i);
      const hz = frequency * stretch(frequency);
      const seen = seenAt(antenna, hz, ohms);
      const moved = seen && add(seen, reflection);
      const load = moved && feedline ? reflectionAtLoad(moved, sectionAt(feedline, hz)) : moved;
      const isPassive = load !== null && load.real * load.real + load.imaginary * load.imaginary < 1;
      real[i] = isPassive ? load.real : Number.NaN;
      imaginary[i] = isPassive ? load.imaginary : Number.NaN;
    }
  });
  const place = placeOfReflection(real, imaginary, ohms);
  deviations.forEach(({ resistance }, wish) => {
    if (resistance !== 1) multiplyResistance(place, resistance, ...rangeOf(grid, wish));
  });
  return place;
}

/** Γ at the analyser against an impedance, by the first part that knows it; without phase ρ alone. */
function seenAt({ parts, hasPhase }: Antenna, hz: number, ohms: number): Complex | null {
  for (const { analysis } of parts) {
    const { curve } = analysis;
    const reflection = hasPhase ? reflectionAt(curve, hz) : complex(reflectionMagnitudeAt(curve, hz), 0);
    if (reflection !== null && !Number.isNaN(reflection.real))
      return changeReference(reflection, curve.sweep.referenceOhms, ohms);
  }
  return null;
}

/** Multiplies the antenna's resistance from one frequency to another, its reactance kept. */
function multiplyResistance(place: Place, factor: number, start: number, end: number): void {
  for (let i = start; i < end; i++) {
    const real = at(place.amperesReal, i);
    const imaginary = at(place.amperesImaginary, i);
    const more = ((factor - 1) * powerAt(place, i)) / (real * real + imaginary * imaginary);
    place.voltsReal[i] = at(place.voltsReal, i) + more * real;
    place.voltsImaginary[i] = at(place.voltsImaginary, i) + more * imaginary;
  }
}
