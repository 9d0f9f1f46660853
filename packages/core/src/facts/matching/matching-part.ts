import type { Feedline } from "../feedline/feedline.js";

/** Where a part lies: in series with the line, or across it. */
export type Placing = "series" | "across";

/** A coil with losses: R = ωL / Q in series with it. */
export interface Coil {
  readonly kind: "coil";
  readonly placing: Placing;
  readonly inductanceHenry: number;
  /** Infinity: none is lost */
  readonly q: number;
}

/** A capacitor with losses: in series with the line R = 1 / (ωCQ), across it G = ωC / Q, which differ by 1 / Q². */
export interface Capacitor {
  readonly kind: "capacitor";
  readonly placing: Placing;
  readonly capacitanceFarad: number;
  /** Infinity: none is lost */
  readonly q: number;
}

/** A transformer with its high side to the antenna. Without inductances it is ideal; what its core loses is never told. */
export interface Transformer {
  readonly kind: "transformer";
  /** Of the impedances: 9 makes 50 Ω of 450 Ω */
  readonly ratio: number;
  /** Across its low side, H; null: not stated, taken as none */
  readonly magnetisingHenry: number | null;
  /** In series with its low side, H; null: not stated, taken as none */
  readonly leakageHenry: number | null;
}

/** A length of line between two places of a chain. */
export interface LinePart {
  readonly kind: "line";
  readonly feedline: Feedline;
}

/** A length of line across the chain with its far end open or shorted. */
export interface Stub {
  readonly kind: "stub";
  readonly end: "open" | "short";
  readonly feedline: Feedline;
}

/** What stands between an antenna and a radio: a chain of parts, from the antenna to the radio. */
export type MatchingPart = Coil | Capacitor | Transformer | LinePart | Stub;

/** Q of a coil where nobody states it; 50 to 300 is usual (common practice, no source). */
export const USUAL_COIL_Q = 200;
/** Q of a capacitor where nobody states it (common practice, no source). */
export const USUAL_CAPACITOR_Q = 1000;
