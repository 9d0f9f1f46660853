import { cautionsFor } from "../../facts/cautions.js";
import { feedlineFrom, matchedLossDb } from "../../facts/feedline/feedline.js";
import type { FeedlineKind } from "../../facts/feedline/feedline-kinds.js";
import { demand, isFiniteAbove0, isRecord } from "../../input/argument.js";
import { at } from "../../numbers/column.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { referredTo, type Sweep, type VectorSweep } from "../../sweep/sweep.js";
import { checkSweep } from "../../sweep/sweep-check.js";
import { type SweepInfo, sweepInfo } from "../../sweep/sweep-info.js";
import { firstSamples, LEAST_SEEN, samplesSeen } from "./far-end.js";
import {
  GREATEST_TURN,
  impedanceFindings,
  impossibleFindings,
  lengthFindings,
  noLineSeen,
  stepFindings,
  turnInAStep,
  UNEVEN_LOSS,
} from "./line-findings.js";
import { LEAST_LINE_M, measuredLength } from "./measured-length.js";
import { fittedLoss } from "./measured-loss.js";
import { isAnother, LEAST_END, ownImpedance, reflectionOfEnd } from "./own-impedance.js";

/** Loss of the line at one frequency. */
export interface MeasuredLoss {
  readonly frequencyHz: number;
  /** dB one way, of all of the line */
  readonly matchedLossDb: number;
  /** null where the physical length is not known */
  readonly dbPer100M: number | null;
  /** What a line of the stated kind and this length loses; null without a kind or a length */
  readonly expectedDb: number | null;
}

/** as-expected: what its kind loses, within the spread of kinds; lossy: more; low-loss: less; unknown: no kind to compare with. */
export type LineVerdict = "as-expected" | "lossy" | "low-loss" | "unknown";

/** What a sweep says of a line. Plain data: as JSON it is what `feedpoint line --json` prints. */
export interface LineResult {
  /** Name and version of this form */
  readonly schema: "feedpoint/line@1";
  /** What was read */
  readonly sweep: SweepInfo;
  /** Resistance at the far end, Ω: 0 for a short, null for an open end */
  readonly endOhms: number | null;
  /** The line's own impedance that was reckoned with, Ω */
  readonly characteristicOhms: number;
  /** Length that a wave in vacuum would travel in the same time, m; null for a scalar sweep */
  readonly electricalLengthM: number | null;
  /** Speed on the line over that of light: measured where the length was stated, else the kind's; null where neither is known, or no line is seen */
  readonly velocityFactor: number | null;
  /** Electrical length times velocity factor, or as stated, m */
  readonly lengthM: number | null;
  /** At frequencies near the foot of the amateur bands that were swept, or at both ends of the sweep */
  readonly losses: readonly MeasuredLoss[];
  /** How it compares with its kind */
  readonly verdict: LineVerdict;
  /** What the operator should know of all this */
  readonly findings: readonly Finding[];
  /** {@link CAUTIONS} */
  readonly cautions: readonly string[];
}

/** What is known of the line that was swept. */
export interface LineOptions {
  /** Resistance at the far end, Ω: 0 for a short, Infinity for an open end */
  readonly endOhms: number;
  /** Of the catalogue, as {@link feedlineKindById} gives it; null or absent: not known */
  readonly kind?: FeedlineKind | null;
  /** Physical length where it is known, m: then the velocity factor is measured */
  readonly lengthM?: number;
  /** The line's own impedance, Ω; the kind's, or the sweep's reference, where absent */
  readonly characteristicOhms?: number;
}

/** Frequencies at which loss is told where they were swept, Hz: near the foot of the amateur bands. */
const TOLD_HZ = [1.8e6, 3.5e6, 7e6, 10e6, 14e6, 21e6, 28e6, 50e6, 144e6];
/** Cables of one kind differ by this share and more between makers; a few hundredths of a dB are not worth a word. */
const USUAL_SPREAD = 0.25;
const NEGLIGIBLE_DB = 0.05;
const FEWEST_SAMPLES = 5;

