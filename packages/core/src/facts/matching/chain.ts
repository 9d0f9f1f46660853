import { at } from "../../numbers/column.js";
import { type Complex, complex, divide } from "../../numbers/complex.js";
import { SPEED_OF_LIGHT } from "../../numbers/constants.js";
import { type Feedline, matchedLossDb } from "../feedline/feedline.js";
import type { MatchingPart, Stub, Transformer } from "./matching-part.js";

/**
 * What a chain of parts makes of an antenna: voltage and current carried from its terminals through one part after the other.
 * Whatever is asked of the result (SWR, loss, stress on a part) follows from voltage and current before and behind each.
 *
 * Source: the chain (ABCD) matrices of series and shunt elements, line and transformer, D. M. Pozar, Microwave Engineering, 4th ed.,
 * section 4.4 (the number from memory). The tests hold it to vectors of an independent library.
 */

/** Voltage and current at one place of a chain, at each of some frequencies; current flows towards the antenna. */
export interface Place {
  readonly voltsReal: Float64Array;
  readonly voltsImaginary: Float64Array;
  readonly amperesReal: Float64Array;
  readonly amperesImaginary: Float64Array;
}

/** A place of a chain with nothing known of it yet, to be written on. */
export const emptyPlace = (frequencies: number): Place => ({
  voltsReal: new Float64Array(frequencies),
  voltsImaginary: new Float64Array(frequencies),
  amperesReal: new Float64Array(frequencies),
  amperesImaginary: new Float64Array(frequencies),
});

/** Writes one place over another of as many frequencies. */
export function copyPlace(from: Place, to: Place): void {
  to.voltsReal.set(from.voltsReal);
  to.voltsImaginary.set(from.voltsImaginary);
  to.amperesReal.set(from.amperesReal);
  to.amperesImaginary.set(from.amperesImaginary);
}

/** Voltage and current where Γ is known against an impedance: 1 + Γ and (1 - Γ) / Z0, so that an open end is a place like others. */
export function placeOfReflection(
  reflectionReal: Float64Array,
  reflectionImaginary: Float64Array,
  referenceOhms: number,
): Place {
  return {
    voltsReal: reflectionReal.map((real) => 1 + real),
    voltsImaginary: reflectionImaginary.slice(),
    amperesReal: reflectionReal.map((real) => (1 - real) / referenceOhms),
    amperesImaginary: reflectionImaginary.map((imaginary) => -imaginary / referenceOhms),
  };
}

/** Carries a place through a part, towards the radio. The place is written over. */
export function passThrough(place: Place, part: MatchingPart, frequencyHz: Float64Array): void {
  const values = valuesOf(part, frequencyHz);
  switch (part.kind) {
    case "coil":
    case "capacitor":
      if (part.placing === "series") passSeries(place, values);
      else passAcross(place, values);
      break;
    case "stub":
      passAcross(place, values);
      break;
    case "line":
      passLine(place, part.feedline.characteristicOhms, values);
      break;
    case "transformer":
      passTransformer(place, part);
      if (part.magnetisingHenry !== null) passAcross(place, coilAcross(part.magnetisingHenry, frequencyHz));
      if (part.leakageHenry !== null) passSeries(place, values);
      break;
  }
}

/** What has been reckoned of a part on a grid, for as long as both are in use: whoever tries parts passes each of them many times. */
const reckoned = new WeakMap<Float64Array, WeakMap<MatchingPart, Float64Array>>();

/** Of a part at each frequency its impedance, its admittance, or, of a line, cosh γl and sinh γl; real and imaginary parts by turns. */
function valuesOf(part: MatchingPart, frequencyHz: Float64Array): Float64Array {
  const onGrid = reckoned.get(frequencyHz) ?? new WeakMap<MatchingPart, Float64Array>();
  const known = onGrid.get(part);
  if (known !== undefined) return known;
  const values = reckon(part, frequencyHz);
  onGrid.set(part, values);
  reckoned.set(frequencyHz, onGrid);
  return values;
}

