import { GAUSS_NODES } from "../../numbers/gram-polynomials.js";
import { emptySystem, type LinearSystem } from "../../numbers/positive-system.js";
import { type Room, workColumns } from "../../numbers/work-columns.js";

/**
 * Where a fit works: columns and systems of equations that it would else ask memory for at every step, which takes longer
 * than most loops over a sweep. It belongs to one fit at a time; what a fit gives in it holds until the next one begins.
 */
export interface FitRoom {
  /** All samples of a stretch, some of them, and the nodes that stand for them */
  readonly all: Room<4>;
  readonly some: Room<4>;
  readonly condensed: Room<4>;
  /** How much of each polynomial a block of samples holds */
  readonly blockParts: { readonly real: Float64Array; readonly imaginary: Float64Array };
  /** Values of the fit that is being improved, and of two that were found */
  readonly workingValues: Room<4>;
  readonly firstValues: Room<4>;
  readonly secondValues: Room<4>;
  /** Places between the samples, and what another fit is there */
  readonly between: Room<1>;
  readonly otherValues: Room<4>;
  readonly residuals: Room<2>;
  readonly pairs: Room<2>;
  /** What the sums of a step are made of, and the sums */
  readonly terms: Room<4>;
  readonly moments: Room<4>;
  readonly offsets: Room<4>;
  readonly powers: Room<1>;
  /** The system of each size, every cell of which is to be written */
  readonly system: (size: number) => LinearSystem;
}

export function newFitRoom(): FitRoom {
  const systems: LinearSystem[] = [];
  const part = () => new Float64Array(GAUSS_NODES + 2);
  return {
    all: workColumns(4),
    some: workColumns(4),
    condensed: workColumns(4),
    blockParts: { real: part(), imaginary: part() },
    workingValues: workColumns(4),
    firstValues: workColumns(4),
    secondValues: workColumns(4),
    between: workColumns(1),
    otherValues: workColumns(4),
    residuals: workColumns(2),
    pairs: workColumns(2),
    terms: workColumns(4),
    moments: workColumns(4),
    offsets: workColumns(4),
    powers: workColumns(1),
    system(size) {
      systems[size] ??= emptySystem(size);
      return systems[size];
    },
  };
}
