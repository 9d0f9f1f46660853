/** Some columns of one length. */
type Columns<Count extends number> = Count extends 1
  ? readonly [Float64Array]
  : Count extends 2
    ? readonly [Float64Array, Float64Array]
    : readonly [Float64Array, Float64Array, Float64Array, Float64Array];

/** Gives some columns of a length to work in: the same ones at each call, holding what was left there. */
export type Room<Count extends 1 | 2 | 4> = (length: number) => Columns<Count>;

/** Lengths that columns are kept for: those that a fit goes to and fro between, and some to spare. */
const MOST_KEPT = 8;

/**
 * Columns to work in, kept from one call to the next: sweeps are many and mostly of one length, and asking for memory takes
 * longer than most loops over it.
 *
 * @returns gives them for a length, holding what was left there; they are the same ones at the next call
 */
export function workColumns<Count extends 1 | 2 | 4>(count: Count): Room<Count> {
  const kept: (readonly Float64Array[])[] = [];
  return (length) => {
    let columns = kept.find(([first]) => first?.length === length);
    if (columns === undefined) {
      columns = Array.from({ length: count }, () => new Float64Array(length));
      if (kept.unshift(columns) > MOST_KEPT) kept.pop();
    }
    // As many as were asked for.
    return columns as readonly Float64Array[] as Columns<Count>;
  };
}