function reckon(part: MatchingPart, frequencyHz: Float64Array): Float64Array {
  switch (part.kind) {
    case "coil": {
      const { inductanceHenry, q } = part;
      return part.placing === "series"
        ? ofFrequency(frequencyHz, (angular) => [(angular * inductanceHenry) / q, angular * inductanceHenry])
        : coilAcross(inductanceHenry, frequencyHz, q);
    }
    case "capacitor": {
      const { capacitanceFarad, q } = part;
      return part.placing === "series"
        ? ofFrequency(frequencyHz, (angular) => [
            1 / (angular * capacitanceFarad * q),
            -1 / (angular * capacitanceFarad),
          ])
        : ofFrequency(frequencyHz, (angular) => [(angular * capacitanceFarad) / q, angular * capacitanceFarad]);
    }
    case "transformer":
      return ofFrequency(frequencyHz, (angular) => [0, angular * (part.leakageHenry ?? 0)]);
    case "line":
      return hyperbolicOf(part.feedline, frequencyHz);
    case "stub":
      return stubAcross(part, frequencyHz);
  }
}

/** Pairs of real and imaginary parts, by angular frequency. */
function ofFrequency(
  frequencyHz: Float64Array,
  value: (angular: number, i: number) => readonly [number, number],
): Float64Array {
  const values = new Float64Array(2 * frequencyHz.length);
  for (let i = 0; i < frequencyHz.length; i++) {
    const [real, imaginary] = value(2 * Math.PI * at(frequencyHz, i), i);
    values[2 * i] = real;
    values[2 * i + 1] = imaginary;
  }
  return values;
}

/** Admittance of a coil whose resistance is its reactance over Q. */
const coilAcross = (henry: number, frequencyHz: Float64Array, q = Number.POSITIVE_INFINITY): Float64Array =>
  ofFrequency(frequencyHz, (angular) => {
    const size = 1 / (angular * henry * (1 + 1 / (q * q)));
    return [size / q, -size];
  });

/** cosh γl and sinh γl of a line. */
function hyperbolicOf(feedline: Feedline, frequencyHz: Float64Array): Float64Array {
  const values = new Float64Array(4 * frequencyHz.length);
  for (let i = 0; i < frequencyHz.length; i++) {
    const { neper, radian } = propagation(feedline, at(frequencyHz, i));
    const cosh = Math.cosh(neper);
    const sinh = Math.sinh(neper);
    values[4 * i] = cosh * Math.cos(radian);
    values[4 * i + 1] = sinh * Math.sin(radian);
    values[4 * i + 2] = sinh * Math.cos(radian);
    values[4 * i + 3] = cosh * Math.sin(radian);
  }
  return values;
}

/** Admittance of an open line tanh γl / Z0, of a shorted one 1 / (Z0 tanh γl). */
function stubAcross({ end, feedline }: Stub, frequencyHz: Float64Array): Float64Array {
  const functions = hyperbolicOf(feedline, frequencyHz);
  return ofFrequency(frequencyHz, (_, i) => {
    const cosh = complex(at(functions, 4 * i), at(functions, 4 * i + 1));
    const sinh = complex(at(functions, 4 * i + 2), at(functions, 4 * i + 3));
    const { real, imaginary } = end === "open" ? divide(sinh, cosh) : divide(cosh, sinh);
    return [real / feedline.characteristicOhms, imaginary / feedline.characteristicOhms];
  });
}

/** V grows by Z I. */
const passSeries = ({ voltsReal, voltsImaginary, amperesReal, amperesImaginary }: Place, impedance: Float64Array) =>
  addProduct(voltsReal, voltsImaginary, impedance, amperesReal, amperesImaginary);

/** I grows by Y V. */
const passAcross = ({ voltsReal, voltsImaginary, amperesReal, amperesImaginary }: Place, admittance: Float64Array) =>
  addProduct(amperesReal, amperesImaginary, admittance, voltsReal, voltsImaginary);

