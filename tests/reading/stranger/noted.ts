/** What readings by hand are made of: bands, values, lines, and what a person would take from them. */
import type { Layout } from "./layout.js";
import type { Rng } from "./random.js";
import type { Reading, Truth } from "./truth.js";

export interface Band {
  /** In metres. */
  name: string;
  /** Edges in MHz, rounded, in no country's plan; and the whole megahertz by which the band is called. From memory. */
  low: number;
  high: number;
  mhz: string;
}

const BANDS: readonly Band[] = [
  { name: "160", low: 1.8, high: 2, mhz: "1.8" },
  { name: "80", low: 3.5, high: 4, mhz: "3.5" },
  { name: "40", low: 7, high: 7.3, mhz: "7" },
  { name: "30", low: 10.1, high: 10.15, mhz: "10" },
  { name: "20", low: 14, high: 14.35, mhz: "14" },
  { name: "17", low: 18.068, high: 18.168, mhz: "18" },
  { name: "15", low: 21, high: 21.45, mhz: "21" },
  { name: "12", low: 24.89, high: 24.99, mhz: "24" },
  { name: "10", low: 28, high: 29.7, mhz: "28" },
];

/** Lines by hand, and the readings in them. */
export interface Noted {
  lines: string[];
  readings: Reading[];
  clear?: boolean;
  truth?: Truth;
  /** Something is left out for certain, and must be told. */
  mustCaution?: boolean;
  layout?: Partial<Layout>;
}

/** Ways of noting, by name. */
export type NotedVariants = Readonly<Record<string, (rng: Rng) => Noted>>;

/** Some bands, from the longest wave to the shortest. */
export function bandsOf(rng: Rng, count = rng.int(3, 6)): Band[] {
  const chosen = new Set(rng.some(BANDS, count));
  return BANDS.filter((band) => chosen.has(band));
}

/** An SWR as a meter shows it. */
export const swrBy = (rng: Rng): number => Number((1 + rng.between(0.05, 2.4)).toFixed(rng.pick([1, 1, 2])));

/** A frequency within a band, in MHz. */
export const somewhere = (rng: Rng, band: Band): number => Number(rng.between(band.low, band.high).toFixed(3));

/** How this person calls bands. */
export function bandName(rng: Rng): (band: Band) => string {
  const style = rng.pick(["{b}m", "{b} m", "{b}M", "{b} metres", "{b}-m", "{b} meter"]);
  return (band) => fill(style, { b: band.name });
}

/** A style with its places filled: {b} a band, {m} MHz, {k} kHz, {s} an SWR, as the style needs. */
export function fill(style: string, places: Readonly<Record<string, string>>): string {
  return style.replace(/\{(\w)\}/g, (_, name: string) => places[name] ?? "");
}

/** An SWR anywhere in a band. */
export function within(band: Band, swr: number, more: Partial<Reading> = {}): Reading {
  return { low: band.low * 1e6, high: band.high * 1e6, swr: [swr], ...more };
}

/** An SWR at a frequency written to the kHz. */
export function atMegahertz(mhz: number, swr: number): Reading {
  return between(mhz, mhz, swr);
}

/** An SWR anywhere between two such frequencies. */
export function between(low: number, high: number, swr: number): Reading {
  return { low: low * 1e6 - 600, high: high * 1e6 + 600, swr: [swr] };
}

/** A line for each of the bands. */
export function lineEach(bands: readonly Band[], note: (band: Band) => { line: string; readings: Reading[] }): Noted {
  const notes = bands.map(note);
  return { lines: notes.map(({ line }) => line), readings: notes.flatMap(({ readings }) => readings) };
}

/** A line of band and SWR for each band, all written alike. */
export function perBand(...styles: readonly string[]): (rng: Rng) => Noted {
  return (rng) => {
    const style = rng.pick(styles);
    const name = bandName(rng);
    return lineEach(bandsOf(rng), (band) => {
      const swr = swrBy(rng);
      return { line: fill(style, { b: name(band), s: String(swr) }), readings: [within(band, swr)] };
    });
  };
}

/** A line of frequency and SWR for each band, all written alike. */
export function perFrequency(...styles: readonly string[]): (rng: Rng) => Noted {
  return (rng) => {
    const style = rng.pick(styles);
    return lineEach(bandsOf(rng), (band) => {
      const swr = swrBy(rng);
      const mhz = somewhere(rng, band);
      const line = fill(style, { m: mhz.toFixed(3), k: (mhz * 1000).toFixed(0), s: String(swr) });
      return { line, readings: [atMegahertz(mhz, swr)] };
    });
  };
}

/** The same readings with the lines changed. */
export function relined(noted: Noted, change: (line: string, i: number) => string): Noted {
  return { ...noted, lines: noted.lines.map(change) };
}

/** The same, any of which may be left out with a caution. */
export function droppable(noted: Noted): Noted {
  return { ...noted, readings: noted.readings.map((reading) => ({ ...reading, droppable: true })) };
}