/**
 * Length and loss of a line from a sweep of it with a known far end.
 *
 * The matched loss is half of the return loss that the line adds to that of its end (Anritsu application note "Average Cable Loss
 * Measurement", abstract read; F. Witt, QEX May/June 2005, p. 44, opening page read). The length follows from how the phase turns.
 *
 * @throws TypeError for an argument that is not what it must be, which it names
 * @throws RangeError where the far end is matched (it reflects nothing) or the sweep has fewer than five points
 * @example
 * ```ts
 * import { feedlineFrom, feedlineKindById, measureLine, reflectionAtInput, sectionAt, vectorSweep } from "@feedpoint/core";
 *
 * // 20 m of line, shorted at its end, as an analyser would see it from 1 to 30 MHz.
 * const line = feedlineFrom({ kind: "rg-58", lengthM: 20 });
 * const frequencyHz = Float64Array.from({ length: 291 }, (_, i) => 1e6 + i * 1e5);
 * const seen = Array.from(frequencyHz, (hz) => reflectionAtInput({ real: -1, imaginary: 0 }, sectionAt(line, hz)));
 * const sweep = vectorSweep(
 *   { label: "shorted line", referenceOhms: 50 },
 *   {
 *     frequencyHz,
 *     reflectionReal: Float64Array.from(seen, ({ real }) => real),
 *     reflectionImaginary: Float64Array.from(seen, ({ imaginary }) => imaginary),
 *   },
 * );
 * const { lengthM, verdict } = measureLine(sweep, { endOhms: 0, kind: feedlineKindById("rg-58") });
 * lengthM; // → 20.0
 * verdict; // → "as-expected"
 * ```
 */
export function measureLine(sweep: Sweep, options: LineOptions): LineResult {
  checkSweep(sweep);
  checkLineOptions(options);
  const { endOhms, kind = null } = options;
  const nominalOhms = options.characteristicOhms ?? kind?.characteristicOhms ?? sweep.referenceOhms;
  if (Math.abs(reflectionOfEnd(endOhms, nominalOhms)) < LEAST_END)
    throw new RangeError("the far end is matched and sends nothing back; open or short it");
  if (sweep.frequencyHz.length < FEWEST_SAMPLES) throw new RangeError("a line cannot be told from so few points");
  const isStated = options.characteristicOhms !== undefined;
  const { seen, own, characteristicOhms } = whatIsSeen(sweep, endOhms, nominalOhms, isStated);
  const count = seen.frequencyHz.length;
  const end = reflectionOfEnd(endOhms, characteristicOhms);
  const length = seen.kind === "vector" ? measuredLength(seen, end) : null;
  const electricalLengthM = length?.electricalLengthM ?? null;
  const isNoLine = length?.isSure === true && length.electricalLengthM < LEAST_LINE_M;
  const velocityFactor = isNoLine
    ? null
    : options.lengthM !== undefined && electricalLengthM !== null
      ? options.lengthM / electricalLengthM
      : (kind?.velocityFactor ?? null);
  const lengthM =
    options.lengthM ??
    (electricalLengthM !== null && velocityFactor !== null ? electricalLengthM * velocityFactor : null);
  const { lossDbAt, flatDb, isEven: isLine } = fittedLoss(seen, end);
  const losses = lossesOf(seen, lossDbAt, kind, isNoLine ? null : lengthM);
  return {
    schema: "feedpoint/line@1",
    sweep: sweepInfo(sweep),
    endOhms: Number.isFinite(endOhms) ? endOhms : null,
    characteristicOhms,
    electricalLengthM,
    velocityFactor,
    lengthM,
    losses,
    verdict: isLine ? verdictOf(losses) : "unknown",
    findings: [
      ...(isLine ? [] : [UNEVEN_LOSS]),
      ...(count < sweep.frequencyHz.length
        ? [finding("caution", "far-end-unseen", { aboveHz: at(sweep.frequencyHz, count - 1) })]
        : []),
      ...(flatDb > 0 && isLine ? [finding("caution", "flat-loss", { flatDb })] : []),
      ...(isNoLine ? [noLineSeen(options.lengthM ?? null)] : []),
      ...impedanceFindings(own, nominalOhms, isStated, endOhms),
      ...(isNoLine ? [] : lengthFindings(options.lengthM, length, kind)),
      ...(length === null ? [] : stepFindings(seen, length)),
      ...impossibleFindings(velocityFactor, losses),
    ],
    cautions: cautionsFor({ hasHighVoltage: false }),
  };
}

