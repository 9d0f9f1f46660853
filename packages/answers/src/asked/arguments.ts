import {
  ACTIVITIES,
  FEEDLINE_KINDS,
  type Feedline,
  FIXED_PARTS,
  type FixedWires,
  feedlineFrom,
  MODE_NAMES,
  type ModeName,
  type PowerByMode,
  parseColumnRoles,
} from "@feedpoint/core";
import { lookUp, suggestion } from "@feedpoint/core/for-command";
import { NO_LINE } from "./known-lines.js";
import { UsageError } from "./usage-error.js";

/** What single options take, checked as they are typed. */

export const listOf = (text: string): readonly string[] => text.split(",").map((part) => part.trim());

export function swrArgument(text: string): number {
  const value = Number(text.replace(/:1$/, ""));
  if (!(value >= 1 && Number.isFinite(value)))
    throw new UsageError("An SWR is a number of 1 or more, with a decimal point.");
  return value;
}

export function positiveArgument(text: string): number {
  const value = Number(text);
  if (!(value > 0 && Number.isFinite(value))) throw new UsageError("A number above 0 is needed, without its unit.");
  return value;
}

/** Watts for every mode, or by mode: "100", "ssb:100,ft8:25". */
export function powerArgument(text: string): number | PowerByMode {
  if (!text.includes(":")) return positiveArgument(text);
  const byMode = listOf(text).flatMap((part) => {
    const [mode = "", watts = ""] = part.split(":");
    return modesArgument(mode).map((name) => [name, positiveArgument(watts)] as const);
  });
  return Object.fromEntries(byMode);
}

const FOOT_M = 0.3048;

/** A distance in metres, or with its unit ("10ft"). @returns m */
export function distanceArgument(text: string): number {
  const [, digits = "", unit = ""] = /^\s*([\d.]+)\s*(m|ft)?\s*$/i.exec(text) ?? [];
  const value = Number(digits) * (unit.toLowerCase() === "ft" ? FOOT_M : 1);
  if (!(value > 0)) throw new UsageError('A distance above 0 is needed, in m ("3m") or ft ("10ft").');
  return value;
}

/** What stays as it is when a wire is cut: "radials", "radials:4x5.1", "counterpoise:3m". */
export function fixedArgument(text: string): FixedWires {
  const [, name = "", count, length] = /^(\w+)(?::(?:(\d+)x)?(.+))?$/.exec(text.trim()) ?? [];
  const what = FIXED_PARTS.find((known) => known === name);
  const isSaidOfNothing = what === "nothing" && length !== undefined;
  if (what === undefined || isSaidOfNothing || count === "0")
    throw new UsageError(
      `"${text}" is none of ${FIXED_PARTS.join(", ")}, nor one with count and length such as radials:4x5.1 or counterpoise:3.`,
    );
  return {
    what,
    ...(count === undefined ? {} : { count: Number(count) }),
    ...(length === undefined ? {} : { lengthM: distanceArgument(length) }),
  };
}

export function shareArgument(text: string): number {
  const value = Number(text);
  if (!(value > 0 && value <= 1)) throw new UsageError("A share above 0 up to 1 is needed, such as 0.5.");
  return value;
}

export function scatterArgument(text: string): number {
  const value = Number(text);
  if (text.trim() === "" || !(value >= 0 && value < 1))
    throw new UsageError("A reflection from 0 up to 1 is needed; 0: nothing was touched between the sweeps.");
  return value;
}

export function wholeNumberArgument(text: string): number {
  const value = Number(text);
  if (!(Number.isInteger(value) && value > 0)) throw new UsageError("A whole number above 0 is needed.");
  return value;
}

export function columnsArgument(text: string) {
  try {
    return parseColumnRoles(text);
  } catch (error) {
    throw new UsageError((error as Error).message);
  }
}

export function feedlineArgument(text: string): string {
  const kinds = FEEDLINE_KINDS.map(({ id }) => id);
  const found = kinds.find((id) => id === text.toLowerCase());
  if (found !== undefined) return found;
  throw new UsageError(`There is no kind "${text}".${suggestion(text, kinds)} Kinds: ${kinds.join(", ")}.`);
}

