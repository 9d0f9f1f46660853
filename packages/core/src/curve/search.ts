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

/**
 * The position of the least value between two that bracket one minimum: by parabolas through the best three places so far, by
 * golden sections where they do not serve.
 *
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 5 (from memory).
 */
export function leastBetween(
  valueAt: (position: number) => number,
  from: number,
  to: number,
  tolerance = FREQUENCY_TOLERANCE_HZ,
): number {
  let low = from;
  let high = to;
  let best = low + GOLDEN_SHARE * (high - low);
  let second = best;
  let third = best;
  let bestValue = valueAt(best);
  let secondValue = bestValue;
  let thirdValue = bestValue;
  let step = 0;
  let stepBefore = 0;
  while (true) {
    const middle = (low + high) / 2;
    const least = finest(tolerance, best) / 2;
    if (Math.abs(best - middle) + (high - low) / 2 <= 2 * least) return best;
    const leap = parabolaStep(best, bestValue, second, secondValue, third, thirdValue);
    // A parabola is believed where it stays between the ends and its steps become shorter.
    const isSound = Math.abs(leap) < Math.abs(stepBefore) / 2 && best + leap > low && best + leap < high;
    stepBefore = isSound ? step : best < middle ? high - best : low - best;
    step = isSound ? leap : GOLDEN_SHARE * stepBefore;
    const isNearAnEnd = isSound && (best + step - low < 2 * least || high - best - step < 2 * least);
    if (isNearAnEnd) step = best < middle ? least : -least;
    const next = best + (Math.abs(step) >= least ? step : step > 0 ? least : -least);
    const value = valueAt(next);
    if (value <= bestValue) {
      if (next < best) high = best;
      else low = best;
      [third, thirdValue, second, secondValue, best, bestValue] = [second, secondValue, best, bestValue, next, value];
      continue;
    }
    if (next < best) low = next;
    else high = next;
    if (value <= secondValue || second === best) {
      [third, thirdValue, second, secondValue] = [second, secondValue, next, value];
    } else if (value <= thirdValue || third === best || third === second) [third, thirdValue] = [next, value];
  }
}

/** From `a` to the turning point of the parabola through three points; NaN or infinite where there is none. */
function parabolaStep(a: number, valueA: number, b: number, valueB: number, c: number, valueC: number): number {
  const ofB = (a - b) * (valueA - valueC);
  const ofC = (a - c) * (valueA - valueB);
  return -((a - b) * ofB - (a - c) * ofC) / (2 * (ofB - ofC));
}