/** What of a sweep shows the far end of a line, against the line's own impedance where that is told. */
function whatIsSeen(sweep: Sweep, endOhms: number, nominalOhms: number, isStated: boolean) {
  const nominal = referredTo(sweep, nominalOhms);
  const sure = samplesSeen(nominal, LEAST_SEEN.elsewhere);
  const own =
    nominal.kind === "vector" && sure >= FEWEST_SAMPLES && !isTurnHidden(nominal, reflectionOfEnd(endOhms, nominalOhms))
      ? ownImpedance(firstSamples(sweep, sure) as VectorSweep, endOhms, nominalOhms)
      : null;
  const characteristicOhms = !isStated && own !== null && isAnother(own, nominalOhms) ? own.ohms : nominalOhms;
  const against = referredTo(sweep, characteristicOhms);
  const isKnown = own !== null && !isAnother(own, characteristicOhms);
  const count = samplesSeen(against, isKnown ? LEAST_SEEN.whereImpedanceIsKnown : LEAST_SEEN.elsewhere);
  if (count < FEWEST_SAMPLES)
    throw new RangeError(
      "nothing of the far end is seen: the line loses more than 12 dB one way, or its end is matched",
    );
  return { seen: count === sweep.frequencyHz.length ? against : firstSamples(against, count), own, characteristicOhms };
}

/** Whether the steps are so coarse that whole turns of the phase could hide: any impedance then fits some length. */
const isTurnHidden = (sweep: VectorSweep, end: number): boolean =>
  turnInAStep(sweep, measuredLength(sweep, end)) >= GREATEST_TURN;

function checkLineOptions(options: LineOptions): void {
  demand(isRecord(options), "options", "an object with the far end at least: { endOhms: 0 }", options);
  const { endOhms, kind = null, lengthM, characteristicOhms } = options;
  const isEnd = typeof endOhms === "number" && endOhms >= 0;
  demand(isEnd, "endOhms", "a number of ohms: 0 for a short, Infinity for an open end", endOhms);
  const isKind = kind === null || (isRecord(kind) && isFiniteAbove0(kind.characteristicOhms));
  demand(isKind, "kind", 'a kind of feedline, such as feedlineKindById("rg-58") gives, or null', kind);
  if (lengthM !== undefined) demand(isFiniteAbove0(lengthM), "lengthM", "a length in m above 0", lengthM);
  if (characteristicOhms !== undefined) {
    demand(isFiniteAbove0(characteristicOhms), "characteristicOhms", "a number of ohms above 0", characteristicOhms);
  }
}

function lossesOf(
  sweep: Sweep,
  lossDbAt: (frequencyHz: number) => number,
  kind: FeedlineKind | null,
  lengthM: number | null,
): MeasuredLoss[] {
  const first = at(sweep.frequencyHz, 0);
  const last = at(sweep.frequencyHz, sweep.frequencyHz.length - 1);
  const told = TOLD_HZ.filter((frequencyHz) => frequencyHz >= first && frequencyHz <= last);
  const line = kind === null || lengthM === null ? null : feedlineFrom({ kind: kind.id, lengthM });
  return (told.length > 0 ? told : [first, last]).map((frequencyHz) => {
    const lossDb = lossDbAt(frequencyHz);
    return {
      frequencyHz,
      matchedLossDb: lossDb,
      dbPer100M: lengthM === null ? null : (100 * lossDb) / lengthM,
      expectedDb: line && matchedLossDb(line, frequencyHz),
    };
  });
}

function verdictOf(losses: readonly MeasuredLoss[]): LineVerdict {
  const compared = losses.flatMap(({ matchedLossDb: lossDb, expectedDb }) =>
    expectedDb === null ? [] : [{ lossDb, expectedDb }],
  );
  if (compared.length === 0) return "unknown";
  const excess = compared.filter(
    ({ lossDb, expectedDb }) => lossDb > (1 + USUAL_SPREAD) * expectedDb + NEGLIGIBLE_DB,
  ).length;
  const shortfall = compared.filter(
    ({ lossDb, expectedDb }) => lossDb < (1 - USUAL_SPREAD) * expectedDb - NEGLIGIBLE_DB,
  ).length;
  if (2 * excess > compared.length) return "lossy";
  return 2 * shortfall > compared.length ? "low-loss" : "as-expected";
}