/** A line in one word, "rg-58:12": its kind and its length in m; "none" for no line. */
export function lineArgument(text: string): Feedline {
  if (text.toLowerCase() === "none") return NO_LINE;
  const [, kind = "", length = ""] = /^(.+):([\d.]+)\s*m?$/.exec(text.trim()) ?? [];
  if (kind === "") throw new UsageError('A line is its kind and its length in m, such as rg-58:12, or "none".');
  return feedlineFrom({ kind: feedlineArgument(kind), lengthM: positiveArgument(length) });
}

/** Names by which modes go elsewhere; digital ones count as data, with its duty. */
const OTHER_MODE_NAMES: Readonly<Record<string, ModeName>> = {
  phone: "ssb",
  voice: "ssb",
  morse: "cw",
  digital: "data",
  ft8: "data",
  ft4: "data",
  js8: "data",
  psk31: "data",
  wspr: "data",
  sstv: "image",
};

export function modesArgument(text: string): readonly ModeName[] {
  const names = listOf(text.toLowerCase()).map((name) => {
    const found = MODE_NAMES.find((known) => known === name) ?? lookUp(OTHER_MODE_NAMES, name);
    if (found !== undefined) return found;
    throw new UsageError(`There is no mode "${name}".${suggestion(name, MODE_NAMES)} Modes: ${MODE_NAMES.join(", ")}.`);
  });
  return [...new Set(names)];
}

/** A bare number above this is hardly MHz: no band plan goes so far. */
const GREATEST_BARE_MHZ = 1000;

const UNITS_HZ: Readonly<Record<string, number>> = { "": 1e6, hz: 1, khz: 1e3, mhz: 1e6, ghz: 1e9 };

/** One frequency: in MHz, or with its unit ("14074kHz"). @returns Hz */
export function frequencyArgument(text: string): number {
  const [, digits = "", unit = ""] = /^\s*([\d.]+)\s*([a-z]*)\s*$/i.exec(text) ?? [];
  const value = Number(digits) * (UNITS_HZ[unit.toLowerCase()] ?? Number.NaN);
  if (!(value > 0)) throw new UsageError('A frequency in MHz is needed, or one with its unit ("14074kHz").');
  if (unit === "" && Number(digits) > GREATEST_BARE_MHZ)
    throw new UsageError(`${digits} would be MHz. Say the unit if another was meant: ${digits}kHz.`);
  // What was typed in decimal is a whole number of hertz, which the product misses by a rounding.
  return Math.round(value * 1000) / 1000;
}

/** A place on the dial: a frequency in Hz, or a common activity, on one band or on all. */
export type Place = number | { readonly label: string; readonly band: string | null };

/** Frequencies in MHz and labels of common activities, such as 14.074,ft8. */
export const placesArgument = (text: string): readonly Place[] =>
  listOf(text).map((part) => {
    if (/^[\d.]/.test(part)) return frequencyArgument(part);
    const labels = [...new Set(ACTIVITIES.map(({ label }) => label))];
    const found = labels.find((label) => label.toLowerCase() === part.toLowerCase());
    if (found !== undefined) return { label: found, band: null };
    throw new UsageError(
      `"${part}" is neither a frequency nor a common activity.${suggestion(part, labels)} Activities: ${labels.join(", ")}.`,
    );
  });

/** A part of some parts, from 1. */
export interface Shard {
  readonly part: number;
  readonly of: number;
}

export function shardArgument(text: string): Shard {
  const [part = 0, of = 0] = /^\d+\/\d+$/.test(text) ? text.split("/").map(Number) : [];
  if (!(part >= 1 && part <= of)) {
    throw new UsageError("A part and their number are needed, such as 3/16.");
  }
  return { part, of };
}

/** What a column of the log must say. */
export interface Condition {
  readonly column: string;
  readonly value: string;
}

export function conditionArgument(text: string): Condition {
  const [, column = "", value = ""] = /^([^=]+)=(.+)$/.exec(text) ?? [];
  if (value === "") throw new UsageError('A column and its value are needed, such as "counterpoise=water".');
  return { column: column.trim(), value: value.trim() };
}

/** What is at the far end of a line. @returns Ω, infinite for an open end */
export function endArgument(text: string): number {
  if (text === "open") return Number.POSITIVE_INFINITY;
  if (text === "short") return 0;
  const ohms = Number(text);
  if (!(ohms >= 0 && Number.isFinite(ohms))) throw new UsageError("It is open, short, or a number of ohms.");
  return ohms;
}