function addProduct(
  sumReal: Float64Array,
  sumImaginary: Float64Array,
  factor: Float64Array,
  ofReal: Float64Array,
  ofImaginary: Float64Array,
): void {
  for (let i = 0; i < sumReal.length; i++) {
    const real = at(factor, 2 * i);
    const imaginary = at(factor, 2 * i + 1);
    const x = at(ofReal, i);
    const y = at(ofImaginary, i);
    sumReal[i] = at(sumReal, i) + real * x - imaginary * y;
    sumImaginary[i] = at(sumImaginary, i) + real * y + imaginary * x;
  }
}

function passTransformer({ voltsReal, voltsImaginary, amperesReal, amperesImaginary }: Place, { ratio }: Transformer) {
  const turns = Math.sqrt(ratio);
  for (let i = 0; i < voltsReal.length; i++) {
    voltsReal[i] = at(voltsReal, i) / turns;
    voltsImaginary[i] = at(voltsImaginary, i) / turns;
    amperesReal[i] = at(amperesReal, i) * turns;
    amperesImaginary[i] = at(amperesImaginary, i) * turns;
  }
}

/** V = V_L cosh γl + Z0 I_L sinh γl, I = I_L cosh γl + (V_L / Z0) sinh γl. */
function passLine(place: Place, ohms: number, functions: Float64Array): void {
  const { voltsReal, voltsImaginary, amperesReal, amperesImaginary } = place;
  for (let i = 0; i < voltsReal.length; i++) {
    const coshReal = at(functions, 4 * i);
    const coshImaginary = at(functions, 4 * i + 1);
    const sinhReal = at(functions, 4 * i + 2);
    const sinhImaginary = at(functions, 4 * i + 3);
    const vr = at(voltsReal, i);
    const vi = at(voltsImaginary, i);
    const ar = at(amperesReal, i) * ohms;
    const ai = at(amperesImaginary, i) * ohms;
    voltsReal[i] = vr * coshReal - vi * coshImaginary + ar * sinhReal - ai * sinhImaginary;
    voltsImaginary[i] = vr * coshImaginary + vi * coshReal + ar * sinhImaginary + ai * sinhReal;
    amperesReal[i] = (ar * coshReal - ai * coshImaginary + vr * sinhReal - vi * sinhImaginary) / ohms;
    amperesImaginary[i] = (ar * coshImaginary + ai * coshReal + vr * sinhImaginary + vi * sinhReal) / ohms;
  }
}

/** Loss in neper and length in radian of a line. */
export function propagation(feedline: Feedline, frequencyHz: number): { neper: number; radian: number } {
  return {
    neper: (matchedLossDb(feedline, frequencyHz) * Math.LN10) / 20,
    radian: (2 * Math.PI * frequencyHz * feedline.lengthM) / (feedline.velocityFactor * SPEED_OF_LIGHT),
  };
}

/** Power that flows towards the antenna, W for effective values. */
export const powerAt = (place: Place, i: number): number =>
  at(place.voltsReal, i) * at(place.amperesReal, i) + at(place.voltsImaginary, i) * at(place.amperesImaginary, i);

/** The impedance of what lies behind, Ω. */
export const impedanceAt = (place: Place, i: number): Complex =>
  divide(
    complex(at(place.voltsReal, i), at(place.voltsImaginary, i)),
    complex(at(place.amperesReal, i), at(place.amperesImaginary, i)),
  );

/** ρ against an impedance; above 1 where power flows back. */
export function magnitudeAt(place: Place, i: number, referenceOhms: number): number {
  const vr = at(place.voltsReal, i);
  const vi = at(place.voltsImaginary, i);
  const ar = at(place.amperesReal, i) * referenceOhms;
  const ai = at(place.amperesImaginary, i) * referenceOhms;
  const back = (vr - ar) * (vr - ar) + (vi - ai) * (vi - ai);
  return Math.sqrt(back / ((vr + ar) * (vr + ar) + (vi + ai) * (vi + ai)));
}
