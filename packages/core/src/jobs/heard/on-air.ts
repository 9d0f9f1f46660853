import { ReadError } from "../../input/read-error.js";
import type { ReceptionReport } from "../../reading/reports/report.js";
import { withoutZone } from "../../reading/reports/report-values.js";
import { timeOf } from "../season/dates.js";
import type { DeploymentLog } from "../season/deployment-log.js";
import type { LogRow } from "../season/log-row.js";
import { slotSpan } from "./slots.js";

/** A time during which a deployment was up. */
export interface OnAir {
  readonly deployment: string;
  /** ms since 1970, UTC */
  readonly up: number;
  /** The first moment at which it was no longer; infinite where nothing says when it came down */
  readonly down: number;
  /** Whose reports are of it, where several stations were on the air at once; null: all */
  readonly transmitter: string | null;
}

/**
 * When each deployment of a log was up: from `up`, or else `date`, to `down`, or else to when the next row went up. A row may stand
 * for each time that a deployment was switched on: rows of one name are one deployment.
 *
 * @returns in the order of time; rows that state no time are left out
 * @throws ReadError for an `up` or `down` that is no time, or a `down` before its `up`
 */
export function onAirOf({ rows, fileColumn }: Pick<DeploymentLog, "rows" | "fileColumn">): readonly OnAir[] {
  const known = rows
    .flatMap((row, index) => {
      const up = statedTime(row, "up", index) ?? timeOf(cellOf(row, "date"));
      const down = statedTime(row, "down", index);
      if (up !== null && down !== null && down <= up) refuse(index, `down "${cellOf(row, "down")}" before up`);
      return up === null ? [] : [{ row, up, down }];
    })
    .sort((one, other) => one.up - other.up);
  return known.map(({ row, up, down }) => {
    const next = known.find((other) => other.up > up)?.up ?? Number.POSITIVE_INFINITY;
    const transmitter = cellOf(row, "transmitter").toUpperCase();
    return {
      deployment: (cellOf(row, "deployment") || (row[fileColumn] ?? "")).trim(),
      up,
      down: down ?? next,
      transmitter: transmitter === "" ? null : transmitter,
    };
  });
}

const cellOf = (row: LogRow, wanted: string): string =>
  Object.entries(row).find(([column]) => column.toLowerCase() === wanted)?.[1] ?? "";

/** A time of a row, in UTC or with its offset; null where nothing is stated. */
function statedTime(row: LogRow, column: "up" | "down", index: number): number | null {
  const text = cellOf(row, column).trim();
  if (text === "") return null;
  const { plain, aheadMs } = withoutZone(text);
  const time = timeOf(plain);
  return time === null ? refuse(index, `"${text}" under ${column}`) : time - aheadMs;
}

function refuse(index: number, found: string): never {
  throw new ReadError({
    code: "bad-row",
    file: "log",
    found: `row ${index + 1} below the header says ${found}`,
    expected: "times in UTC such as 2026-09-05 18:00, down after up",
  });
}

/**
 * Finds the time on the air that a report is of. A transmission that is not wholly within one, or within two of different
 * deployments, is of none.
 *
 * @returns a function of a report, which gives null where nothing was up, or where it was being switched
 */
export function onAirFinder(
  periods: readonly OnAir[],
): (report: Pick<ReceptionReport, "time" | "transmitter" | "mode">) => OnAir | null {
  const ordered = periods.toSorted((one, other) => one.up - other.up);
  // By when all that went up so far had come down again: no earlier one needs a look.
  const allDown = ordered.map(() => 0);
  for (const [i, { down }] of ordered.entries()) allDown[i] = Math.max(down, allDown[i - 1] ?? 0);
  return ({ time, transmitter, mode }) => {
    const { start, end } = slotSpan(time, mode);
    let found: OnAir | null = null;
    for (let i = lastUpBy(ordered, end); i >= 0 && (allDown[i] ?? 0) > start; i--) {
      const period = ordered[i] as OnAir;
      if (start >= period.down || (period.transmitter !== null && period.transmitter !== transmitter)) continue;
      if (period.up > start || period.down < end) return null;
      if (found !== null && found.deployment !== period.deployment) return null;
      found ??= period;
    }
    return found;
  };
}

/** The place of the last that was up before a time; -1 where none was. */
function lastUpBy(ordered: readonly OnAir[], time: number): number {
  let [low, high] = [0, ordered.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ordered[middle] as OnAir).up < time) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
