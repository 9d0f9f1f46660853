/** Readings by hand, a line for each: band or frequency, and SWR, in whatever way a hand writes it. */
import {
  atMegahertz,
  bandName,
  bandsOf,
  between,
  fill,
  lineEach,
  type NotedVariants,
  perBand,
  perFrequency,
  relined,
  somewhere,
  swrBy,
  within,
} from "./noted.js";

/** {b} is a band in metres; words of other languages from memory. */
const LANGUAGES = [
  "{b} m: SWR {s}",
  "{b} м: КСВ {s}",
  "{b} m ROS {s}",
  "bande des {b} m : TOS {s}",
  "{b}-m-Band: SWV {s}",
  "{b} m SWV = {s}",
  "pasmo {b} m WFS {s}",
  "pásmo {b} m: ČSV {s}",
  "{b} metriä SAS {s}",
  "banda de {b} m: ROE {s}",
  "{b}m 定在波比 {s}",
  "{b}m バンド SWR {s}",
  "{b}-metersbandet SWR {s}",
  "{b} m-es sáv: SWR {s}",
];

/** Endings of a line that say the same as the plain one. */
const PLAIN_ENDINGS: readonly ((line: string) => string)[] = [
  (line) => line,
  (line) => line.replace(/ (\S+)$/, ": $1"),
  (line) => line.replace(/ (\S+)$/, " SWR $1"),
  (line) => `${line}:1`,
  (line) => `- ${line}`,
];

const TITLES = ["SWR at Withy Lock", "Readings at the mooring", "SWR, wire over the bow rail"];
const DATES = ["18 April", "2026-04-18", "18.4.2026, dry", "counterpoise 3 m"];

export const LINES: NotedVariants = {
  "band and SWR": perBand("{b} {s}", "{b}  {s}", "{b}\t{s}"),
  "band, colon, SWR": perBand("{b}: {s}", "{b} = {s}", "{b} - {s}", "{b} -> {s}", "{b} .... {s}", "{b}, {s}"),
  "band, SWR and its word": perBand("{b} SWR {s}", "{b}: SWR={s}", "{b} swr is {s}", "SWR {b} {s}", "SWR on {b}: {s}"),
  ratio: perBand("{b} {s}:1", "{b}: {s} : 1", "{b} {s} to 1", "{b} 1:{s}"),
  sentences: perBand(
    "On {b} the SWR is {s}.",
    "{b} gives {s}",
    "I measured {s} on {b}",
    "SWR of {s} on {b}",
    "{s} on {b}",
    "The {b} band has an SWR of {s}",
  ),
  bulleted: perBand("- {b}: {s}", "* {b} {s}", "• {b}: {s}", "[x] {b} {s}"),
  numbered: (rng) => {
    const noted = perBand("{b}: {s}")(rng);
    const style = rng.pick(["{i}. ", "{i}) ", "({i}) "]);
    return relined(noted, (line, i) => fill(style, { i: String(i + 1) }) + line);
  },
  "decimal comma": (rng) =>
    relined(perBand("{b} {s}", "{b}: {s}", "{b} SWR {s}:1")(rng), (line) => line.replace(".", ",")),
  "with a title and dates": (rng) => {
    const noted = perBand("{b} {s}", "{b}: {s}")(rng);
    return { ...noted, lines: [rng.pick(TITLES), rng.pick(DATES), "", ...noted.lines] };
  },
  about: perBand("{b} ~{s}", "{b}: about {s}", "{b} ca. {s}", "{b} ≈ {s}", "{b} roughly {s}"),
  "mixed notations": (rng) => relined(perBand("{b} {s}")(rng), (line) => rng.pick(PLAIN_ENDINGS)(line)),
  languages: (rng) => {
    const style = rng.pick(LANGUAGES);
    const comma = rng.chance(0.5);
    return lineEach(bandsOf(rng), (band) => {
      const swr = swrBy(rng);
      const text = comma ? String(swr).replace(".", ",") : String(swr);
      return { line: fill(style, { b: band.name, s: text }), readings: [within(band, swr)] };
    });
  },
  "frequency and SWR": perFrequency("{m} MHz {s}", "{m} MHz: {s}", "{k} kHz {s}", "{k} kHz: {s}", "{m}MHz = {s}"),
  "bare frequency and SWR": perFrequency("{m} {s}", "{m}: {s}", "{m} - {s}", "{m} ... {s}", "{m} swr {s}"),
  "SWR at frequency": perFrequency(
    "SWR {s} at {m} MHz",
    "{s} @ {m} MHz",
    "{s} at {m}",
    "swr {s} on {k} kHz",
    "f={m} swr={s}",
  ),
  "band, frequency, SWR": (rng) => {
    const name = bandName(rng);
    const style = rng.pick(["{b} {m} {s}", "{b}: {m} {s}", "{b} {m} MHz: {s}", "{b} ({m}) {s}", "{b}: {s} at {m}"]);
    return lineEach(bandsOf(rng), (band) => {
      const [mhz, swr] = [somewhere(rng, band), swrBy(rng)];
      const line = fill(style, { b: name(band), m: mhz.toFixed(3), s: String(swr) });
      return { line, readings: [atMegahertz(mhz, swr)] };
    });
  },
  "band by its megahertz": (rng) => {
    const style = rng.pick(["{m} MHz: {s}", "{m} MHz {s}", "{m} MHz band SWR {s}"]);
    return lineEach(bandsOf(rng), (band) => {
      const swr = swrBy(rng);
      const { low } = atMegahertz(Number(band.mhz), swr);
      return { line: fill(style, { m: band.mhz, s: String(swr) }), readings: [within(band, swr, { low })] };
    });
  },
  "range of frequencies": (rng) => {
    const style = rng.pick(["{m}-{n} MHz {s}", "{m} to {n} MHz: {s}", "{m}–{n}: {s}", "from {m} to {n} MHz SWR {s}"]);
    return lineEach(bandsOf(rng), (band) => {
      const swr = swrBy(rng);
      const [low, high] = [band.low.toFixed(2), (band.low + 0.7 * (band.high - band.low)).toFixed(2)];
      const line = fill(style, { m: low, n: high, s: String(swr) });
      return { line, readings: [between(Number(low), Number(high), swr)] };
    });
  },
  "range of SWR": (rng) => {
    const style = rng.pick(["{b}: {l} to {h}", "{b} {l}-{h}", "{b} between {l} and {h}", "{b} {l} … {h}"]);
    const name = bandName(rng);
    return lineEach(bandsOf(rng), (band) => {
      const low = swrBy(rng);
      const high = Number((low + 0.4).toFixed(2));
      const line = fill(style, { b: name(band), l: String(low), h: String(high) });
      return { line, readings: [within(band, high), within(band, low, { optional: true })] };
    });
  },
};
