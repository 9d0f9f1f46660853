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

export const isLikely = ({ confidence }: Cause): boolean => confidence === "likely";

export const possible = (cause: Cause): Cause => ({ ...cause, confidence: "possible" });
