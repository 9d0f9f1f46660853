/**
 * What made the difference: another length of line, more or less loss on it, another reference impedance, a resonance that moved,
 * a resistance, a coil or a capacitor in series, interference or a bad contact, or the antenna itself in another way.
 */
export type CauseCode =
  | "line-length-changed"
  | "loss-added"
  | "loss-removed"
  | "reference-changed"
  | "resonance-moved"
  | "resistance-added"
  | "coil-added"
  | "capacitor-added"
  | "interference"
  | "antenna-changed";

/** A cause of the difference that the data support. */
export interface Cause {
  readonly code: CauseCode;
  /** likely: it explains the difference and nothing else does as well; possible: it may */
  readonly confidence: "likely" | "possible";
  /** Named numbers, their units in their names */
  readonly evidence: Readonly<Record<string, number>>;
  /** One or two sentences in plain words */
  readonly message: string;
}

export const isLikely = ({ confidence }: Cause): boolean => confidence === "likely";

export const possible = (cause: Cause): Cause => ({ ...cause, confidence: "possible" });
