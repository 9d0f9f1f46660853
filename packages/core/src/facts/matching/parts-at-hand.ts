import { type Feedline, feedlineFrom } from "../feedline/feedline.js";
import { type Transformer, USUAL_CAPACITOR_Q, USUAL_COIL_Q } from "./matching-part.js";
import { seriesValues } from "./values.js";

/** Parts at hand as the operator states them. */
export interface StatedParts {
  /** Kinds of line by their ids, and how much there is of each, m; without a length as much as is wanted */
  readonly lines?: readonly { readonly kind: string; readonly lengthM?: number }[];
  /** By the ratio of their impedances, with what is known of their inductances on the low side, H */
  readonly transformers?: readonly {
    readonly ratio: number;
    readonly magnetisingHenry?: number;
    readonly leakageHenry?: number;
  }[];
  /** Values, H; usual: any of the E12 series */
  readonly coils?: readonly number[] | "usual";
  /** Values, F; usual: any of the E12 series */
  readonly capacitors?: readonly number[] | "usual";
  /** Q of the coils; 200 where absent */
  readonly coilQ?: number;
  /** Q of the capacitors; 1000 where absent */
  readonly capacitorQ?: number;
  /** Whether there is a tuner that is set by hand, band by band */
  readonly manualTuner?: boolean;
}

/** A kind of line, and how much there is of it. */
export interface LineAtHand {
  /** Its length does not matter here */
  readonly feedline: Feedline;
  /** null: as much as is wanted */
  readonly greatestM: number | null;
}

/** What may be built from. */
export interface PartsAtHand {
  readonly lines: readonly LineAtHand[];
  readonly transformers: readonly Transformer[];
  readonly coilsHenry: readonly number[];
  readonly capacitorsFarad: readonly number[];
  readonly coilQ: number;
  readonly capacitorQ: number;
  readonly hasManualTuner: boolean;
}

/** What is taken where nobody says what is at hand (common practice, no source): lines of each impedance, the usual ratios. */
const USUAL: StatedParts = {
  lines: ["rg-58", "rg-213", "foam-400", "rg-6", "window-400"].map((kind) => ({ kind })),
  transformers: [4, 9, 49, 64].map((ratio) => ({ ratio })),
  coils: "usual",
  capacitors: "usual",
  manualTuner: true,
};

/** Reactances that are worth trying, Ω: less changes little, more is as good as none at all. */
const LEAST_OHMS = 10;
const GREATEST_OHMS = 1500;

/** What may be built from at some frequencies: what was stated, or else the usual kinds in values that are sold. */
export function partsAtHand(stated: StatedParts | undefined, lowHz: number, highHz: number): PartsAtHand {
  const {
    lines = [],
    transformers = [],
    coils = [],
    capacitors = [],
    coilQ = USUAL_COIL_Q,
    capacitorQ = USUAL_CAPACITOR_Q,
    manualTuner = false,
  } = stated ?? USUAL;
  const [lowest, highest] = [2 * Math.PI * lowHz, 2 * Math.PI * highHz];
  return {
    lines: lines.map(({ kind, lengthM = null }) => ({
      feedline: feedlineFrom({ kind, lengthM: lengthM ?? 1 }),
      greatestM: lengthM,
    })),
    transformers: transformers.map(({ ratio, magnetisingHenry = null, leakageHenry = null }) => ({
      kind: "transformer",
      ratio,
      magnetisingHenry,
      leakageHenry,
    })),
    coilsHenry: coils === "usual" ? seriesValues(LEAST_OHMS / highest, GREATEST_OHMS / lowest) : coils,
    capacitorsFarad:
      capacitors === "usual" ? seriesValues(1 / (highest * GREATEST_OHMS), 1 / (lowest * LEAST_OHMS)) : capacitors,
    coilQ,
    capacitorQ,
    hasManualTuner: manualTuner,
  };
}
