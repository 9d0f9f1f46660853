import { at } from "../../numbers/column.js";
import { returnLossDb } from "../../reflection/swr.js";
import type { Sweep } from "../../sweep/sweep.js";

/** Half the return loss of a line alone lies this close to its fit, root mean square: dB, or a share of its mean (our own choice). */
const GREATEST_SCATTER_DB = 0.7;
const GREATEST_SCATTER_SHARE = 0.3;

/** The loss of a line alone, told from all of a sweep. */
export interface FittedLoss {
  /** One way, dB */
  readonly lossDbAt: (frequencyHz: number) => number;
  /** Whether it grows evenly, as that of a line with its end open or shorted does and that of an antenna does not */
  readonly isEven: boolean;
}

/**
 * Loss as k1 √f + k2 f, fitted by least squares to half the return loss: what connectors and a characteristic impedance a
 * little beside the reference make of single samples swings around it.
 *
 * @param end Γ of the far end, which is real
 */
export function fittedLoss({ frequencyHz, reflectionMagnitude }: Sweep, end: number): FittedLoss {
  const ofEnd = returnLossDb(Math.abs(end));
  const seenDb = reflectionMagnitude.map((magnitude) => (returnLossDb(magnitude) - ofEnd) / 2);
  let aa = 0;
  let ab = 0;
  let bb = 0;
  let ay = 0;
  let by = 0;
  for (let i = 0; i < frequencyHz.length; i++) {
    const megahertz = at(frequencyHz, i) / 1e6;
    const root = Math.sqrt(megahertz);
    aa += megahertz;
    ab += root * megahertz;
    bb += megahertz * megahertz;
    ay += root * at(seenDb, i);
    by += megahertz * at(seenDb, i);
  }
  const determinant = aa * bb - ab * ab;
  const both = { k1: (ay * bb - by * ab) / determinant, k2: (by * aa - ay * ab) / determinant };
  // One of the two alone, where both together would make one of them a gain.
  const { k1, k2 } = both.k2 < 0 ? { k1: ay / aa, k2: 0 } : both.k1 >= 0 ? both : { k1: 0, k2: by / bb };
  const lossDbAt = (frequency: number) => k1 * Math.sqrt(frequency / 1e6) + (k2 * frequency) / 1e6;
  const square = seenDb.reduce((sum, lossDb, i) => sum + (lossDb - lossDbAt(at(frequencyHz, i))) ** 2, 0);
  const meanDb = seenDb.reduce((sum, lossDb) => sum + lossDb, 0) / seenDb.length;
  const scatterDb = Math.sqrt(square / seenDb.length);
  return { lossDbAt, isEven: scatterDb <= Math.max(GREATEST_SCATTER_DB, GREATEST_SCATTER_SHARE * meanDb) };
}
