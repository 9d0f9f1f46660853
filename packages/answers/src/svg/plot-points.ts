import { type Complex, type Piece, reflectionAt, reflectionMagnitudeAt, type Trace } from "@feedpoint/core";

/** A point of a curve that is drawn. */
export interface PlotPoint {
  readonly frequencyHz: number;
  readonly reflectionMagnitude: number;
  /** null for a scalar sweep */
  readonly reflection: Complex | null;
}

/** Points without a gap between them. */
export type Run = readonly PlotPoint[];

/**
 * The points of a curve within a range, both of its ends included where they were swept. Gaps part the runs. Where there
 * are more points than wanted, the least and the greatest ρ of each share of the range stand for it.
 */
export function plotRuns(trace: Trace, { lowHz, highHz }: Piece, most: number): readonly Run[] {
  const { curve } = trace;
  const shareHz = (highHz - lowHz) / Math.max(1, most / 2);
  return trace.stretches.flatMap(({ first, last }) => {
    const firstHz = Math.max(lowHz, trace.frequencyHz[first] ?? Number.POSITIVE_INFINITY);
    const lastHz = Math.min(highHz, trace.frequencyHz[last] ?? 0);
    if (firstHz > lastHz) return [];
    const knots = Array.from(trace.frequencyHz.subarray(first, last + 1)).filter((hz) => hz > firstHz && hz < lastHz);
    const ends = firstHz === lastHz ? [firstHz] : [firstHz, lastHz];
    const inner = knots.length <= most ? knots : extremesOfShares(trace, knots, shareHz);
    const all = [firstHz, ...inner, ...ends.slice(1)];
    return [
      all.map((frequencyHz) => ({
        frequencyHz,
        reflectionMagnitude: reflectionMagnitudeAt(curve, frequencyHz),
        reflection: reflectionAt(curve, frequencyHz),
      })),
    ];
  });
}

/** Of each share of the range the frequencies of least and of greatest ρ. */
function extremesOfShares({ curve }: Trace, knots: readonly number[], shareHz: number): readonly number[] {
  const shares = new Map<number, { hz: number; rho: number }[]>();
  for (const hz of knots) {
    const share = Math.floor(hz / shareHz);
    const rho = reflectionMagnitudeAt(curve, hz);
    const [least, greatest] = shares.get(share) ?? [];
    if (least === undefined || greatest === undefined)
      shares.set(share, [
        { hz, rho },
        { hz, rho },
      ]);
    else shares.set(share, [rho < least.rho ? { hz, rho } : least, rho > greatest.rho ? { hz, rho } : greatest]);
  }
  return [...shares.values()].flatMap((extremes) =>
    [...new Set(extremes.map(({ hz }) => hz))].sort((first, second) => first - second),
  );
}
