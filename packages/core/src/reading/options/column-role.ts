import type { FrequencyUnit } from "./units.js";

/** What a column of a delimited file can hold. Angles, and real and imaginary parts, may lack their subject. */
export type Quantity =
  | "frequency"
  | "resistance"
  | "reactance"
  | "reactance-magnitude"
  | "impedance-magnitude"
  | "impedance-angle"
  | "impedance-angle-magnitude"
  | "parallel-resistance"
  | "parallel-reactance"
  | "conductance"
  | "susceptance"
  | "swr"
  | "return-loss"
  | "s11-db"
  | "reflection-magnitude"
  | "reflection-angle"
  | "reflection-angle-magnitude"
  | "reflection-real"
  | "reflection-imaginary"
  /** A share of the forward power, or, beside that, the power itself */
  | "reflected-power"
  | "forward-power"
  | "accepted-power"
  /** Of the voltage going out, as 1 or beside it */
  | "reflected-voltage"
  | "forward-voltage"
  | "mismatch-loss"
  | "admittance-magnitude"
  | "admittance-angle"
  | "angle"
  | "real"
  | "imaginary"
  /** "S11" and nothing more */
  | "reflection"
  | "transmission"
  | "other";

/** What a column holds, and how its values are meant. */
export interface ColumnRole {
  /** What is in it */
  readonly quantity: Quantity;
  /** Only for frequencies; null where the header does not say */
  readonly frequencyUnit?: FrequencyUnit | null;
  /** The header states a unit of frequency that is not known */
  readonly isUnknownUnit?: boolean;
  /** Only for angles: radians where the header says so, else degrees */
  readonly radians?: boolean;
  /** Only for reflected power and reflection magnitude: given in per cent */
  readonly percent?: boolean;
  /** What the values are multiplied by to be in ohms or siemens: 1000 for kΩ */
  readonly factor?: number;
  /** What is added to the values: 1 to "SWR - 1", Hz to frequencies counted from another one */
  readonly offset?: number;
  /** Only for reactances: given as the part in series that has it, in pF, nF, nH or µH by `factor` */
  readonly ofPart?: "capacitance" | "inductance";
  /** Only for powers: the header says that they are watts */
  readonly isInWatts?: boolean;
  /** Only for powers: given in dBm */
  readonly isInDbm?: boolean;
  /** The least or the greatest of several readings, which is left alone beside their mean */
  readonly isExtreme?: boolean;
  /** The header says that the values are multiples of the reference impedance, or of its inverse */
  readonly isNormalised?: boolean;
  /** The header names a part (dB, real, angle) without saying of what; a reflection was assumed */
  readonly isAssumed?: boolean;
}

/** Whether a column holds something else than frequencies and what is not known. */
export const isReading = ({ quantity }: ColumnRole): boolean => quantity !== "frequency" && quantity !== "other";
