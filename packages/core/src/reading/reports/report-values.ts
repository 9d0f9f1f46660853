/** Times, bands, powers and strengths as logs and tables write them. */
import { NAMED_BANDS } from "../../facts/band-names.js";

/** Where bands reach farther in some country than in all, MHz (ADIF's enumeration of bands; from memory). They are labels, not a plan. */
const WIDEST_MHZ: Readonly<Record<string, readonly [low: number, high: number]>> = {
  "160m": [1.8, 2],
  "80m": [3.5, 4],
  "60m": [5.06, 5.45],
  "40m": [7, 7.3],
  "6m": [50, 54],
  "2m": [144, 148],
  "70cm": [420, 450],
};

const BANDS = NAMED_BANDS.map(({ band, lowHz, highHz }) => {
  const [low, high] = WIDEST_MHZ[band] ?? [lowHz / 1e6, highHz / 1e6];
  return { band, lowHz: low * 1e6, highHz: high * 1e6 };
});

/** A time without its zone, and by how much that is ahead of UTC, ms; 0 for "Z", "UTC" and for what states none. */
export function withoutZone(text: string): { readonly plain: string; readonly aheadMs: number } {
  const [, plain = "", sign, hours = "0", minutes = "0"] =
    /^(.*?)\s*(?:Z|UTC|([+-])(\d\d):?(\d\d))?$/i.exec(text.trim()) ?? [];
  const size = (Number(hours) * 60 + Number(minutes)) * 60_000;
  return { plain, aheadMs: sign === "-" ? -size : size };
}

/** The parts of a date and a time of day, with or without signs between them. */
const DATE_AND_TIME = /^(\d{4}|\d{2})[-/.]?(\d\d)[-/.]?(\d\d)[T _]+(\d\d)[:.h]?(\d\d)(?:[:.]?(\d\d)(?:\.\d+)?)?$/i;

/**
 * A date and a time of day as ms since 1970: "2026-05-02 14:22", "2026-05-02T14:22:07Z", "20260502 1422", "260502 1422", in UTC
 * unless an offset says otherwise ("+02:00"); or seconds or ms since 1970.
 *
 * @returns null for what is none of these, or no day of the calendar
 */
export function reportTime(text: string): number | null {
  if (/^\s*1\d{9}\s*$/.test(text)) return Number(text) * 1000;
  if (/^\s*1\d{12}\s*$/.test(text)) return Number(text);
  const { plain, aheadMs } = withoutZone(text);
  const match = DATE_AND_TIME.exec(plain);
  if (match === null) return null;
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = match
    .slice(1)
    .map((part) => Number(part ?? 0));
  const whole = year < 100 ? 2000 + year : year;
  const time = Date.UTC(whole, month - 1, day, hour, minute, second);
  const back = new Date(time);
  const isOfCalendar = back.getUTCFullYear() === whole && back.getUTCMonth() === month - 1 && back.getUTCDate() === day;
  return isOfCalendar && hour < 24 && minute < 60 && second < 61 ? time - aheadMs : null;
}

/** The band that a name or a number stands for: "40m", "40 M", "40"; null for none. */
export function bandNamed(text: string): string | null {
  const plain = text.toLowerCase().replace(/\s/g, "");
  return NAMED_BANDS.find(({ band }) => band === plain || band === `${plain}m`)?.band ?? null;
}

/** The band of a frequency in MHz, kHz or Hz, whichever makes it one; null for none. */
export function bandAt(text: string): string | null {
  const value = Number(text.trim().replace(",", "."));
  if (!(value > 0)) return null;
  for (const unit of [1e6, 1e3, 1]) {
    const hz = value * unit;
    const found = BANDS.find(({ lowHz, highHz }) => hz >= lowHz && hz <= highHz);
    if (found !== undefined) return found.band;
  }
  return null;
}

/** Modes whose reports are readability, strength and tone, and no ratio of signal to noise. */
const REPORTED_BY_RST = /^(?:CW|SSB|USB|LSB|AM|FM|PHONE|RTTY|PSK\d*|)$/;

/**
 * A report as signal over noise in dB: "-15", "+03".
 *
 * @param mode null where the column itself says that it is a ratio in dB
 * @returns null for an RST ("599"), words, or nothing
 */
export function snrIn(text: string, mode: string | null): number | null {
  const plain = text
    .trim()
    .replace(/\s*dB$/i, "")
    .replace(/^[−–]/, "-")
    .replace(",", ".");
  if (!/^[+-]?\d{1,2}(?:\.\d+)?$/.test(plain)) return null;
  return mode !== null && REPORTED_BY_RST.test(mode) && !/^[+-]/.test(plain) ? null : Number(plain);
}

/** The powers that the weak-signal beacon mode can state, dBm. */
const BEACON_DBM = [0, 3, 7, 10, 13, 17, 20, 23, 27, 30, 33, 37, 40, 43, 47, 50, 53, 57, 60];

/**
 * A power in W: stated in watts, in dBm, or in a column that does not say which, where it is dBm only if all of them can be that.
 *
 * @param unit null: the column does not say
 */
export function powersIn(texts: readonly string[], unit: "W" | "dBm" | null): readonly (number | null)[] {
  const values = texts.map((text) => {
    const [, digits = "", own = ""] = /^\s*([+-]?[\d.]+)\s*(dBm|mW|W)?\s*$/i.exec(text) ?? [];
    return { value: digits === "" ? null : Number(digits), own: own.toLowerCase() };
  });
  const known = values.flatMap(({ value }) => value ?? []);
  const areDbm =
    unit === "dBm" || (unit === null && known.length > 0 && known.every((value) => BEACON_DBM.includes(value)));
  return values.map(({ value, own }) => {
    if (value === null || Number.isNaN(value)) return null;
    const isDbm = own === "dbm" || (own === "" && areDbm);
    const watts = isDbm ? 10 ** ((value - 30) / 10) : own === "mw" ? value / 1000 : value;
    return watts > 0 ? watts : null;
  });
}

/** A call sign as it is compared. */
export const callOf = (text: string): string =>
  text
    .trim()
    .replace(/^[<(]|[>)]$/g, "")
    .toUpperCase();
