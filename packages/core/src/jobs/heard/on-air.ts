import type { ReceptionReport } from "../../reading/reports/report.js";
import { timeOf } from "../season/dates.js";
import type { DeploymentLog } from "../season/deployment-log.js";
import type { LogRow } from "../season/log-row.js";

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
 */
export function onAirOf({ rows, fileColumn }: Pick<DeploymentLog, "rows" | "fileColumn">): readonly OnAir[] {
  const known = rows
    .flatMap((row) => {
      const up = timeOf(cellOf(row, "up")) ?? timeOf(cellOf(row, "date"));
      return up === null ? [] : [{ row, up }];
    })
    .sort((one, other) => one.up - other.up);
  return known.map(({ row, up }) => {
    const next = known.find((other) => other.up > up)?.up ?? Number.POSITIVE_INFINITY;
    const transmitter = cellOf(row, "transmitter").toUpperCase();
    return {
      deployment: cellOf(row, "deployment") || (row[fileColumn] ?? ""),
      up,
      down: timeOf(cellOf(row, "down")) ?? next,
      transmitter: transmitter === "" ? null : transmitter,
    };
  });
}

const cellOf = (row: LogRow, wanted: string): string =>
  Object.entries(row).find(([column]) => column.toLowerCase() === wanted)?.[1] ?? "";

/**
 * Finds the deployment that a report is of.
 *
 * @returns a function of a report, which gives null where none was up
 */
export function deploymentFinder(
  periods: readonly OnAir[],
): (report: Pick<ReceptionReport, "time" | "transmitter">) => string | null {
  const ordered = periods.toSorted((one, other) => one.up - other.up);
  // By when all that went up so far had come down again: no earlier one needs a look.
  const allDown = ordered.map(() => 0);
  for (const [i, { down }] of ordered.entries()) allDown[i] = Math.max(down, allDown[i - 1] ?? 0);
  return ({ time, transmitter }) => {
    for (let i = lastUpBy(ordered, time); i >= 0 && (allDown[i] ?? 0) > time; i--) {
      const period = ordered[i] as OnAir;
      if (time < period.down && (period.transmitter === null || period.transmitter === transmitter))
        return period.deployment;
    }
    return null;
  };
}

/** The place of the last that was up by a time; -1 where none was. */
function lastUpBy(ordered: readonly OnAir[], time: number): number {
  let [low, high] = [0, ordered.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ordered[middle] as OnAir).up <= time) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
