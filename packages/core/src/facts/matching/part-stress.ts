import { at } from "../../numbers/column.js";
import { complex } from "../../numbers/complex.js";
import { type LineStress, stressAlong } from "../feedline/line.js";
import { copyPlace, emptyPlace, magnitudeAt, type Place, passThrough, powerAt, propagation } from "./chain.js";
import type { MatchingPart, Stub } from "./matching-part.js";

/** What a part bears and burns at a power, at the frequency that is hardest on each, effective values. */
export interface PartStress extends LineStress {
  /** Turned into heat in it, W */
  readonly heatW: number;
}

const NONE: PartStress = { volts: 0, amperes: 0, heatW: 0 };

/**
 * The most that each part of a chain bears over some frequencies.
 *
 * @param antenna voltage and current at the antenna
 * @param chain from the antenna to the radio
 * @param counts which frequencies count
 * @param powerW what the radio puts in, W; peaks are √2 of the effective values told
 * @returns one for each part; zeros where no frequency counts
 */
export function stressOf(
  antenna: Place,
  chain: readonly MatchingPart[],
  frequencyHz: Float64Array,
  counts: (i: number) => boolean,
  powerW: number,
): readonly PartStress[] {
  const places = placesAlong(antenna, chain, frequencyHz);
  const input = places.at(-1) as Place;
  const stresses: PartStress[] = chain.map(() => NONE);
  for (let i = 0; i < frequencyHz.length; i++) {
    const into = powerAt(input, i);
    if (!counts(i) || !(into > 0)) continue;
    chain.forEach((part, k) => {
      const [behind, before] = [places[k] as Place, places[k + 1] as Place];
      const unit = partStress(part, behind, before, i, at(frequencyHz, i));
      const scale = Math.sqrt(powerW / into);
      const { volts, amperes, heatW } = stresses[k] ?? NONE;
      stresses[k] = {
        volts: Math.max(volts, scale * unit.volts),
        amperes: Math.max(amperes, scale * unit.amperes),
        heatW: Math.max(heatW, ((powerAt(before, i) - powerAt(behind, i)) * powerW) / into),
      };
    });
  }
  return stresses;
}

/** Voltage and current at the antenna and behind each part. */
function placesAlong(antenna: Place, chain: readonly MatchingPart[], frequencyHz: Float64Array): readonly Place[] {
  const places = [antenna];
  for (const part of chain) {
    const next = emptyPlace(frequencyHz.length);
    copyPlace(places.at(-1) as Place, next);
    passThrough(next, part, frequencyHz);
    places.push(next);
  }
  return places;
}

const voltsAt = (place: Place, i: number) => Math.hypot(at(place.voltsReal, i), at(place.voltsImaginary, i));
const amperesAt = (place: Place, i: number) => Math.hypot(at(place.amperesReal, i), at(place.amperesImaginary, i));

/** What a part bears at a frequency, for voltage and current as they stand in the chain. */
function partStress(part: MatchingPart, behind: Place, before: Place, i: number, frequencyHz: number): LineStress {
  switch (part.kind) {
    case "coil":
    case "capacitor":
      if (part.placing === "series")
        return { volts: difference("volts", behind, before, i), amperes: amperesAt(before, i) };
      return { volts: voltsAt(before, i), amperes: difference("amperes", behind, before, i) };
    case "transformer":
      return {
        volts: Math.max(voltsAt(behind, i), voltsAt(before, i)),
        amperes: Math.max(amperesAt(behind, i), amperesAt(before, i)),
      };
    case "line": {
      const { characteristicOhms } = part.feedline;
      const { neper, radian } = propagation(part.feedline, frequencyHz);
      return stressAlong(powerAt(before, i), characteristicOhms, reflectionAt(before, i, characteristicOhms), {
        matchedLossDb: (20 * neper) / Math.LN10,
        lengthDegrees: (180 * radian) / Math.PI,
      });
    }
    case "stub":
      return stubStress(part, voltsAt(before, i), frequencyHz);
  }
}

function difference(of: "volts" | "amperes", one: Place, other: Place, i: number): number {
  const [real, imaginary] = [`${of}Real`, `${of}Imaginary`] as const;
  return Math.hypot(at(other[real], i) - at(one[real], i), at(other[imaginary], i) - at(one[imaginary], i));
}

/** Γ seen from the radio; a wave that returns as strong as it goes is told just below 1. */
function reflectionAt(place: Place, i: number, ohms: number) {
  const [vr, vi] = [at(place.voltsReal, i), at(place.voltsImaginary, i)];
  const [ar, ai] = [at(place.amperesReal, i) * ohms, at(place.amperesImaginary, i) * ohms];
  const square = (vr + ar) ** 2 + (vi + ai) ** 2;
  const real = ((vr - ar) * (vr + ar) + (vi - ai) * (vi + ai)) / square;
  const imaginary = ((vi - ai) * (vr + ar) - (vr - ar) * (vi + ai)) / square;
  const shrink = Math.min(1, (1 - 1e-9) / magnitudeAt(place, i, ohms));
  return complex(shrink * real, shrink * imaginary);
}

/**
 * The most anywhere along a stub that has a voltage at its near end: at the place where its standing wave is greatest, or, in one too
 * short to hold such a place, at the nearer end. V = V_end cosh γx with an open end, I = (V_end / Z0) sinh γx; with a shorted one the
 * other way round.
 */
function stubStress({ end, feedline }: Stub, volts: number, frequencyHz: number): LineStress {
  const { neper, radian } = propagation(feedline, frequencyHz);
  const { characteristicOhms } = feedline;
  const size = (of: "cosh" | "sinh", share: number) => {
    const [a, b] = [share * neper, share * radian];
    return Math.sqrt(Math.sinh(a) ** 2 + (of === "cosh" ? Math.cos(b) ** 2 : Math.sin(b) ** 2));
  };
  // As often as the wave is greatest within the stub, and its near end.
  const steps = Math.max(1, Math.ceil(radian / (Math.PI / 32)));
  const most = (of: "cosh" | "sinh") => Math.max(...Array.from({ length: steps + 1 }, (_, k) => size(of, k / steps)));
  const [ofVolts, ofAmperes] = end === "open" ? (["cosh", "sinh"] as const) : (["sinh", "cosh"] as const);
  const atEnd = volts / size(ofVolts, 1);
  return { volts: atEnd * most(ofVolts), amperes: (atEnd * most(ofAmperes)) / characteristicOhms };
}
