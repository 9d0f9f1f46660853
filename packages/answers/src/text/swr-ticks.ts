import type { Limits } from "@feedpoint/core";

/** SWRs that have a line or a label on an axis. */
export const SWR_TICKS: readonly number[] = [1, 1.2, 1.5, 2, 3, 5, 10, Number.POSITIVE_INFINITY];

export interface LimitLine {
  readonly swr: number;
  /** What it is the limit of */
  readonly note: string;
}

/** The limits that lie on an axis, each once. */
export function limitLines({ swr, builtInTunerSwr, wideRangeTunerSwr }: Limits, greatestSwr: number): LimitLine[] {
  const lines = [
    { swr, note: "no tuner" },
    { swr: builtInTunerSwr, note: "built-in tuner" },
    { swr: wideRangeTunerSwr, note: "wide-range tuner" },
  ];
  return lines.filter((line, i) => line.swr <= greatestSwr && lines.findIndex((other) => other.swr === line.swr) === i);
}

/** The least of the usual ends of an SWR axis that shows the limit and all of some SWRs. */
export function greatestShownSwr({ swr }: Limits, swrs: readonly number[]): number {
  const needed = Math.max(swr * 1.1, ...swrs);
  return [3, 5, 10].find((end) => end >= needed) ?? Number.POSITIVE_INFINITY;
}
