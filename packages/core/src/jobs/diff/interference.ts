import type { Cause } from "./cause.js";
import type { SideCurve } from "./side-curve.js";

/** Samples that stand alone in one sweep more than in the other, to speak of interference (our own choice). */
const LEAST_SPIKES = 2;
/** How much rougher one sweep must be than the other, and how rough at all (standard deviation of ρ). */
const JUMPINESS = 3;
const LEAST_NOISE = 0.0015;

/** One sweep much rougher than the other, or with samples that stand alone: interference or a bad contact. */
export function interference(before: SideCurve, after: SideCurve): readonly Cause[] {
  const [first, second] = [before.spikes, after.spikes];
  if (Math.abs(second - first) >= LEAST_SPIKES) {
    const [which, many] = second > first ? ["second", second] : ["first", first];
    return [
      {
        code: "interference",
        confidence: "likely",
        evidence: { spikesBefore: first, spikesAfter: second },
        message: `In the ${which} sweep ${many} samples jump out of the curve (in the other ${Math.min(first, second)}): a contact that makes and breaks, or interference. They were left out of the comparison.`,
      },
    ];
  }
  // Noise of rounding in print is no roughness.
  if (before.noise === null || after.noise === null || before.rounding + after.rounding > 0) return [];
  const [calm, rough] = before.noise < after.noise ? [before.noise, after.noise] : [after.noise, before.noise];
  if (rough < LEAST_NOISE || rough < JUMPINESS * calm) return [];
  return [
    {
      code: "interference",
      confidence: "possible",
      evidence: { noiseBefore: before.noise, noiseAfter: after.noise },
      message: `The ${rough === after.noise ? "second" : "first"} sweep jumps about ${(rough / calm).toFixed(1)} times as much from sample to sample: interference, or a contact that makes and breaks.`,
    },
  ];
}

/** A few samples that jump out of an otherwise explained difference. */
export const jumpCause = (jumps: number): Cause => ({
  code: "interference",
  confidence: "likely",
  evidence: { jumps },
  message: `At ${jumps} place${jumps === 1 ? "" : "s"} single samples jump away from the other sweep: a contact that makes and breaks, or interference.`,
});
