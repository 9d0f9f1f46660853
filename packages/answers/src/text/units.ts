import type { Limits, PlanInfo, Point, PowerLimit } from "@feedpoint/core";
import { lookUp } from "@feedpoint/core/for-command";
import { printable } from "./escape.js";

/** The one place that picks digits and units for people. */

/** A number with so many digits; what rounds to nothing has no sign. */
export const fixed = (value: number, digits: number): string => {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace("-", "") : text;
};

export const megahertz = (frequencyHz: number): string => fixed(frequencyHz / 1e6, 3);

export const kilohertz = (widthHz: number): string => `${Math.round(widthHz / 1000)} kHz`;

/** Rounding alone makes more of a total reflection. */
const GREATEST_SWR = 10_000;

export const swr = (value: number | null): string => {
  if (value === null) return "–";
  if (value === Number.POSITIVE_INFINITY) return "∞";
  if (value >= GREATEST_SWR) return `>${GREATEST_SWR}`;
  return fixed(value, value < 10 ? 2 : value < 100 ? 1 : 0);
};

/** The SWR of a point, with a sign where the instrument's scale ended there. */
export const pointSwr = (point: Point | null): string =>
  point === null ? "–" : `${point.isAtLeast ? "≥" : ""}${swr(point.swr)}`;

/** A share of a whole; neither a part of it nor all but a part is rounded away. */
export const percent = (fraction: number): string => {
  const rounded = Math.round(fraction * 100);
  if (rounded === 100 && fraction < 1) return "99 %";
  if (rounded === 0 && fraction > 0) return "1 %";
  return `${rounded} %`;
};

/** A span in MHz; a channel of a few kilohertz with one digit more. */
export const span = ({ lowHz, highHz }: { lowHz: number; highHz: number }): string => {
  const digits = highHz - lowHz < 10_000 ? 4 : 3;
  return `${fixed(lowHz / 1e6, digits)}-${fixed(highHz / 1e6, digits)}`;
};

/** A change with its sign, a true minus for a person; what rounds to nothing has none. */
export const signed = (value: number, digits: number): string => {
  const size = fixed(Math.abs(value), digits);
  if (Number(size) === 0) return size;
  return `${value > 0 ? "+" : "−"}${size}`;
};

const BASES: Readonly<Record<PowerLimit["basis"], string>> = {
  pep: "W PEP",
  mean: "W mean",
  erp: "W ERP",
  eirp: "W EIRP",
};

/** A limit of power with where it is measured. */
export const power = (limit: PowerLimit | null): string =>
  limit === null ? "–" : `${limit.watts} ${BASES[limit.basis]}`;

/** A distance to be kept, m: one decimal, rounded up. */
export const distance = (metres: number): string => `${(Math.ceil(metres * 10 - 1e-9) / 10).toFixed(1)} m`;

/** A power in watts, with more digits where it is small; rounded down, for it may be a limit. */
export const watts = (value: number | null): string =>
  value === null ? "–" : `${value < 10 ? Math.floor(value * 100 + 1e-9) / 100 : Math.floor(value + 1e-9)} W`;

/** How a text is laid out, and what it was judged by. */
export interface TextOptions {
  /** Columns that it may take */
  readonly width: number;
  /** The station file that was read; null where there was none */
  readonly stationFile: string | null;
}

/** Where what was not typed comes from; nothing where there was no station file. */
export const stationLines = (stationFile: string | null): readonly string[] =>
  stationFile === null ? [] : [`Station: ${printable(stationFile)}`];

/** Which plan was judged by. */
export const planLine = ({ title, licenceClass, id }: Pick<PlanInfo, "id" | "title" | "licenceClass">): string =>
  `Plan: ${title}${licenceClass === null ? "" : `, class ${licenceClass}`} (${id})`;

/** The limits in force. */
export const limitsLine = ({ swr: limit, builtInTunerSwr, wideRangeTunerSwr }: Limits): string =>
  `Within reach: ${limit}:1 without a tuner, ${builtInTunerSwr}:1 with a built-in one, ${wideRangeTunerSwr}:1 with a wide-range one`;

const USES: Readonly<Record<string, string>> = {
  allocation: "all",
  all: "all",
  cw: "Morse",
  "cw-data": "Morse, data",
  "cw-phone": "Morse, phone",
  narrow: "narrow modes",
  "all-narrow": "all, narrow",
  channel: "channel",
  beacon: "beacons",
  "weak-signal": "weak signals",
  fm: "FM",
  satellite: "satellites",
  guard: "kept clear",
};

/** What a segment is for, in words. */
export const use = (name: string): string => lookUp(USES, name) ?? name;

const EMISSIONS: Readonly<Record<string, string>> = { cw: "Morse", mcw: "tone Morse" };

export const emissions = (names: readonly string[] | null): string =>
  names === null ? "–" : names.map((name) => EMISSIONS[name] ?? name).join(", ");
