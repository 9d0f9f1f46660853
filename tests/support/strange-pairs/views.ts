import { at } from "./at.js";
import { BANDS, type Band, UPPER_BANDS } from "./bands.js";
import { gammaOfImpedance, magnitude } from "./complex.js";
import type { Random } from "./random.js";
import type { Station } from "./station.js";

/** How much is swept: 1.8 to 30 MHz, 15 % to each side of a band, one band, or the bands from 80 m to 10 m. */
export type ViewRange = "wide" | "fifteen" | "band" | "joined";

/** The frequencies of one sweep, Hz. */
export interface ViewPart {
  readonly label: string;
  readonly frequencyHz: readonly number[];
}

/** The band that was chosen, whether for a dip of the antenna, and the antenna's dips in Hz. */
export interface Place {
  readonly band: string;
  readonly atDip: boolean;
  readonly dipsHz: readonly number[];
}

/** What is swept; the place is null where no band was to be chosen. */
export interface View {
  readonly parts: readonly ViewPart[];
  readonly place: Place | null;
}

const gridOf = (low: number, high: number, points: number): number[] =>
  Array.from({ length: points }, (_, i) => Math.round(low + ((high - low) * i) / (points - 1)));

const middleOf = (band: Band): number => (band.low + band.high) / 2;

/** Dips of |Γ| of the antenna at its own plug, 1.8 to 30 MHz. */
function dipsOf(station: Station): readonly number[] {
  const antenna = station.impedance(station.antenna);
  const hz = gridOf(1.8e6, 30e6, 2001);
  const size = hz.map((one) => magnitude(gammaOfImpedance(antenna(one), 50)));
  const dips: number[] = [];
  let least = 0;
  for (let i = 1; i < size.length - 1; i++) {
    const here = at(size, i);
    if (here < at(size, least)) least = i;
    if (here < at(size, i - 1) && here <= at(size, i + 1) && here < 0.65) dips.push(at(hz, i));
  }
  if (dips.length > 0) return dips;
  // The dip of a small loop may lie between two points of the grid.
  return [station.family === "small-loop" ? Math.round(station.antenna.firstHz) : at(hz, least)];
}

function nearestBand(hz: number): Band {
  const distance = (band: Band) => Math.abs(Math.log(hz / middleOf(band)));
  return BANDS.reduce((best, band) => (distance(band) < distance(best) ? band : best));
}

function chooseBand(station: Station, random: Random): { readonly band: Band; readonly place: Place } {
  const atDip = random.uniform() < 0.5;
  const dipsHz = dipsOf(station);
  const anywhere = random.pick(BANDS);
  const dip = random.pick(dipsHz);
  const band = atDip ? nearestBand(dip) : anywhere;
  return { band, place: { band: band.label, atDip, dipsHz } };
}

/** The view of a station; the count of points, where given, replaces the drawn one. */
export function viewOf(range: ViewRange, station: Station, random: Random, points?: number): View {
  if (range === "wide") {
    const frequencyHz = gridOf(1.8e6, 30e6, points ?? random.pick([301, 401, 501, 601, 801, 1001]));
    return { parts: [{ label: "1.8-30 MHz", frequencyHz }], place: null };
  }
  if (range === "joined") {
    const parts = UPPER_BANDS.map(({ label, low, high }) => ({ label, frequencyHz: gridOf(low, high, points ?? 101) }));
    return { parts, place: null };
  }
  const { band, place } = chooseBand(station, random);
  const middle = middleOf(band);
  const count = points ?? random.pick([101, 151, 201, 301, 401]);
  const part =
    range === "band"
      ? { label: band.label, frequencyHz: gridOf(band.low, band.high, count) }
      : { label: `${band.label} +-15 %`, frequencyHz: gridOf(middle * 0.85, middle * 1.15, count) };
  return { parts: [part], place };
}
