/** What to expect of a modelled antenna on a 50 ohm line, for a look at the data. */

/** @typedef {import("./nec2c.mjs").ImpedancePoint} ImpedancePoint */

const referenceOhms = 50;
const usableSwr = 2;

/** @param {ImpedancePoint} point @returns {number} */
export function swrAt50(point) {
  const { resistanceOhms, reactanceOhms } = point;
  const reflectionMagnitude =
    Math.hypot(resistanceOhms - referenceOhms, reactanceOhms) /
    Math.hypot(resistanceOhms + referenceOhms, reactanceOhms);
  return (1 + reflectionMagnitude) / (1 - reflectionMagnitude);
}

/** Frequencies with X = 0. @param {ImpedancePoint[]} points @returns {string[]} */
export function describeResonances(points) {
  return crossings(points, (point) => point.reactanceOhms).map(({ point, isRising }) => {
    const direction = isRising ? "rising" : "falling";
    return `X = 0 (${direction}) at ${inMhz(point.frequencyHz)} MHz, R ${point.resistanceOhms.toFixed(2)} ohm`;
  });
}

/** Stretches with an SWR of at most 2. @param {ImpedancePoint[]} points @returns {string[]} */
export function describeUsableRanges(points) {
  const edges = crossings(points, (point) => swrAt50(point) - usableSwr);
  const descriptions = [];
  let lowerHz = swrAt50(points[0]) < usableSwr ? points[0].frequencyHz : undefined;
  for (const { point, isRising } of edges) {
    if (isRising && lowerHz !== undefined) descriptions.push(describeRange(points, lowerHz, point.frequencyHz));
    lowerHz = isRising ? undefined : point.frequencyHz;
  }
  if (lowerHz !== undefined) descriptions.push(describeRange(points, lowerHz, points[points.length - 1].frequencyHz));
  return descriptions.length > 0 ? descriptions : [`no range with an SWR of ${usableSwr}; ${lowestSwr(points)}`];
}

/** @param {ImpedancePoint[]} points @param {number} lowerHz @param {number} upperHz */
function describeRange(points, lowerHz, upperHz) {
  const within = points.filter((point) => point.frequencyHz >= lowerHz && point.frequencyHz <= upperHz);
  return `SWR to ${usableSwr} from ${inMhz(lowerHz)} to ${inMhz(upperHz)} MHz, ${lowestSwr(within)}`;
}

/** @param {ImpedancePoint[]} points */
function lowestSwr(points) {
  const best = points.reduce((low, point) => (swrAt50(point) < swrAt50(low) ? point : low));
  return `lowest SWR ${swrAt50(best).toFixed(3)} at ${inMhz(best.frequencyHz)} MHz`;
}

/**
 * Zero crossings, placed by a straight line between two points of the grid.
 * @param {ImpedancePoint[]} points @param {(point: ImpedancePoint) => number} quantityOf
 */
function crossings(points, quantityOf) {
  return points.slice(1).flatMap((right, index) => {
    const left = points[index];
    const leftValue = quantityOf(left);
    const rightValue = quantityOf(right);
    if (leftValue > 0 === rightValue > 0) return [];
    const share = leftValue / (leftValue - rightValue);
    const point = {
      frequencyHz: mix(left.frequencyHz, right.frequencyHz, share),
      resistanceOhms: mix(left.resistanceOhms, right.resistanceOhms, share),
      reactanceOhms: mix(left.reactanceOhms, right.reactanceOhms, share),
    };
    return [{ point, isRising: rightValue > leftValue }];
  });
}

/** @param {number} from @param {number} to @param {number} share */
function mix(from, to, share) {
  return from + (to - from) * share;
}

/** @param {number} frequencyHz */
function inMhz(frequencyHz) {
  return (frequencyHz / 1e6).toFixed(4);
}
