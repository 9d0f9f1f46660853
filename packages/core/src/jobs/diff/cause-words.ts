import type { Cause, CauseCode } from "./cause.js";
import { electricalLengthM, type LossLaw, lossAt10MHzDb } from "./line-change.js";
import type { LineFit } from "./line-fit.js";
import type { ReferenceFit } from "./reference-fit.js";
import type { ScaleFit } from "./scale-fit.js";
import type { SeriesFit, SeriesPart } from "./series-fit.js";
import { isAsRehung } from "./verdict.js";

/** Fits put into words, each as a likely cause. */

/** Velocity factors of solid and of foamed polyethylene, the usual dielectrics (common practice, no source). */
const SOLID = 0.66;
const FOAM = 0.82;

const GROWTH: Readonly<Record<LossLaw, string>> = {
  root: "growing with the root of frequency",
  even: "the same at all frequencies",
  proportional: "growing in proportion to frequency",
};

/** What a fit of the line says, whichever cause it is named as. */
const lineEvidence = (line: LineFit, difference: number) => ({
  electricalLengthM: electricalLengthM(line.delayS),
  lossAt10MHzDb: lossAt10MHzDb(line),
  residualRms: line.residual,
  differenceRms: difference,
});

export function lengthCause(line: LineFit, difference: number): Cause {
  const lengthM = Math.abs(electricalLengthM(line.delayS));
  const kind = line.characteristicOhms === null ? "line" : `line of ${line.characteristicOhms} Ω`;
  return {
    code: "line-length-changed",
    confidence: "likely",
    evidence: lineEvidence(line, difference),
    message: `The second sweep was taken through ${lengthM.toFixed(1)} m (electrical) ${line.delayS > 0 ? "more" : "less"} ${kind}, about ${(lengthM * SOLID).toFixed(1)} m of solid-dielectric or ${(lengthM * FOAM).toFixed(1)} m of foam coax: another place of measuring.`,
  };
}

export function lossCause(line: LineFit, difference: number): Cause {
  const lossDb = lossAt10MHzDb(line);
  return {
    code: lossDb > 0 ? "loss-added" : "loss-removed",
    confidence: "likely",
    evidence: { ...lineEvidence(line, difference), powerPercentAt10MHz: lostPercent(lossDb) },
    message: `The same antenna behind ${Math.abs(lossDb).toFixed(2)} dB ${lossDb > 0 ? "more" : "less"} loss (${howLossGrows(line)}): a wet or damaged line, a poor joint or a pad changes the SWR, not the antenna.`,
  };
}

/** Loss that changed together with the length of the line, by more than that length brings along. */
export function excessLossCause(line: LineFit, difference: number): Cause {
  const lossDb = lossAt10MHzDb(line);
  const isMore = lossDb > 0;
  return {
    code: isMore ? "loss-added" : "loss-removed",
    confidence: "likely",
    evidence: { ...lineEvidence(line, difference), powerPercentAt10MHz: lostPercent(lossDb) },
    message: `The line loses ${Math.abs(lossDb).toFixed(2)} dB ${isMore ? "more" : "less"} (${howLossGrows(line)}), which that length alone does not explain: ${isMore ? "a wet or damaged line, which also slows the wave, a poor joint" : "a better line or joint"}, or another kind of line.`,
  };
}

function howLossGrows(line: LineFit): string {
  const growth = line.loss.length === 1 ? line.loss.map(({ law }) => ` ${GROWTH[law]};`).join("") : "";
  return `one way, at 10 MHz,${growth} ${lostPercent(lossAt10MHzDb(line)).toFixed(0)} % of the power there`;
}

/** The share of power that a loss, or its lack, makes; percent. */
export const lostPercent = (lossDb: number) => 100 * (1 - 10 ** (-Math.abs(lossDb) / 10));

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
  const evidence = {
    frequencyScale: scale,
    frequencyPercent: percent,
    wireLengthPercent: lengthPercent,
    residualRms: residual,
  };
  const [moved, became] = percent > 0 ? ["up", "shorter"] : ["down", "longer"];
  return {
    code: "resonance-moved",
    confidence: "likely",
    evidence,
    message: `The whole curve moved ${moved} by ${Math.abs(percent).toFixed(1)} % in frequency, as if the wire had become ${Math.abs(lengthPercent).toFixed(1)} % ${became}${isAsRehung({ evidence }) ? ": no more than hanging the same wire up again does" : ""}.`,
  };
}

/** To two digits, without an exponent. */
const rounded = (value: number): string => String(Number(value.toPrecision(2)));

const SERIES: Readonly<Record<SeriesPart, { code: CauseCode; key: string; text: (value: number) => string }>> = {
  resistance: {
    code: "resistance-added",
    key: "seriesOhms",
    text: (ohms) =>
      `A resistance of ${ohms.toFixed(ohms < 10 ? 1 : 0)} Ω in series explains the difference: a corroded joint, a poor contact or ground. What it takes is heat, and lowers the SWR without making a better antenna.`,
  },
  coil: {
    code: "coil-added",
    key: "seriesHenry",
    text: (henry) =>
      `${rounded(henry * 1e6)} µH in series explain the difference: a coil, a choke or a longer lead at the place of measuring.`,
  },
  capacitor: {
    code: "capacitor-added",
    key: "seriesFarad",
    text: (farad) =>
      `${farad >= 1e-9 ? `${rounded(farad * 1e9)} nF` : `${rounded(farad * 1e12)} pF`} in series explain the difference: a capacitor, or a joint that only touches.`,
  },
};

/** A part in series, as a cause. */
export function seriesCause({ part, value, residual }: SeriesFit, difference: number): Cause {
  const { code, key, text } = SERIES[part];
  return {
    code,
    confidence: "likely",
    evidence: { [key]: value, residualRms: residual, differenceRms: difference },
    message: text(value),
  };
}
