/** A band by the name of its wavelength, and the frequencies that the name stands for. */
export interface NamedBand {
  readonly band: string;
  readonly lowHz: number;
  readonly highHz: number;
}

/**
 * The amateur bands by their usual names, from the lowest up: what all three ITU Regions have in common of each, and 4 m and
 * 1.25 m as the countries have them that give them to amateurs. A reading
 * noted as "40m" is about these.
 *
 * Source: ITU Radio Regulations, Article 5, Table of Frequency Allocations; `tests/reference/band-names.test.ts` holds the
 * edges to the plans made from it.
 */
export const NAMED_BANDS: readonly NamedBand[] = [
  { band: "2200m", lowHz: 135_700, highHz: 137_800 },
  { band: "630m", lowHz: 472_000, highHz: 479_000 },
  { band: "160m", lowHz: 1_810_000, highHz: 1_850_000 },
  { band: "80m", lowHz: 3_500_000, highHz: 3_800_000 },
  { band: "60m", lowHz: 5_351_500, highHz: 5_366_500 },
  { band: "40m", lowHz: 7_000_000, highHz: 7_200_000 },
  { band: "30m", lowHz: 10_100_000, highHz: 10_150_000 },
  { band: "20m", lowHz: 14_000_000, highHz: 14_350_000 },
  { band: "17m", lowHz: 18_068_000, highHz: 18_168_000 },
  { band: "15m", lowHz: 21_000_000, highHz: 21_450_000 },
  { band: "12m", lowHz: 24_890_000, highHz: 24_990_000 },
  { band: "10m", lowHz: 28_000_000, highHz: 29_700_000 },
  { band: "6m", lowHz: 50_000_000, highHz: 52_000_000 },
  { band: "4m", lowHz: 70_000_000, highHz: 70_500_000 },
  { band: "2m", lowHz: 144_000_000, highHz: 146_000_000 },
  { band: "1.25m", lowHz: 222_000_000, highHz: 225_000_000 },
  { band: "70cm", lowHz: 430_000_000, highHz: 440_000_000 },
];
