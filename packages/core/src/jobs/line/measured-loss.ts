import { at, type Column, medianOf } from "../../numbers/column.js";
import { leastBetween } from "../../numbers/search.js";
import { returnLossDb } from "../../reflection/swr.js";
import type { Sweep } from "../../sweep/sweep.js";

/** Half the return loss of a line alone lies this close to its fit, root mean square: dB, or a share of its mean (our own choice). */
const GREATEST_SCATTER_DB = 0.7;
const GREATEST_SCATTER_SHARE = 0.3;

/** Loss that does not grow with frequency is no line's from this on, dB, and from this share of the loss at 10 MHz on (our own choice). */
const LEAST_FLAT_DB = 0.12;
const LEAST_FLAT_SHARE = 0.12;
/** It leaves so many times less of the squares than noise would by chance. */
const FLAT_RATIO = 30;

/** The loss of a line alone, told from all of a sweep. */
export interface FittedLoss {
  /** One way, dB */
  readonly lossDbAt: (frequencyHz: number) => number;
  /** What is lost beside it alike at all frequencies, as at a poor short, a plug or a joint; dB one way, 0 where nothing is */
  readonly flatDb: number;
  /** Whether it grows evenly, as that of a line with its end open or shorted does and that of an antenna does not */
  readonly isEven: boolean;
}

/**
 * Loss as k1 √f + k2 f, fitted by least squares to half the return loss: what connectors and a characteristic impedance a
 * little beside the reference make of single samples swings around it. Where a loss that is the same at all frequencies explains far
 * more, it is told apart.
 *
 * @param end Γ of the far end, which is real
 */
export function fittedLoss({ frequencyHz, reflectionMagnitude }: Sweep, end: number): FittedLoss {
  const ofEnd = returnLossDb(Math.abs(end));
  const seenDb = reflectionMagnitude.map((magnitude) => (returnLossDb(magnitude) - ofEnd) / 2);
  const bare = growingLoss(frequencyHz, seenDb, 0);
  const flat = flatBeside(frequencyHz, seenDb);
  const withFlat = growingLoss(frequencyHz, seenDb, flat);
  const chance = withFlat.squares / Math.max(1, seenDb.length - 3);
  const isFlat =
    flat > Math.max(LEAST_FLAT_DB, LEAST_FLAT_SHARE * withFlat.lossDbAt(1e7)) &&
    bare.squares - withFlat.squares > FLAT_RATIO * chance;
  const { lossDbAt, squares } = isFlat ? withFlat : bare;
  const meanDb = seenDb.reduce((sum, lossDb) => sum + lossDb, 0) / seenDb.length;
  const scatterDb = Math.sqrt(squares / seenDb.length);
  return {
    lossDbAt,
    flatDb: isFlat ? flat : 0,
    isEven: scatterDb <= Math.max(GREATEST_SCATTER_DB, GREATEST_SCATTER_SHARE * meanDb),
  };
}

/** The loss alike at all frequencies that leaves the least, dB; 0 or more. */
function flatBeside(frequencyHz: Column, seenDb: Column): number {
  const most = Math.max(0, medianOf(Float64Array.from(seenDb)));
  return most === 0
    ? 0
    : leastBetween((flatDb) => growingLoss(frequencyHz, seenDb, flatDb).squares, 0, most, FLAT_TOLERANCE_DB);
}

const FLAT_TOLERANCE_DB = 1e-4;

/** Least squares of k1 √f + k2 f, neither of them a gain, to a loss less what is alike at all frequencies. */
function growingLoss(frequencyHz: Column, seenDb: Column, flatDb: number) {
  let aa = 0;
  let ab = 0;
  let bb = 0;
  let ay = 0;
  let by = 0;
  for (let i = 0; i < frequencyHz.length; i++) {
    const megahertz = at(frequencyHz, i) / 1e6;
    const root = Math.sqrt(megahertz);
    const lossDb = at(seenDb, i) - flatDb;
    aa += megahertz;
    ab += root * megahertz;
    bb += megahertz * megahertz;
    ay += root * lossDb;
    by += megahertz * lossDb;
  }
  const determinant = aa * bb - ab * ab;
  const both = { k1: (ay * bb - by * ab) / determinant, k2: (by * aa - ay * ab) / determinant };
  // One of the two alone, where both together would make one of them a gain.
  const { k1, k2 } = both.k2 < 0 ? { k1: ay / aa, k2: 0 } : both.k1 >= 0 ? both : { k1: 0, k2: by / bb };
  const lossDbAt = (frequency: number) => k1 * Math.sqrt(frequency / 1e6) + (k2 * frequency) / 1e6;
  const squares = seenDb.reduce((sum, lossDb, i) => sum + (lossDb - flatDb - lossDbAt(at(frequencyHz, i))) ** 2, 0);
  return { lossDbAt, squares };
}
