import type { BandPlan } from "../facts/band-plan/band-plan.js";
import { DEFAULT_LIMITS } from "../facts/limits.js";
import { at } from "../numbers/column.js";
import type { Deployment } from "../sweep/deployment.js";
import { type Sweep, scalarSweep, vectorSweep } from "../sweep/sweep.js";
import { answeringOn, partsOf } from "./parts.js";

/**
 * One sweep for pictures and tables of values: the samples of each part of a deployment where it answers. Nothing is judged by it,
 * since its curve would go from one part to the next.
 *
 * @returns the part itself where there is only one; of readings by hand beside sweeps, the sweeps
 */
export function drawnSweep(deployment: Deployment, plan: BandPlan): Sweep {
  const [first, ...others] = deployment.parts;
  if (others.length === 0) return first;
  const swept = partsOf(deployment, DEFAULT_LIMITS, plan).filter(({ knows }) => knows === "curve");
  if (swept.length === 0) return first;
  const ends = swept.map(({ sweep: { frequencyHz } }) => ({
    lowHz: at(frequencyHz, 0),
    highHz: at(frequencyHz, frequencyHz.length - 1),
  }));
  const whole = {
    lowHz: Math.min(...ends.map(({ lowHz }) => lowHz)),
    highHz: Math.max(...ends.map(({ highHz }) => highHz)),
  };
  const samples = answeringOn(swept, [whole], 0)
    .flatMap(({ part: { sweep }, pieces }) =>
      [...sweep.frequencyHz.keys()]
        .filter((i) => pieces.some(({ lowHz, highHz }) => isWithin(at(sweep.frequencyHz, i), lowHz, highHz)))
        .map((i) => ({ sweep, i, hz: at(sweep.frequencyHz, i) })),
    )
    .sort((a, b) => a.hz - b.hz)
    .filter(({ hz }, i, all) => hz !== all[i - 1]?.hz);
  const { label, takenAt } = deployment;
  const details = { ...first, label, takenAt, findings: [] };
  const frequencyHz = Float64Array.from(samples, ({ hz }) => hz);
  const hasPhase = swept.every(({ sweep }) => sweep.kind === "vector");
  if (!hasPhase) {
    const reflectionMagnitude = Float64Array.from(samples, ({ sweep, i }) => at(sweep.reflectionMagnitude, i));
    return scalarSweep(details, { frequencyHz, reflectionMagnitude });
  }
  const column = (of: "reflectionReal" | "reflectionImaginary") =>
    Float64Array.from(samples, ({ sweep, i }) => (sweep.kind === "vector" ? at(sweep[of], i) : Number.NaN));
  return vectorSweep(details, {
    frequencyHz,
    reflectionReal: column("reflectionReal"),
    reflectionImaginary: column("reflectionImaginary"),
  });
}

const isWithin = (hz: number, lowHz: number, highHz: number): boolean => hz >= lowHz && hz <= highHz;
