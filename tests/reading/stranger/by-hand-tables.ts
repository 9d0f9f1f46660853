/** Readings by hand in tables by band, several on a line, and several of a band or of several antennas. */
import { joinRows, layoutOf, roomy } from "./layout.js";
import {
  atMegahertz,
  type Band,
  bandName,
  bandsOf,
  fill,
  type Noted,
  type NotedVariants,
  somewhere,
  swrBy,
  within,
} from "./noted.js";
import { at, type Rng } from "./random.js";

type Across = "bands across" | "bands below";

/** A table of bands and columns of SWR. */
function tableBy(rng: Rng, columns: readonly string[], across: Across): Noted {
  const layout = { ...roomy(rng), decimal: "." } as const;
  const name = bandName(rng);
  const bands = bandsOf(rng);
  const swr = bands.map(() => columns.map(() => swrBy(rng)));
  const readings = bands.flatMap((band, b) => at(swr, b).map((value) => within(band, value)));
  const corner = rng.pick(["", "Antenna", "SWR"]);
  const rows =
    across === "bands across"
      ? [[corner, ...bands.map(name)], ...columns.map((column, c) => [column, ...swr.map((of) => String(of[c]))])]
      : [["Band", ...columns], ...bands.map((band, b) => [name(band), ...at(swr, b).map(String)])];
  return { lines: joinRows(rows, { ...layoutOf(rng), ...layout }), readings, layout };
}

/** Of several readings for a band the highest must be there; the others may. */
function highest(noted: Noted): Noted {
  const { readings } = noted;
  const isHighest = (index: number): boolean => {
    const { low, swr } = at(readings, index);
    const own = at(swr, 0);
    return !readings.some(
      (other, k) => other.low === low && (at(other.swr, 0) > own || (at(other.swr, 0) === own && k < index)),
    );
  };
  return { ...noted, readings: readings.map((reading, i) => ({ ...reading, optional: !isHighest(i) })) };
}

/** Several antennas in turns: each a sweep of its own, or all in one. */
function sets(noted: Noted, count: number): Noted {
  const each = Array.from({ length: count }, (_, c) => noted.readings.filter((_reading, i) => i % count === c));
  return { ...noted, truth: { kind: "readings", readings: noted.readings, sets: each } };
}

function antennas(rng: Rng, names: readonly string[], across: Across): Noted {
  return sets(tableBy(rng, names, across), names.length);
}

/** A few frequencies of a band, each with an SWR. */
function sampled(rng: Rng, band: Band, shares: readonly number[]): { mhz: number; swr: number }[] {
  return shares.map((share) => ({
    mhz: Number((band.low + share * (band.high - band.low)).toFixed(3)),
    swr: swrBy(rng),
  }));
}

const ANTENNAS_BELOW = [
  ["sloper", "vee"],
  ["before", "after"],
  ["bow", "stern", "mast"],
];
const ANTENNAS_ACROSS = [
  ["sloper", "vee"],
  ["before", "after"],
  ["SWR bow", "SWR stern"],
];
const LOW_TO_HIGH = [
  ["low", "mid", "high"],
  ["bottom", "middle", "top"],
  ["SWR low", "SWR mid", "SWR high"],
  ["low end", "centre", "high end"],
];

