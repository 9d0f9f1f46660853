import { grouped } from "../../numbers/grouped.js";
import type { ReceptionReport } from "../../reading/reports/report.js";
import { ADJACENT_MS, slotOf } from "./slots.js";

/** What one receiver heard of two deployments, one after the other. */
export interface ReportPair {
  /** Receivers of one call sign, whatever stands behind it, are one */
  readonly receiver: string;
  readonly before: ReceptionReport;
  readonly after: ReceptionReport;
}

/** A receiver by the longest part of its call sign: "Q0BBB" of "Q0BBB/P" and "Q0BBB-1". */
export const receiverName = (call: string): string =>
  call.split(/[/-]/).reduce((longest, part) => (part.length > longest.length ? part : longest), "");

/**
 * The pairs of two deployments on a band: the same receiver and mode, next to each other in time. Each report is in one pair at
 * most, so that A B B A gives two.
 */
export function pairsOf(before: readonly ReceptionReport[], after: readonly ReceptionReport[]): readonly ReportPair[] {
  const isBefore = new Set(before);
  const streams = grouped([...before, ...after], ({ receiver, mode }) => `${receiver}\n${mode}`);
  return [...streams.values()].flatMap((stream) => {
    const ordered = stream.toSorted((one, other) => one.time - other.time);
    const pairs: ReportPair[] = [];
    let waiting: ReceptionReport | null = null;
    for (const report of ordered) {
      const isOther = waiting !== null && isBefore.has(waiting) !== isBefore.has(report);
      if (waiting !== null && isOther && report.time - waiting.time <= ADJACENT_MS) {
        const [first, second] = isBefore.has(report) ? [report, waiting] : [waiting, report];
        pairs.push({ receiver: receiverName(report.receiver), before: first, after: second });
        waiting = null;
      } else waiting = report;
    }
    return pairs;
  });
}

/** Whether both of a pair were heard in one slot, which takes two transmitters. */
export const isSameSlot = ({ before, after }: ReportPair): boolean =>
  slotOf(before.time, before.mode) === slotOf(after.time, after.mode);
