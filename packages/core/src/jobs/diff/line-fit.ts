import { at } from "../../numbers/column.js";
import { DECIBELS_PER_NEPER } from "../../numbers/constants.js";
import { emptySystem, solvePositive } from "../../numbers/positive-system.js";
import { type CommonSamples, inReference } from "./common-samples.js";
import { candidateDelays } from "./delay-search.js";
import { type LineChange, LOSS_LAWS, type LossLaw } from "./line-change.js";

export interface LineFit extends LineChange {
  /** Root mean square of what is left of |Γ after - Γ model| */
  readonly residual: number;
}

const MOST_ROUNDS = 12;
/** A round that lowers the residual by less than this share is the last. */
const LEAST_GAIN = 1e-6;
/** Loss is taken to grow as that of conductors does, unless something else leaves this much less. */
const ANOTHER_LAW = 0.7;
/** How else it may grow: one way alone, or two together. */
const OTHER_LAWS: readonly (readonly LossLaw[])[] = [
  ["even"],
  ["proportional"],
  ["root", "proportional"],
  ["root", "even"],
];

/**
 * Fits after ≈ before · 10^(-2 loss(f) / 20) · exp(-j2πf delay): a coherent search over the delay, then least squares in delay
 * and loss together (Gauss and Newton).
 */
export function fitLine(samples: CommonSamples): LineFit {
  return [0, ...candidateDelays(samples)]
    .map((delay) => refine(samples, ["root"], delay))
    .reduce((best, next) => (next.residual < best.residual ? next : best));
}

/** The same fit for added line of another impedance than the sweeps refer to. */
export const fitLineOf = (characteristicOhms: number, samples: CommonSamples, referenceOhms: number): LineFit => ({
  ...fitLine(inReference(samples, referenceOhms, characteristicOhms)),
  characteristicOhms,
});

/** The same fit with loss that grows in another way, where that explains clearly more and there is something to explain. */
export function withBestLaw(samples: CommonSamples, line: LineFit, negligible: number): LineFit {
  if (line.residual <= negligible) return line;
  return OTHER_LAWS.map((laws) => refine(samples, laws, line.delayS))
    .filter(isOneSided)
    .reduce((best, next) => (next.residual < ANOTHER_LAW * best.residual ? next : best), line);
}

/** Loss that one law adds while another takes it away is no line, but the shape of a narrow sweep. */
const isOneSided = ({ loss }: LineFit) =>
  loss.every(({ at10MHzDb }) => at10MHzDb >= 0) || loss.every(({ at10MHzDb }) => at10MHzDb <= 0);

/** Least squares from a first guess of the delay; the best of all rounds, since a bad guess may lead astray. */
function refine(samples: CommonSamples, laws: readonly LossLaw[], startDelay: number): LineFit {
  const growths = laws.map((law) => samples.frequencyHz.map(LOSS_LAWS[law]));
  let delay = startDelay;
  // Attenuation of Γ at 10 MHz in neper, there and back, by each law.
  let attenuations = laws.map(() => 0);
  let best: LineFit = { delayS: startDelay, loss: [], characteristicOhms: null, residual: Number.POSITIVE_INFINITY };
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { residual, delayStep, attenuationSteps } = stepFrom(samples, growths, delay, attenuations);
    const gain = best.residual - residual;
    if (gain > 0) {
      const loss = laws.map((law, i) => ({ law, at10MHzDb: ((attenuations[i] ?? 0) * DECIBELS_PER_NEPER) / 2 }));
      best = { ...best, delayS: delay, loss, residual };
    }
    if (attenuationSteps === null || (gain >= 0 && gain < LEAST_GAIN * residual)) break;
    delay += delayStep;
    attenuations = attenuations.map((attenuation, i) => attenuation + (attenuationSteps[i] ?? 0));
  }
  return best;
}

/**
 * What a delay and attenuations leave over, and the next step of the least squares; no step where none is determined.
 *
 * @param growths loss over that at 10 MHz, sample by sample, of each law
 */
function stepFrom(
  samples: CommonSamples,
  growths: readonly Float64Array[],
  delay: number,
  attenuations: readonly number[],
): { residual: number; delayStep: number; attenuationSteps: readonly number[] | null } {
  const { frequencyHz, beforeReal, beforeImaginary, afterReal, afterImaginary } = samples;
  // The model moves along itself with the attenuations and across itself with the delay, so the two do not mix.
  const along = emptySystem(growths.length);
  const width = growths.length + 1;
  const add = (row: number, column: number, value: number) => {
    along.real[row * width + column] = at(along.real, row * width + column) + value;
  };
  let across = 0;
  let acrossLeft = 0;
  let square = 0;
  for (let i = 0; i < frequencyHz.length; i++) {
    const turn = 2 * Math.PI * at(frequencyHz, i);
    const size = Math.exp(-growths.reduce((sum, growth, k) => sum + at(growth, i) * (attenuations[k] ?? 0), 0));
    const cosine = Math.cos(turn * delay) * size;
    const sine = -Math.sin(turn * delay) * size;
    const real = at(beforeReal, i) * cosine - at(beforeImaginary, i) * sine;
    const imaginary = at(beforeReal, i) * sine + at(beforeImaginary, i) * cosine;
    const leftReal = at(afterReal, i) - real;
    const leftImaginary = at(afterImaginary, i) - imaginary;
    square += leftReal * leftReal + leftImaginary * leftImaginary;
    const power = real * real + imaginary * imaginary;
    across += turn * turn * power;
    acrossLeft += turn * (leftReal * imaginary - leftImaginary * real);
    growths.forEach((growth, row) => {
      add(row, width - 1, -at(growth, i) * (leftReal * real + leftImaginary * imaginary));
      growths.forEach((other, column) => {
        add(row, column, at(growth, i) * at(other, i) * power);
      });
    });
  }
  const residual = Math.sqrt(square / frequencyHz.length);
  if (!(across > 0 && solvePositive(along))) return { residual, delayStep: 0, attenuationSteps: null };
  return {
    residual,
    delayStep: acrossLeft / across,
    attenuationSteps: growths.map((_, row) => at(along.real, row * width + width - 1)),
  };
}
