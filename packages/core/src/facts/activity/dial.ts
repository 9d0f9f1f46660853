import type { Mode } from "../modes.js";

/** A dial frequency to be judged: the suppressed carrier of a sideband, else the middle of the signal. */
export interface Dial {
  readonly frequencyHz: number;
  /** null: only the SWR is asked for */
  readonly mode: Mode | null;
  /** What commonly happens there: "FT8"; null for a frequency that was only named */
  readonly activity: string | null;
}
