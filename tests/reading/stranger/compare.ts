/** Compares what was read with the truth, point by point. */
import type { Sweep } from "@feedpoint/core";
import { rhoOf } from "./antenna.js";
import { at } from "./random.js";
import type { Reading, Truth, TruthPoint, TruthSweep } from "./truth.js";

/** What is wrong, or null; and how many points are missing that may be, with a caution. */
export interface Difference {
  why: string | null;
  dropped: number;
  /** Several series became one, which wants a word about it. */
  joined?: boolean;
}

const wrong = (why: string): Difference => ({ why, dropped: 0 });
const rhoOfPoint = ({ re, im }: TruthPoint): number => Math.hypot(re, im);

/** Whether a reading lies where rounding allows; its phase counts only where the truth is sure to have one. */
function fits(point: TruthPoint, sweep: Sweep, index: number, truth: TruthSweep): boolean {
  const rho = at(sweep.reflectionMagnitude, index);
  if (point.bound === "atLeast") return rho >= rhoOfPoint(point) - point.tolRho;
  if (point.bound === "atMost") return rho <= rhoOfPoint(point) + point.tolRho;
  if (Math.abs(rho - rhoOfPoint(point)) > point.tolRho) return false;
  if (truth.vector !== true || sweep.kind === "scalar") return true;
  const [re, im] = [at(sweep.reflectionReal, index), at(sweep.reflectionImaginary, index)];
  return Math.hypot(re - point.re, im - point.im) <= point.tol;
}

function fromSweep(sweep: Sweep, truth: TruthSweep): Difference {
  const { referenceOhms, kind, frequencyHz } = sweep;
  if (Math.abs(referenceOhms - truth.reference) > 0.01) {
    return wrong(`reference ${referenceOhms}, not ${truth.reference}`);
  }
  if (truth.vector === true && kind === "scalar") return wrong("phase lost");
  if (truth.vector === false && kind === "vector") return wrong("phase made up");
  const used = new Set<number>();
  let dropped = 0;
  for (const point of truth.points) {
    const tolerance = point.hzTol + 1e-9 * point.hz;
    const near = [...frequencyHz.keys()].filter((i) => Math.abs(at(frequencyHz, i) - point.hz) <= tolerance);
    const found = near.find((i) => !used.has(i) && fits(point, sweep, i, truth));
    const last = near.at(-1);
    if (found !== undefined) used.add(found);
    else if (last !== undefined && !used.has(last)) {
      const rho = at(sweep.reflectionMagnitude, last);
      const isPhase = point.bound === undefined && Math.abs(rho - rhoOfPoint(point)) <= point.tolRho;
      return wrong(isPhase ? `phase at ${point.hz} Hz` : `ρ at ${point.hz} Hz: ${rho}, not ${rhoOfPoint(point)}`);
    } else if (point.droppable) dropped += 1;
    else if (!point.optional) return wrong(`point at ${point.hz} Hz is missing`);
  }
  const more = frequencyHz.length - used.size;
  return more > (truth.extra ?? 0) ? wrong(`${more} points too many`) : { why: null, dropped };
}

/** Sweeps against a way of reading: each of the truth's by one of the reader's. */
function fromWay(sweeps: readonly Sweep[], way: readonly TruthSweep[]): Difference {
  if (sweeps.length !== way.length) return wrong(`${sweeps.length} sweeps, not ${way.length}`);
  const rest = [...sweeps];
  let dropped = 0;
  for (const truth of way) {
    const differences = rest.map((sweep) => fromSweep(sweep, truth));
    const index = differences.findIndex(({ why }) => why === null);
    if (index < 0) return differences[0] ?? wrong("no such sweep");
    dropped += at(differences, index).dropped;
    rest.splice(index, 1);
  }
  return { why: null, dropped };
}

interface NotedPoint {
  hz: number;
  rho: number;
}

function isReadingAt({ low, high, swr, bound }: Reading, { hz, rho }: NotedPoint): boolean {
  if (hz < low - 1 || hz > high + 1) return false;
  return swr.some((each) => (bound === "atLeast" ? rho >= rhoOf(each) - 0.001 : Math.abs(rho - rhoOf(each)) < 0.001));
}

function fromReadings(points: readonly NotedPoint[], readings: readonly Reading[]): Difference {
  const rest = [...points];
  let dropped = 0;
  const missing: string[] = [];
  // Close ranges first, so that a wide one does not take their points.
  for (const reading of readings.toSorted((a, b) => a.high - a.low - (b.high - b.low))) {
    const index = rest.findIndex((point) => isReadingAt(reading, point));
    if (index >= 0) rest.splice(index, 1);
    else if (reading.droppable) dropped += 1;
    else if (!reading.optional) missing.push(`${reading.low}-${reading.high} Hz SWR ${reading.swr.join("/")}`);
  }
  if (missing.length > 0) return wrong(`missing or wrong: ${missing.join("; ")}`);
  if (rest.length === 0) return { why: null, dropped };
  return wrong(`readings too many: ${rest.map(({ hz, rho }) => `${hz} Hz ρ ${rho.toFixed(3)}`).join("; ")}`);
}

function pointsOf(sweep: Sweep): NotedPoint[] {
  return Array.from(sweep.frequencyHz, (hz, i) => ({ hz, rho: at(sweep.reflectionMagnitude, i) }));
}

/** Each sweep is one of the sets of readings. */
function areSets(sweeps: readonly Sweep[], sets: readonly Reading[][]): boolean {
  if (sweeps.length !== sets.length) return false;
  const rest = [...sets];
  return sweeps.every((sweep) => {
    const index = rest.findIndex((set) => fromReadings(pointsOf(sweep), set).why === null);
    if (index >= 0) rest.splice(index, 1);
    return index >= 0;
  });
}

/** What differs from the truth, in the way of reading that differs least. */
export function differenceFrom(truth: Truth, sweeps: readonly Sweep[]): Difference {
  if (truth.kind === "refuse") return wrong("should have asked");
  if (truth.kind === "sweeps") {
    const differences = truth.ways.map((way) => fromWay(sweeps, way));
    return differences.find(({ why }) => why === null) ?? at(differences, 0);
  }
  if (sweeps.some(({ referenceOhms }) => Math.abs(referenceOhms - 50) > 0.01)) return wrong("reference is not 50 ohm");
  if (truth.sets !== undefined && areSets(sweeps, truth.sets)) return { why: null, dropped: 0 };
  return { ...fromReadings(sweeps.flatMap(pointsOf), truth.readings), joined: truth.sets !== undefined };
}
