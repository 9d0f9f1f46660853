import { at } from "../column.js";
import { SPEED_OF_LIGHT } from "../constants.js";
import { reflectionAt, type VectorCurve } from "../curve/curve.js";
import { leastBetween } from "../curve/search.js";
import { changeReference } from "../reflection.js";
import { type CommonSamples, commonSamples, replaceBefore } from "./common-samples.js";
import { fitLine, type LineFit } from "./line-fit.js";

export type CauseCode =
  | "line-length-changed"
  | "loss-added"
  | "loss-removed"
  | "reference-changed"
  | "resonance-moved"
  | "interference"
  | "antenna-changed";

/** A cause of the difference that the data support. */
export interface Cause {
  readonly code: CauseCode;
  readonly confidence: "likely" | "possible";
  /** Named numbers, their units in their names */
  readonly evidence: Readonly<Record<string, number>>;
  readonly message: string;
}

/** An explanation may leave this much of Γ unexplained (or more, where the sweeps are noisier than that). */
const EXPLAINED_RESIDUAL = 0.012;
const NOISE_MARGIN = 4;
/** Changes of the line below these are not told from a repeat. Electrical length in m, loss at 10 MHz in dB. */
const LEAST_LENGTH_M = 0.25;
const LEAST_LOSS_DB = 0.1;
/** Range and step of the frequency scale searched: a wire up to 8 % longer or shorter. */
const GREATEST_SCALE = 0.08;
const SCALE_STEP = 0.002;
const LEAST_SCALE = 0.001;
const FEWEST_SAMPLES = 12;
const JUMPINESS = 3;
const LEAST_NOISE = 0.0015;

/**
 * Why two vector sweeps differ: explanations are tried from the simplest on, and the first that leaves nothing but
 * noise is likely.
 *
 * @returns empty where nothing changed beyond noise
 */
export function findCauses(before: VectorCurve, after: VectorCurve): readonly Cause[] {
  const samples = commonSamples(before, after);
  if (samples.frequencyHz.length < FEWEST_SAMPLES) return [];
  const noise = Math.hypot(before.noise ?? 0, after.noise ?? 0);
  const enough = Math.max(EXPLAINED_RESIDUAL, NOISE_MARGIN * noise);
  const causes: Cause[] = [...jumps(before, after)];
  const difference = meanDifference(samples);
  const line = fitLine(samples);
  // A line that explains clearly more than no change at all does is a change, however small the difference looks.
  if (line.residual <= enough && isLineChange(line) && line.residual < 0.6 * difference)
    return [...causes, lineCause(line, difference)];
  if (difference <= enough) return causes;
  const reference = fitReference(samples, before.sweep.referenceOhms);
  if (reference.residual <= enough) return [...causes, referenceCause(reference, before.sweep.referenceOhms)];
  const scaled = fitScale(samples, before);
  if (scaled.residual <= enough && Math.abs(scaled.scale - 1) >= LEAST_SCALE) return [...causes, scaleCause(scaled)];
  return [
    ...causes,
    {
      code: "antenna-changed",
      confidence: "possible",
      evidence: { differenceRms: difference, residualOfLineChange: line.residual, residualOfScaling: scaled.residual },
      message:
        "The antenna itself (its shape, height, surroundings or counterpoise) seems to have changed: neither another length of line, nor loss growing evenly with frequency, nor a longer or shorter wire explains the difference.",
    },
  ];
}

const isLineChange = ({ delayS, lossAt10MHzDb }: LineFit) =>
  electricalLengthM(delayS) >= LEAST_LENGTH_M || Math.abs(lossAt10MHzDb) >= LEAST_LOSS_DB;

/** One-way electrical length of a round-trip delay, without sign, m. */
const electricalLengthM = (delayS: number) => (Math.abs(delayS) * SPEED_OF_LIGHT) / 2;

function lineCause({ delayS, lossAt10MHzDb, residual }: LineFit, difference: number): Cause {
  const lengthM = electricalLengthM(delayS);
  const evidence = {
    electricalLengthM: Math.sign(delayS) * lengthM,
    lossAt10MHzDb,
    residualRms: residual,
    differenceRms: difference,
  };
  if (lengthM >= LEAST_LENGTH_M) {
    const sense = delayS > 0 ? "more" : "less";
    return {
      code: "line-length-changed",
      confidence: "likely",
      evidence,
      message: `The second sweep was taken through ${lengthM.toFixed(1)} m (electrical) ${sense} line, about ${(lengthM * 0.66).toFixed(1)} m of solid-dielectric or ${(lengthM * 0.82).toFixed(1)} m of foam coax: same antenna, another place of measuring.`,
    };
  }
  const code = lossAt10MHzDb > 0 ? "loss-added" : "loss-removed";
  const lostPercent = 100 * (1 - 10 ** (-Math.abs(lossAt10MHzDb) / 10));
  const sense = lossAt10MHzDb > 0 ? "more" : "less";
  return {
    code,
    confidence: "likely",
    evidence: { ...evidence, powerPercentAt10MHz: lostPercent },
    message: `The same antenna behind ${Math.abs(lossAt10MHzDb).toFixed(2)} dB ${sense} loss (one way, at 10 MHz, growing with the root of frequency; ${lostPercent.toFixed(0)} % of the power there): a wet or damaged line, a poor joint or a pad changes the SWR, not the antenna.`,
  };
}

