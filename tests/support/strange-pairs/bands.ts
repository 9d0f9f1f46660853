import type { Random } from "./random.js";

/** A band with its edges in Hz. */
export interface Band {
  readonly label: string;
  readonly low: number;
  readonly high: number;
}

const TOP_BAND: Band = { label: "160 m", low: 1.8e6, high: 2.0e6 };

/** The bands that antennas are made for, by their wavelength in metres. */
const BY_METRES = {
  80: { label: "80 m", low: 3.5e6, high: 3.8e6 },
  40: { label: "40 m", low: 7.0e6, high: 7.2e6 },
  30: { label: "30 m", low: 10.1e6, high: 10.15e6 },
  20: { label: "20 m", low: 14.0e6, high: 14.35e6 },
  17: { label: "17 m", low: 18.068e6, high: 18.168e6 },
  15: { label: "15 m", low: 21.0e6, high: 21.45e6 },
  12: { label: "12 m", low: 24.89e6, high: 24.99e6 },
  10: { label: "10 m", low: 28.0e6, high: 29.7e6 },
} as const satisfies Readonly<Record<number, Band>>;

export type Metres = keyof typeof BY_METRES;

/** From 80 m to 10 m, in rising frequency. */
export const UPPER_BANDS: readonly Band[] = ([80, 40, 30, 20, 17, 15, 12, 10] as const).map((m) => BY_METRES[m]);

/** From 160 m to 10 m, in rising frequency. */
export const BANDS: readonly Band[] = [TOP_BAND, ...UPPER_BANDS];

/** The lower edge of a band, Hz. */
export const lowEdge = (metres: Metres): number => BY_METRES[metres].low;

/** A frequency somewhere in a band, Hz. */
export function inBand(random: Random, metres: Metres): number {
  const { low, high } = BY_METRES[metres];
  return random.range(low, high);
}
