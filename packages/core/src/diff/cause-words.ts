import type { Cause } from "./cause.js";
import { electricalLengthM, type LineFit, type LossLaw } from "./line-fit.js";
import type { ReferenceFit } from "./reference-fit.js";
import type { ScaleFit } from "./scale-fit.js";

/** Fits put into words, each as a likely cause. */

/** Velocity factors of solid and of foamed polyethylene, the usual dielectrics (common practice, no source). */
const SOLID = 0.66;
const FOAM = 0.82;

const GROWTH: Readonly<Record<LossLaw, string>> = {
  root: "growing with the root of frequency",
  even: "the same at all frequencies",
  proportional: "growing in proportion to frequency",
};

export function lengthCause({ delayS, lossAt10MHzDb, residual }: LineFit, difference: number): Cause {
  const lengthM = Math.abs(electricalLengthM(delayS));
  return {
    code: "line-length-changed",
    confidence: "likely",
    evidence: {
      electricalLengthM: electricalLengthM(delayS),
      lossAt10MHzDb,
      residualRms: residual,
      differenceRms: difference,
    },
    message: `The second sweep was taken through ${lengthM.toFixed(1)} m (electrical) ${delayS > 0 ? "more" : "less"} line, about ${(lengthM * SOLID).toFixed(1)} m of solid-dielectric or ${(lengthM * FOAM).toFixed(1)} m of foam coax: same antenna, another place of measuring.`,
  };
}

export function lossCause({ delayS, lossAt10MHzDb, law, residual }: LineFit, difference: number): Cause {
  const lostPercent = 100 * (1 - 10 ** (-Math.abs(lossAt10MHzDb) / 10));
  const sense = lossAt10MHzDb > 0 ? "more" : "less";
  return {
    code: lossAt10MHzDb > 0 ? "loss-added" : "loss-removed",
    confidence: "likely",
    evidence: {
      electricalLengthM: electricalLengthM(delayS),
      lossAt10MHzDb,
      powerPercentAt10MHz: lostPercent,
      residualRms: residual,
      differenceRms: difference,
    },
    message: `The same antenna behind ${Math.abs(lossAt10MHzDb).toFixed(2)} dB ${sense} loss (one way, at 10 MHz, ${GROWTH[law]}; ${lostPercent.toFixed(0)} % of the power there): a wet or damaged line, a poor joint or a pad changes the SWR, not the antenna.`,
  };
}

export function referenceCause({ ohms, residual }: ReferenceFit, referenceOhms: number): Cause {
  return {
    code: "reference-changed",
    confidence: "likely",
    evidence: { referenceOhms: ohms, residualRms: residual },
    message: `The second sweep seems to refer to ${ohms.toFixed(0)} Ω instead of ${referenceOhms} Ω: the same impedances, another reference.`,
  };
}

export function scaleCause({ scale, residual }: Pick<ScaleFit, "scale" | "residual">): Cause {
  const percent = 100 * (scale - 1);
  const lengthPercent = 100 * (1 / scale - 1);
  return {
    code: "resonance-moved",
    confidence: "likely",
    evidence: {
      frequencyScale: scale,
      frequencyPercent: percent,
      wireLengthPercent: lengthPercent,
      residualRms: residual,
    },
    message: `The whole curve moved ${percent > 0 ? "up" : "down"} by ${Math.abs(percent).toFixed(1)} % in frequency, as if the wire had become ${Math.abs(lengthPercent).toFixed(1)} % ${percent > 0 ? "shorter" : "longer"}.`,
  };
}
