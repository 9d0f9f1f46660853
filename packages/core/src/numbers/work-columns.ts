/** Some columns of one length. */
type Columns<Count extends number> = Count extends 1
  ? readonly [Float64Array]
  : Count extends 2
    ? readonly [Float64Array, Float64Array]
    : readonly [Float64Array, Float64Array, Float64Array, Float64Array];

/** Gives some columns of a length to work in: the same ones at each call, holding what was left there. */
export type Room<Count extends 1 | 2 | 4> = (length: number) => Columns<Count>;

/**
 * Columns to work in, kept from one call to the next: sweeps are many and mostly of one length, and asking for memory takes
 * longer than most loops over it.
 *
 * @returns gives them for a length, holding what was left there; they are the same ones at the next call
 */
export function workColumns<Count extends 1 | 2 | 4>(count: Count): Room<Count> {
  let room = new Float64Array(0);
  let columns: readonly Float64Array[] = [];
  return (length) => {
    if (columns[0]?.length !== length) {
      if (room.length < count * length) room = new Float64Array(count * length);
      columns = Array.from({ length: count }, (_, k) => room.subarray(k * length, (k + 1) * length));
    }
    // As many as were asked for.
    return columns as readonly Float64Array[] as Columns<Count>;
  };
}
