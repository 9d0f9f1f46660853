import { at } from "../../numbers/column.js";
import { varianceOfSum } from "../../numbers/positive-system.js";
import { magnitudeOf } from "../between/scalar-interpolation.js";
import { type FitAt, fitAt, type Sensitivity } from "../fit/fit-at.js";
import type { WholeFit } from "../fit/whole-fit.js";
import { clipSpans, type Piece } from "../pieces.js";
import { type CurvePoint, spansWithin, type Trace } from "../trace.js";
import { type Features, SAME_HZ } from "./features.js";
import type { FitOfStretch } from "./fits-of-stretches.js";

/** First derivatives tell what noise does to a number where what it hangs on is so many standard deviations from becoming something else. */
const SAFE = 4;
/** And where noise moves a frequency by no more than this share of the way to where the curve turns (our own choices). */
const SAFE_MOVE = 0.2;

/** The curve at a frequency, as the fit that explains it there has it. */
interface Local {
  readonly hz: number;
  readonly fit: WholeFit;
  readonly at: FitAt;
  readonly rho: number;
  /** Of ρ by frequency */
  readonly slope: number;
  readonly ofRho: Sensitivity;
  /** Standard deviation of ρ */
  readonly deviation: number;
}

/** What the numbers of a band are told by. */
export interface BandOnTrace {
  readonly trace: Trace;
  readonly pieces: readonly Piece[];
  /** ρ of the SWR limit */
  readonly limit: number;
  /** Of all that counts for the band */
  readonly lowHz: number;
  readonly highHz: number;
  readonly estimate: Features;
  readonly worst: CurvePoint;
}

/**
 * Standard deviations of a band's numbers by the covariance of the fits that explain the curve (the delta method: B. Efron, R. J.
 * Tibshirani, An Introduction to the Bootstrap, 1993, chapter 21; from memory). NaN for a number that the curve has not.
 *
 * @returns null where noise may do more than move them a little: join or part spans, or make another point the best
 */
export function deviationsByFits(fits: readonly FitOfStretch[], band: BandOnTrace): Features | null {
  const { pieces, limit, estimate, worst } = band;
  const localAt = (hz: number): Local | null => {
    const own = fits.find(({ lowHz, highHz }) => hz >= lowHz && hz <= highHz);
    return own === undefined ? null : localOf(own.fit, hz);
  };
  const { turns, ends } = turnsOf(band);
  const points = [...turns, ...ends].map(localAt).filter((point) => point !== null);
  const [best, greatest] = [localAt(estimate.bestHz), localAt(worst.frequencyHz)];
  if (best === null || greatest === null) return null;
  // At Γ = 0 its size has no derivative; within noise of it, none that tells.
  if (best.rho === 0 || best.rho < SAFE * best.deviation) return null;
  // Spans neither join nor part, and none vanishes.
  if ([...points, best, greatest].some(({ rho, deviation }) => Math.abs(rho - limit) < SAFE * deviation)) return null;
  const others = points.filter(({ hz }) => pieces.some(({ lowHz, highHz }) => hz >= lowHz && hz <= highHz));
  const step = stepAround(band.trace, estimate.bestHz);
  const isRival = (own: Local, sign: number) =>
    others.some(
      ({ hz, rho, deviation }) =>
        Math.abs(hz - own.hz) > step && sign * (rho - own.rho) < SAFE * Math.hypot(deviation, own.deviation),
    );
  if (isRival(best, 1) || isRival(greatest, -1)) return null;
  const edge = (hz: number) => (Number.isNaN(hz) ? 0 : deviationOfEdge(localAt(hz), turns));
  const found = {
    bestMagnitude: best.deviation,
    bestHz: deviationOfPlace(best, [...turns.filter((hz) => Math.abs(hz - best.hz) > step), ...ends]),
    worstMagnitude: greatest.deviation,
    withinHz: deviationOfWidth(band, turns, localAt),
    lowEdgeHz: edge(estimate.lowEdgeHz),
    highEdgeHz: edge(estimate.highEdgeHz),
  };
  return Object.values(found).every((deviation) => deviation !== null) ? (found as Features) : null;
}

function localOf(fit: WholeFit, hz: number): Local {
  const here = fitAt(fit, hz);
  const { value, slope, ofValue } = here;
  const rho = fit.isReal ? magnitudeOf(value.real) : Math.hypot(value.real, value.imaginary);
  // By the size of Γ along its own direction; of a scalar fit by u = 1 / (1 - ρ²).
  const [real, imaginary] = fit.isReal
    ? [1 / (2 * rho * value.real * value.real), 0]
    : [value.real / rho, -value.imaginary / rho];
  const ofRho = weighted([{ of: ofValue, real, imaginary }]);
  return {
    hz,
    fit,
    at: here,
    rho,
    slope: real * slope.real - imaginary * slope.imaginary,
    ofRho,
    deviation: Math.sqrt(varianceOfSum(fit.system, ofRho)),
  };
}

