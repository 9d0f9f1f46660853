import { line } from "d3-shape";

export interface Place {
  readonly x: number;
  readonly y: number;
}

/** No drawn line departs by more than this from the curve, in units of the picture. */
const GREATEST_DEPARTURE = 0.15;

const straightLines = line<Place>(
  ({ x }) => x,
  ({ y }) => y,
).digits(1);

/** Straight lines through places, as an SVG path; places that change nothing to see are left out. */
export function linePath(runs: readonly (readonly Place[])[]): string {
  return runs.map((run) => straightLines(simplified(run)) ?? "").join("");
}

/** The fewest of some places that still show the same line (D. Douglas and T. Peucker, 1973; from memory). */
function simplified(places: readonly Place[]): readonly Place[] {
  const kept = new Set<number>([0, places.length - 1]);
  const open: (readonly [number, number])[] = [[0, places.length - 1]];
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [first, last] = span;
    let farthest = first;
    let departure = 0;
    for (let i = first + 1; i < last; i++) {
      const distance = distanceFrom(places[first] as Place, places[last] as Place, places[i] as Place);
      if (distance > departure) [farthest, departure] = [i, distance];
    }
    if (departure <= GREATEST_DEPARTURE) continue;
    kept.add(farthest);
    open.push([first, farthest], [farthest, last]);
  }
  return places.filter((_, i) => kept.has(i));
}

/** How far a place lies from the straight line between two others. */
function distanceFrom(start: Place, end: Place, { x, y }: Place): number {
  const [alongX, alongY] = [end.x - start.x, end.y - start.y];
  const square = alongX * alongX + alongY * alongY;
  const share = square === 0 ? 0 : ((x - start.x) * alongX + (y - start.y) * alongY) / square;
  const nearest = Math.min(1, Math.max(0, share));
  return Math.hypot(x - start.x - nearest * alongX, y - start.y - nearest * alongY);
}
