import type { Pair } from "../sweeps.js";
import { add, magnitude, multiply } from "./complex.js";
import { LIGHT } from "./lines.js";
import type { Random } from "./random.js";
import type { ChangeFacts } from "./truth.js";

/** Γ at one frequency in Hz. */
export interface Reflection {
  readonly hz: number;
  readonly gamma: Pair;
}

/** What a calibration leaves over: a directivity vector that turns with frequency, and a shift of the plane. */
interface Leftover {
  readonly size: number;
  readonly phase: number;
  /** Radians per 30 MHz. */
  readonly turn: number;
  /** Metres of air. */
  readonly shiftM: number;
}

function misread({ size, phase, turn, shiftM }: Leftover, { hz, gamma }: Reflection): Pair {
  const angle = (-4 * Math.PI * hz * shiftM) / LIGHT;
  const now = phase + (turn * hz) / 3e7;
  return add([size * Math.cos(now), size * Math.sin(now)], multiply(gamma, [Math.cos(angle), Math.sin(angle)]));
}

/**
 * The same reflections after another calibration. An analyser's user does not accept |Γ| above 1.02 with its noise: the
 * errors are then drawn again, and get smaller as a last resort.
 */
export function calibratedAgain(
  parts: readonly (readonly Reflection[])[],
  sigma: number,
  random: Random,
): { readonly parts: readonly (readonly Pair[])[]; readonly facts: ChangeFacts } {
  const limit = Math.max(1.02 - 4.5 * sigma, 0);
  const shiftM = random.sign() * random.range(0, 0.15);
  const turn = random.range(-1.5, 1.5);
  for (let tries = 0; ; tries++) {
    const floorDb = tries < 40 ? random.range(30, 46) : 46 + (tries - 40) * 2;
    const size = 10 ** (-floorDb / 20);
    const phase = random.range(0, 2 * Math.PI);
    const seen = parts.map((part) => part.map((one) => misread({ size, phase, turn, shiftM }, one)));
    if (tries <= 70 && seen.some((part) => part.some((gamma) => magnitude(gamma) > limit))) continue;
    const facts: ChangeFacts = {
      directivityDb: -20 * Math.log10(size),
      directivityReal: size * Math.cos(phase),
      directivityImaginary: size * Math.sin(phase),
      directivityTurnRadAt30MHz: turn,
      planeShiftM: shiftM,
      redraws: tries,
    };
    return { parts: seen, facts };
  }
}