export const TABLES: NotedVariants = {
  "table by band": (rng) => tableBy(rng, [rng.pick(["SWR", "VSWR", "Best SWR"])], "bands below"),
  "table by band, with frequency": (rng) => {
    const layout = { ...roomy(rng), decimal: "." } as const;
    const name = bandName(rng);
    const khz = rng.chance(0.4);
    const notes = bandsOf(rng).map((band) => ({ band, mhz: somewhere(rng, band), swr: swrBy(rng) }));
    const rows = notes.map(({ band, mhz, swr }) => [
      name(band),
      khz ? (mhz * 1000).toFixed(0) : mhz.toFixed(3),
      String(swr),
    ]);
    const lines = joinRows([["Band", khz ? "kHz" : "MHz", "SWR"], ...rows], { ...layoutOf(rng), ...layout });
    return { lines, readings: notes.map(({ mhz, swr }) => atMegahertz(mhz, swr)), layout };
  },
  "table of frequency and SWR": (rng) => {
    const notes = bandsOf(rng).map((band) => ({ mhz: somewhere(rng, band), swr: swrBy(rng) }));
    const rows = notes.map(({ mhz, swr }) => `${mhz.toFixed(3)} ${swr}`);
    const head = rng.pick(["MHz SWR", "freq swr", "MHz  SWR", "f/MHz SWR"]);
    return { lines: [head, ...rows], readings: notes.map(({ mhz, swr }) => atMegahertz(mhz, swr)) };
  },
  "low, middle, high of each band": (rng) => highest(tableBy(rng, rng.pick(LOW_TO_HIGH), "bands below")),
  "bands across the top": (rng) => tableBy(rng, ["SWR"], "bands across"),
  "bands across the top, antennas below": (rng) => antennas(rng, rng.pick(ANTENNAS_BELOW), "bands across"),
  "bands below, antennas across": (rng) => antennas(rng, rng.pick(ANTENNAS_ACROSS), "bands below"),
  "two antennas on a line": (rng) => {
    const name = bandName(rng);
    const noted: Noted = { lines: [], readings: [], clear: false };
    for (const band of bandsOf(rng)) {
      const [sloper, vee] = [swrBy(rng), swrBy(rng)];
      noted.lines.push(`${name(band)} sloper ${sloper} / vee ${vee}`);
      noted.readings.push(within(band, sloper), within(band, vee));
    }
    return sets(noted, 2);
  },
  "several on one line": (rng) => {
    const name = bandName(rng);
    const mark = rng.pick([", ", "; ", " / ", " | ", ",  "]);
    const style = rng.pick(["{b} {s}", "{b}: {s}", "{b}={s}"]);
    const notes = bandsOf(rng, 6).map((band) => ({ band, swr: swrBy(rng) }));
    const parts = notes.map(({ band, swr }) => fill(style, { b: name(band), s: String(swr) }));
    const half = rng.pick([3, 6]);
    const lines = [parts.slice(0, half), parts.slice(half)].filter((part) => part.length > 0);
    return {
      lines: lines.map((part) => part.join(mark)),
      readings: notes.map(({ band, swr }) => within(band, swr)),
    };
  },
  "several readings of a band": (rng) => {
    const name = bandName(rng);
    const noted: Noted = { lines: [], readings: [] };
    for (const band of bandsOf(rng)) {
      const three = [swrBy(rng), swrBy(rng), swrBy(rng)];
      noted.lines.push(`${name(band)}: ${three.join(rng.pick([", ", " ", " / "]))}`);
      noted.readings.push(...three.map((swr) => within(band, swr)));
    }
    return highest(noted);
  },
  "several frequencies of a band": (rng) => {
    const name = bandName(rng);
    const noted: Noted = { lines: [], readings: [] };
    const [mark, gap] = rng.pick([
      [", ", " "],
      ["; ", ": "],
      [", ", "="],
      [" / ", " "],
    ] as const);
    for (const band of bandsOf(rng, 3)) {
      const samples = sampled(rng, band, [0.1, 0.5, 0.9]);
      const parts = samples.map(({ mhz, swr }) => `${mhz.toFixed(3)}${gap}${swr}`);
      noted.lines.push(`${name(band)}: ${parts.join(mark)}`);
      noted.readings.push(...samples.map(({ mhz, swr }) => atMegahertz(mhz, swr)));
    }
    return noted;
  },
  "band as a title, readings below": (rng) => {
    const name = bandName(rng);
    const noted: Noted = { lines: [], readings: [] };
    const colon = rng.pick(["", ":"]);
    for (const band of bandsOf(rng, 3)) {
      const samples = sampled(rng, band, [0, 0.5, 1]);
      noted.lines.push(name(band) + colon, ...samples.map(({ mhz, swr }) => `  ${mhz.toFixed(3)} ${swr}`));
      noted.readings.push(...samples.map(({ mhz, swr }) => atMegahertz(mhz, swr)));
    }
    return noted;
  },
};
