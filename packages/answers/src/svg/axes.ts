import { type Piece, reflectionMagnitudeFromSwr } from "@feedpoint/core";
import { scaleLinear, scaleLog, scaleSymlog } from "d3-scale";
import { SWR_TICKS } from "../text/swr-ticks.js";

export interface Tick {
  readonly value: number;
  readonly label: string;
}

/** An axis: where a value lies, and what is written beside it. */
export interface Axis {
  readonly place: (value: number) => number;
  readonly ticks: readonly Tick[];
  readonly isLogarithmic?: boolean;
}

/** Ends of an axis in the picture, the end of its least value first. */
export type Ends = readonly [number, number];

/** A range over more than this ratio of frequencies is drawn on a logarithmic axis. */
const GREATEST_LINEAR_RATIO = 16;

/** Frequency in MHz. */
export function frequencyAxis({ lowHz, highHz }: Piece, ends: Ends, tickCount: number): Axis {
  const domain = [lowHz / 1e6, highHz / 1e6];
  const isLogarithmic = highHz / lowHz > GREATEST_LINEAR_RATIO;
  const scale = (isLogarithmic ? scaleLog() : scaleLinear()).domain(domain).range(ends);
  const values = isLogarithmic ? scale.ticks(tickCount).filter(isOneTwoOrFive) : scale.ticks(tickCount);
  const label = isLogarithmic ? String : scale.tickFormat(tickCount);
  return { place: scale, ticks: values.map((value) => ({ value, label: label(value) })), isLogarithmic };
}

const isOneTwoOrFive = (value: number) =>
  [1, 2, 5].includes(Number((value / 10 ** Math.floor(Math.log10(value))).toFixed(6)));

/** SWR, evenly spaced in ρ: what matters is spread out, and even an infinite SWR has its place. Values are ρ. */
export function swrAxis(greatestSwr: number, ends: Ends): Axis {
  const place = scaleLinear()
    .domain([0, reflectionMagnitudeFromSwr(greatestSwr)])
    .range(ends);
  const ticks = SWR_TICKS.filter((swr) => swr <= greatestSwr).map((swr) => ({
    value: reflectionMagnitudeFromSwr(swr),
    label: swr === Number.POSITIVE_INFINITY ? "∞" : String(swr),
  }));
  return { place, ticks };
}

/** Return loss in dB; 0 at the top, so that a dip of the SWR is a dip here too. */
export function returnLossAxis(greatestDb: number, [bottom, top]: Ends): Axis {
  const end = Math.min(50, Math.max(20, Math.ceil(greatestDb / 10) * 10));
  const place = scaleLinear().domain([0, end]).range([top, bottom]).clamp(true);
  return { place, ticks: place.ticks(5).map((value) => ({ value, label: String(value) })) };
}

const OHMS = [0, 10, 25, 50, 100, 250, 500, 1000, 2500, 5000, 10_000];

/** Ohms from least to greatest, about even around 0 and logarithmic far from it. */
export function ohmsAxis(least: number, greatest: number, ends: Ends): Axis {
  const end = (ohms: number) => OHMS.find((step) => step >= ohms) ?? OHMS.at(-1) ?? 0;
  const [low, high] = [least < 0 ? -end(-least) : 0, Math.max(50, end(greatest))];
  const place = scaleSymlog().constant(25).domain([low, high]).range(ends).clamp(true);
  const values = [...OHMS.map((ohms) => -ohms), ...OHMS].filter((ohms) => ohms >= low && ohms <= high);
  const ticks = [...new Set(values.map((value) => value + 0))].filter((ohms) => Math.abs(ohms) !== 10);
  return { place, ticks: ticks.map((value) => ({ value, label: String(value).replace("-", "−") })) };
}