/** A sum of sensitivities, each times a complex number. */
function weighted(
  terms: readonly { readonly of: Sensitivity; readonly real: number; readonly imaginary: number }[],
): Sensitivity {
  const length = terms[0]?.of.real.length ?? 0;
  const sum = { real: new Float64Array(length), imaginary: new Float64Array(length) };
  for (const { of, real, imaginary } of terms) {
    for (let k = 0; k < length; k++) {
      const [x, y] = [at(of.real, k), at(of.imaginary, k)];
      sum.real[k] = at(sum.real, k) + real * x - imaginary * y;
      sum.imaginary[k] = at(sum.imaginary, k) + real * y + imaginary * x;
    }
  }
  return sum;
}

/** Where the curve turns between two frequencies, at knots of its trace; and where pieces of the band, or what was swept, end. */
function turnsOf({ trace, pieces, lowHz, highHz }: BandOnTrace): { turns: readonly number[]; ends: readonly number[] } {
  const { frequencyHz, reflectionMagnitude: rho, stretches } = trace;
  const turns: number[] = [];
  const ends: number[] = [];
  for (const { first, last } of stretches) {
    const [start, end] = [at(frequencyHz, first), at(frequencyHz, last)];
    if (start > highHz || end < lowHz) continue;
    const limits = [start, end, ...pieces.flatMap((piece) => [piece.lowHz, piece.highHz])];
    ends.push(...limits.filter((hz) => hz >= Math.max(start, lowHz) && hz <= Math.min(end, highHz)));
    for (let k = first + 1; k < last; k++) {
      if (at(frequencyHz, k) < lowHz || at(frequencyHz, k) > highHz) continue;
      if ((at(rho, k) - at(rho, k - 1)) * (at(rho, k + 1) - at(rho, k)) <= 0) turns.push(at(frequencyHz, k));
    }
  }
  return { turns, ends };
}

/** The distance of the knots around a frequency, Hz. */
function stepAround({ frequencyHz }: Trace, hz: number): number {
  const after = frequencyHz.findIndex((knot) => knot > hz);
  const next = after < 0 ? frequencyHz.length - 1 : after;
  return at(frequencyHz, Math.min(next + 1, frequencyHz.length - 1)) - at(frequencyHz, Math.max(0, next - 2));
}

const distanceTo = (places: readonly number[], hz: number): number =>
  Math.min(...places.map((place) => Math.abs(place - hz)));

/** Of the frequency of the best point: where the derivative of |Γ|² (of u) is nothing, or at an end that it rises from. */
function deviationOfPlace({ hz, fit, at: here }: Local, others: readonly number[]): number | null {
  const { value, slope, bend, ofValue, ofSlope } = here;
  const ofDerivative = fit.isReal
    ? ofSlope
    : weighted([
        { of: ofValue, real: slope.real, imaginary: -slope.imaginary },
        { of: ofSlope, real: value.real, imaginary: -value.imaginary },
      ]);
  const derivative = fit.isReal ? slope.real : value.real * slope.real + value.imaginary * slope.imaginary;
  const second = fit.isReal
    ? bend.real
    : slope.real ** 2 + slope.imaginary ** 2 + value.real * bend.real + value.imaginary * bend.imaginary;
  const deviation = Math.sqrt(varianceOfSum(fit.system, ofDerivative));
  if (distanceTo(others, hz) < SAME_HZ) return Math.abs(derivative) > SAFE * deviation ? 0 : null;
  const moved = deviation / second;
  return second > 0 && moved < SAFE_MOVE * distanceTo(others, hz) ? moved : null;
}

/** Of a frequency where ρ crosses the limit. */
function deviationOfEdge(local: Local | null, turns: readonly number[]): number | null {
  if (local === null) return null;
  const moved = local.deviation / Math.abs(local.slope);
  return moved < SAFE_MOVE * distanceTo(turns, local.hz) ? moved : null;
}

/** Of the width within the limit, by all of its edges together. */
function deviationOfWidth(
  { trace, pieces, limit }: BandOnTrace,
  turns: readonly number[],
  localAt: (hz: number) => Local | null,
): number | null {
  const spans = spansWithin(trace, limit);
  const terms = new Map<WholeFit, { of: Sensitivity; real: number; imaginary: number }[]>();
  for (const piece of pieces) {
    const isInside = (hz: number) => hz > piece.lowHz && hz < piece.highHz;
    for (const span of clipSpans(spans, piece)) {
      const edges = [
        { hz: span.lowHz, sign: 1, isMet: !span.openLow && isInside(span.lowHz) },
        { hz: span.highHz, sign: -1, isMet: !span.openHigh && isInside(span.highHz) },
      ];
      for (const { hz, sign, isMet } of edges) {
        if (!isMet) continue;
        const local = localAt(hz);
        const moved = deviationOfEdge(local, turns);
        // An edge that noise may take out of the piece is cut off there.
        if (local === null || moved === null || distanceTo([piece.lowHz, piece.highHz], hz) < SAFE * moved) return null;
        const own = terms.get(local.fit) ?? [];
        terms.set(local.fit, [...own, { of: local.ofRho, real: sign / local.slope, imaginary: 0 }]);
      }
    }
  }
  let variance = 0;
  for (const [fit, own] of terms) variance += varianceOfSum(fit.system, weighted(own));
  return Math.sqrt(variance);
}
