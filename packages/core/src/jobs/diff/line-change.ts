import { type Complex, complex, multiply } from "../../numbers/complex.js";
import { SPEED_OF_LIGHT } from "../../numbers/constants.js";
import { changeReference } from "../../reflection/impedance.js";

/** How a loss grows with frequency: with its root (conductors), not at all (a pad), in proportion (a wet dielectric). */
export type LossLaw = "root" | "even" | "proportional";

/** Loss over that at 10 MHz. */
export const LOSS_LAWS: Readonly<Record<LossLaw, (frequencyHz: number) => number>> = {
  root: (frequencyHz) => Math.sqrt(frequencyHz / 10e6),
  even: () => 1,
  proportional: (frequencyHz) => frequencyHz / 10e6,
};

/** One part of a loss. */
interface LossPart {
  readonly law: LossLaw;
  /** One way, at 10 MHz, dB */
  readonly at10MHzDb: number;
}

/** A change of the line alone, by which the second sweep would follow from the first. */
export interface LineChange {
  /** Added round-trip delay, s; negative for a shorter line */
  readonly delayS: number;
  /** Added one-way loss; its parts are added up */
  readonly loss: readonly LossPart[];
  /** Impedance of the added line, Ω; null where it is the reference of the sweeps */
  readonly characteristicOhms: number | null;
}

/** Added one-way loss at a frequency, dB. */
const lossDbAt = ({ loss }: LineChange, frequencyHz: number): number =>
  loss.reduce((sum, { law, at10MHzDb }) => sum + at10MHzDb * LOSS_LAWS[law](frequencyHz), 0);

export const lossAt10MHzDb = (change: LineChange): number => lossDbAt(change, 10e6);

/** One-way electrical length of a round-trip delay, with its sign, m. */
export const electricalLengthM = (delayS: number): number => (delayS * SPEED_OF_LIGHT) / 2;

/** What a change of the line makes of Γ at a frequency; with sign -1, what it was made of. */
export function throughChange(
  reflection: Complex,
  frequencyHz: number,
  referenceOhms: number,
  change: LineChange,
  sign: 1 | -1 = 1,
): Complex {
  const size = 10 ** ((-sign * lossDbAt(change, frequencyHz)) / 10);
  const angle = -sign * 2 * Math.PI * frequencyHz * change.delayS;
  const lineOhms = change.characteristicOhms ?? referenceOhms;
  const onLine = changeReference(reflection, referenceOhms, lineOhms);
  const moved = multiply(onLine, complex(size * Math.cos(angle), size * Math.sin(angle)));
  return changeReference(moved, lineOhms, referenceOhms);
}
