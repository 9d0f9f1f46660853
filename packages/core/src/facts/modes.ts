import type { Emission } from "./band-plan/band-plan.js";
import type { ModeName } from "./mode-names.js";

/** A way of operating: what it counts as in a band plan, what it takes up, how much of the time it is at full power. */
export interface Mode {
  readonly name: ModeName;
  /** As what it counts in a band plan */
  readonly emission: Emission;
  /** Where the signal lies: around the dial frequency, above it, below it, or on the side that is usual on the band */
  readonly side: "around" | "above" | "below" | "customary";
  /** How far from the dial frequency a sideband begins, Hz; 0 where the signal lies around it */
  readonly startsHz: number;
  /** All that a transmission may reach, Hz: its width, or how far from the dial frequency it goes to one side */
  readonly widthHz: number;
  /** What one signal takes up within that, Hz: held against a segment's limit of bandwidth */
  readonly bandwidthHz: number;
  /** Average over peak envelope power while transmitting, 0 to 1 */
  readonly dutyFactor: number;
}

/** Speech and tones start here beside the suppressed carrier, Hz (common practice, no source). */
const SPEECH_STARTS_HZ = 300;
const TONES_START_HZ = 200;
const SSB_WIDTH_HZ = 2800;

/**
 * Widths: 2.8 kHz of sideband is the limit of 47 CFR 97.307(f)(3) for data and 97.303(h) on 60 m, which voice keeps to as well; the
 * others are common practice, no source (FM: 2 · (5 + 3) kHz, Carson's rule). Duty factors: FCC OET Bulletin 65, Supplement B,
 * table 2 (second-hand): conversational SSB without processing 20 %, CW 40 %, FM, FSK and AFSK 100 %; AM and image taken as 100 %.
 */
const DEFAULTS: Readonly<Record<ModeName, Omit<Mode, "name">>> = {
  cw: around("cw", 150, 0.4),
  ssb: voice("customary"),
  usb: voice("above"),
  lsb: voice("below"),
  am: around("phone", 6000, 1),
  fm: around("phone", 16_000, 1),
  rtty: around("data", 250, 1),
  // One narrow signal anywhere in the audio range of a sideband transmitter.
  data: {
    emission: "data",
    side: "above",
    startsHz: TONES_START_HZ,
    widthHz: SSB_WIDTH_HZ,
    bandwidthHz: 500,
    dutyFactor: 1,
  },
  image: { ...voice("customary"), emission: "image", dutyFactor: 1 },
};

function voice(side: Mode["side"]): Omit<Mode, "name"> {
  return {
    emission: "phone",
    side,
    startsHz: SPEECH_STARTS_HZ,
    widthHz: SSB_WIDTH_HZ,
    bandwidthHz: SSB_WIDTH_HZ - SPEECH_STARTS_HZ,
    dutyFactor: 0.2,
  };
}

function around(emission: Emission, widthHz: number, dutyFactor: number): Omit<Mode, "name"> {
  return { emission, side: "around", startsHz: 0, widthHz, bandwidthHz: widthHz, dutyFactor };
}

/** What the operator states of a mode instead of the usual values. */
export interface ModeSettings {
  /** All that a transmission may reach, Hz; more than where its sideband begins */
  readonly widthHz?: number;
  /** What one signal takes up within that, Hz */
  readonly bandwidthHz?: number;
  /** Average over peak envelope power while transmitting, 0 to 1 */
  readonly dutyFactor?: number;
}

/**
 * A mode, with the operator's own values where there are some.
 *
 * Widths: 2.8 kHz of sideband is the limit of 47 CFR 97.307(f)(3) for data and 97.303(h) on 60 m, which voice keeps to as well; the
 * others are common practice, no source. Duty factors: FCC OET Bulletin 65, Supplement B, table 2 (second-hand).
 *
 * @throws RangeError for a width that ends before the sideband begins
 * @example
 * ```ts
 * import { modeOf } from "@feedpoint/core";
 *
 * modeOf("cw").bandwidthHz; // → 150
 * modeOf("ssb", { dutyFactor: 0.4 }).dutyFactor; // → 0.4
 * ```
 */
export function modeOf(name: ModeName, { widthHz, bandwidthHz, dutyFactor }: ModeSettings = {}): Mode {
  const mode = { name, ...DEFAULTS[name] };
  if (widthHz !== undefined && widthHz <= mode.startsHz)
    throw new RangeError(
      `the width of ${name} counts from the dial frequency, beside which it begins at ${mode.startsHz} Hz; ${widthHz} Hz is too little`,
    );
  const filledHz = (widthHz ?? mode.widthHz) - mode.startsHz;
  const isFilled = mode.bandwidthHz === mode.widthHz - mode.startsHz;
  return {
    ...mode,
    dutyFactor: dutyFactor ?? mode.dutyFactor,
    widthHz: widthHz ?? mode.widthHz,
    bandwidthHz: bandwidthHz ?? (isFilled ? filledHz : Math.min(mode.bandwidthHz, filledHz)),
  };
}

/** Modes that power is told for where nobody names any. */
export const COMMON_MODES: readonly Mode[] = (["cw", "ssb", "data"] as const).map((name) => modeOf(name));

/** Lower sideband is usual below this, Hz, but for the 60 m band (common practice, no source; on 60 m 47 CFR 97.303(h)). */
const UPPER_SIDEBAND_FROM_HZ = 10e6;
const SIXTY_METRES_HZ = [5.2e6, 5.5e6] as const;

/**
 * How far a transmission reaches below and above its dial frequency, Hz: less than 0 where it does not reach up to it.
 *
 * Lower sideband is customary below 10 MHz but for the 60 m band (common practice, no source; on 60 m 47 CFR 97.303(h)).
 *
 * @example
 * ```ts
 * import { modeOf, occupiedBy } from "@feedpoint/core";
 *
 * occupiedBy(modeOf("ssb"), 7.1e6); // → { belowHz: 2800, aboveHz: -300 }
 * ```
 */
export function occupiedBy(
  { side, startsHz, widthHz }: Mode,
  frequencyHz: number,
): { belowHz: number; aboveHz: number } {
  const above = { belowHz: -startsHz, aboveHz: widthHz };
  const below = { belowHz: widthHz, aboveHz: -startsHz };
  switch (side) {
    case "around":
      return { belowHz: widthHz / 2, aboveHz: widthHz / 2 };
    case "above":
      return above;
    case "below":
      return below;
    case "customary":
      return isUpperCustomary(frequencyHz) ? above : below;
  }
}

const isUpperCustomary = (frequencyHz: number) =>
  frequencyHz >= UPPER_SIDEBAND_FROM_HZ || (frequencyHz >= SIXTY_METRES_HZ[0] && frequencyHz <= SIXTY_METRES_HZ[1]);