interface ReferenceFit {
  readonly ohms: number;
  readonly residual: number;
}

/** The reference impedance under which the second sweep would be the first. */
function fitReference(samples: CommonSamples, referenceOhms: number): ReferenceFit {
  const residualAt = (logRatio: number) => {
    const toOhms = referenceOhms * Math.exp(logRatio);
    let square = 0;
    for (let i = 0; i < samples.frequencyHz.length; i++) {
      const before = { real: at(samples.beforeReal, i), imaginary: at(samples.beforeImaginary, i) };
      const { real, imaginary } = changeReference(before, referenceOhms, toOhms);
      square += (real - at(samples.afterReal, i)) ** 2 + (imaginary - at(samples.afterImaginary, i)) ** 2;
    }
    return Math.sqrt(square / samples.frequencyHz.length);
  };
  const best = leastBetween(residualAt, -2.5, 2.5, 1e-4);
  return { ohms: referenceOhms * Math.exp(best), residual: residualAt(best) };
}

function referenceCause({ ohms, residual }: ReferenceFit, referenceOhms: number): Cause {
  return {
    code: "reference-changed",
    confidence: "likely",
    evidence: { referenceOhms: ohms, residualRms: residual },
    message: `The second sweep seems to refer to ${ohms.toFixed(0)} Ω instead of ${referenceOhms} Ω: the same impedances, another reference.`,
  };
}

interface ScaleFit {
  /** Frequencies of the second sweep over those of the first */
  readonly scale: number;
  readonly residual: number;
}

/** The same antenna with its frequency axis stretched, behind the same line: what a longer or shorter wire does. */
function fitScale(samples: CommonSamples, before: VectorCurve): ScaleFit {
  const residualAt = (scale: number) => {
    const scaled = replaceBefore(samples, (frequencyHz) => {
      const reflection = reflectionAt(before, frequencyHz / scale);
      if (reflection === null) return null;
      // The line does not scale with the wire: its phase is moved from the old frequency to the new one.
      const angle = -2 * Math.PI * before.delayS * (frequencyHz - frequencyHz / scale);
      return {
        real: reflection.real * Math.cos(angle) - reflection.imaginary * Math.sin(angle),
        imaginary: reflection.real * Math.sin(angle) + reflection.imaginary * Math.cos(angle),
      };
    });
    return scaled.frequencyHz.length < FEWEST_SAMPLES ? Number.POSITIVE_INFINITY : fitLine(scaled).residual;
  };
  let best = 1;
  let bestResidual = Number.POSITIVE_INFINITY;
  for (let scale = 1 - GREATEST_SCALE; scale <= 1 + GREATEST_SCALE; scale += SCALE_STEP) {
    const residual = residualAt(scale);
    if (residual < bestResidual) {
      bestResidual = residual;
      best = scale;
    }
  }
  const refined = leastBetween(residualAt, best - SCALE_STEP, best + SCALE_STEP, 1e-5);
  return { scale: refined, residual: residualAt(refined) };
}

function scaleCause({ scale, residual }: ScaleFit): Cause {
  const percent = 100 * (scale - 1);
  const sense = percent > 0 ? "up" : "down";
  return {
    code: "resonance-moved",
    confidence: "likely",
    evidence: {
      frequencyScale: scale,
      frequencyPercent: percent,
      wireLengthPercent: 100 * (1 / scale - 1),
      residualRms: residual,
    },
    message: `The whole curve moved ${sense} by ${Math.abs(percent).toFixed(1)} % in frequency, as if the wire had become ${Math.abs(100 * (1 / scale - 1)).toFixed(1)} % ${percent > 0 ? "shorter" : "longer"}.`,
  };
}

/** A second sweep much rougher from sample to sample than the first: interference or a bad contact. */
function jumps(before: VectorCurve, after: VectorCurve): readonly Cause[] {
  if (before.noise === null || after.noise === null) return [];
  const [calm, rough] = before.noise < after.noise ? [before.noise, after.noise] : [after.noise, before.noise];
  if (rough < LEAST_NOISE || rough < JUMPINESS * calm) return [];
  const which = rough === after.noise ? "second" : "first";
  return [
    {
      code: "interference",
      confidence: "possible",
      evidence: { noiseBefore: before.noise, noiseAfter: after.noise },
      message: `The ${which} sweep jumps about ${(rough / calm).toFixed(1)} times as much from sample to sample: interference, or a contact that makes and breaks.`,
    },
  ];
}

function meanDifference({
  frequencyHz,
  beforeReal,
  beforeImaginary,
  afterReal,
  afterImaginary,
}: CommonSamples): number {
  let square = 0;
  for (let i = 0; i < frequencyHz.length; i++) {
    square += (at(afterReal, i) - at(beforeReal, i)) ** 2 + (at(afterImaginary, i) - at(beforeImaginary, i)) ** 2;
  }
  return Math.sqrt(square / frequencyHz.length);
}
