/** Refinement stops at this width: far finer than any analyser resolves. */
const FREQUENCY_TOLERANCE_HZ = 0.5;
/** Nor is anything told finer than numbers of that size are apart. */
const RELATIVE_TOLERANCE = 4 * Number.EPSILON;
const finest = (tolerance: number, position: number) => Math.max(tolerance, RELATIVE_TOLERANCE * Math.abs(position));
const GOLDEN_SHARE = (3 - Math.sqrt(5)) / 2;

/**
 * Where a quantity passes 0 between two positions at which its signs differ: by inverse parabolas through the last three
 * positions where these serve, by halving where they do not.
 *
 * Source: T. R. Chandrupatla, Advances in Engineering Software 28, 1997, p. 145 (from memory; the tests hold it to roots
 * that are known).
 */
export function zeroBetween(
  valueAt: (position: number) => number,
  from: number,
  to: number,
  tolerance = FREQUENCY_TOLERANCE_HZ,
): number {
  // The last position, the one before that was kept, which is across the zero, and one that was given up. Moved one by one:
  // taking them out of a list costs more than the search where it runs a few times only.
  let last = to;
  let across = from;
  let former = from;
  let lastValue = valueAt(to);
  let acrossValue = valueAt(from);
  let formerValue = Number.NaN;
  let share = 0.5;
  while (true) {
    const isLastBest = Math.abs(lastValue) < Math.abs(acrossValue);
    const best = isLastBest ? last : across;
    const bestValue = isLastBest ? lastValue : acrossValue;
    const least = finest(tolerance, best) / 2 / Math.abs(across - last);
    if (bestValue === 0 || least >= 0.5) return best;
    const next = last + Math.min(Math.max(share, least), 1 - least) * (across - last);
    const value = valueAt(next);
    if (value < 0 === lastValue < 0) {
      former = last;
      formerValue = lastValue;
    } else {
      former = across;
      formerValue = acrossValue;
      across = last;
      acrossValue = lastValue;
    }
    last = next;
    lastValue = value;
    share = shareOfZero(last, lastValue, across, acrossValue, former, formerValue);
  }
}

/** How far the zero of the inverse parabola through three points is on the way from `a` to `b`; half where it is not sound. */
function shareOfZero(a: number, valueA: number, b: number, valueB: number, c: number, valueC: number): number {
  const place = (a - b) / (c - b);
  const height = (valueA - valueB) / (valueC - valueB);
  const isSound = height * height < place && (1 - height) * (1 - height) < 1 - place;
  if (!isSound) return 0.5;
  const ofB = (valueA / (valueB - valueA)) * (valueC / (valueB - valueC));
  const ofC = (valueA / (valueC - valueA)) * (valueB / (valueC - valueB));
  return ofB + ((c - a) / (b - a)) * ofC;
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
      third = second;
      thirdValue = secondValue;
      second = best;
      secondValue = bestValue;
      best = next;
      bestValue = value;
      continue;
    }
    if (next < best) low = next;
    else high = next;
    if (value <= secondValue || second === best) {
      third = second;
      thirdValue = secondValue;
      second = next;
      secondValue = value;
    } else if (value <= thirdValue || third === best || third === second) {
      third = next;
      thirdValue = value;
    }
  }
}

/** From `a` to the turning point of the parabola through three points; NaN or infinite where there is none. */
function parabolaStep(a: number, valueA: number, b: number, valueB: number, c: number, valueC: number): number {
  const ofB = (a - b) * (valueA - valueC);
  const ofC = (a - c) * (valueA - valueB);
  return -((a - b) * ofB - (a - c) * ofC) / (2 * (ofB - ofC));
}
