import type { SweepGrade } from "../grade.js";
import type { LogRow } from "./log-row.js";

/** A date or date and time in ISO 8601, year first; seconds are left to the log. */
const ISO_DATE = /^(\d{4})-(\d\d)-(\d\d)(?:[T ](\d\d):(\d\d)(?::(\d\d))?)?$/;

/**
 * When a sweep was taken: as the log says under `date`, or else as its file does.
 *
 * @returns ISO 8601, a date or a date and time; null where neither says
 */
export function dateOf({ sweep, log }: SweepGrade): string | null {
  const stated = log === null ? "" : statedDate(log);
  return timeOf(stated) === null ? sweep.takenAt : stated;
}

/** What a row of the log says under `date`, in whatever form; nothing where it says nothing. */
export const statedDate = (row: LogRow): string =>
  Object.entries(row).find(([column]) => column.toLowerCase() === "date")?.[1] ?? "";

/**
 * A date as milliseconds since 1970, so that dates can be ordered and subtracted. Every time of day is taken as UTC: nobody says
 * which zone a log is in, and the answer must not hang on the zone of the computer.
 *
 * @param date year first: "2026-05-02", "2026-05-02 14:30"
 * @returns null where it is no date of the calendar in ISO 8601
 * @example
 * ```ts
 * import { timeOf } from "@feedpoint/core";
 *
 * timeOf("1970-01-02"); // → 86400000
 * timeOf("2026-02-30"); // → null
 * ```
 */
export function timeOf(date: string): number | null {
  const match = ISO_DATE.exec(date);
  if (match === null) return null;
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = match
    .slice(1)
    .map((part) => Number(part ?? 0));
  const time = Date.UTC(year, month - 1, day, hour, minute, second);
  const isOfCalendar = new Date(time).getUTCDate() === day && month >= 1 && month <= 12;
  return isOfCalendar && hour < 24 && minute < 60 && second < 60 ? time : null;
}
