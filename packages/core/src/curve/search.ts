/** Refinement stops at this width: far finer than any analyser resolves. */
const FREQUENCY_TOLERANCE_HZ = 0.5;
/** Nor is anything told finer than numbers of that size are apart. */
const RELATIVE_TOLERANCE = 4 * Number.EPSILON;
const finest = (tolerance: number, position: number) => Math.max(tolerance, RELATIVE_TOLERANCE * Math.abs(position));
const GOLDEN_SHARE = (3 - Math.sqrt(5)) / 2;

/** The frequency between two others where a condition that holds at the first turns into its opposite, by halving. */
export function turningPoint(holdsAt: (frequencyHz: number) => boolean, fromHz: number, toHz: number): number {
  let low = fromHz;
  let high = toHz;
  const atLow = holdsAt(fromHz);
  while (high - low > finest(FREQUENCY_TOLERANCE_HZ, high)) {
    const middle = (low + high) / 2;
    if (holdsAt(middle) === atLow) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The position of the least value between two that bracket one minimum, by golden sections. */
export function leastBetween(
  valueAt: (position: number) => number,
  from: number,
  to: number,
  tolerance = FREQUENCY_TOLERANCE_HZ,
): number {
  let low = from;
  let high = to;
  let a = low + GOLDEN_SHARE * (high - low);
  let b = high - GOLDEN_SHARE * (high - low);
  let valueA = valueAt(a);
  let valueB = valueAt(b);
  while (high - low > finest(tolerance, high)) {
    if (valueA <= valueB) {
      high = b;
      b = a;
      valueB = valueA;
      a = low + GOLDEN_SHARE * (high - low);
      valueA = valueAt(a);
    } else {
      low = a;
      a = b;
      valueA = valueB;
      b = high - GOLDEN_SHARE * (high - low);
      valueB = valueAt(b);
    }
  }
  return (low + high) / 2;
}
