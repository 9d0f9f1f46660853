import { median } from "simple-statistics";
import type { ClusteredMean, ClusterValue } from "../../numbers/clusters.js";
import { grouped } from "../../numbers/grouped.js";
import { hodgesLehmann } from "../../numbers/hodges-lehmann.js";
import { student95 } from "../../numbers/student.js";
import type { ReportPair } from "./pairs.js";

/** A pair with its difference, and the switch that lies between its two. */
export interface FoundPair {
  readonly pair: ReportPair;
  readonly difference: number;
  readonly turn: number;
}

/** What one receiver says of the difference. */
export interface ReceiverValue extends ClusterValue {
  readonly receiver: string;
  readonly pairs: number;
}

/** A report is a whole number of dB: so much each pair varies at least. */
const ROUNDING_VARIANCE = 2 / 12;
/** Of so many values a median is as good, and all their means by twos are too many. */
const MANY = 200;
/** What a middle of many values varies more than their mean (Hodges and Lehmann, for normal scatter). */
const HODGES_LEHMANN_LOSS = Math.PI / 3;
/** What each receiver says, and how sure it is of it: by how the pairs of all receivers scatter about their own middle. */
export function receiverValues(found: readonly FoundPair[]): readonly ReceiverValue[] {
  const groups = Array.from(
    grouped(found, ({ pair }) => pair.receiver),
    ([receiver, own]) => {
      const values = own.map(({ difference }) => difference);
      return { receiver, values, middle: values.length > MANY ? median(values) : hodgesLehmann(values) };
    },
  );
  const freedom = found.length - groups.length;
  const squares = groups.reduce(
    (sum, { values, middle }) => sum + values.reduce((own, value) => own + (value - middle) ** 2, 0),
    0,
  );
  const within = Math.max(ROUNDING_VARIANCE, freedom > 0 ? squares / freedom : 0);
  return groups.map(({ receiver, values, middle }) => ({
    receiver,
    pairs: values.length,
    value: middle,
    variance: (within * (values.length > 1 ? HODGES_LEHMANN_LOSS : 1)) / values.length,
  }));
}

/**
 * The interval over receivers, widened by what they do in common: all pairs of a switch share the fading of that moment. Its part is
 * what the sums by switch scatter beyond what their pairs would by themselves (A. C. Cameron, J. B. Gelbach, D. L. Miller, J. Bus. Econ.
 * Stat. 29:238, 2011, two-way clustering; from memory).
 */
export function widened(
  { mean, interval, between }: ClusteredMean,
  found: readonly FoundPair[],
  receivers: readonly ReceiverValue[],
): Pick<ClusteredMean, "mean" | "interval"> {
  const switches = grouped(found, ({ turn }) => turn);
  if (interval === null || switches.size < 2) return { mean, interval };
  const weights = receivers.map(({ variance }) => 1 / (variance + between));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const own = new Map(
    receivers.map((each, i) => [each.receiver, { ...each, share: (weights[i] as number) / whole / each.pairs }]),
  );
  // How far each pair moves the mean beside what its receiver says.
  const pullOf = ({ pair, difference }: FoundPair) => {
    const receiver = own.get(pair.receiver);
    return receiver === undefined ? 0 : receiver.share * (difference - receiver.value);
  };
  const sumOf = (pairs: readonly FoundPair[]) => pairs.reduce((sum, each) => sum + pullOf(each), 0);
  const bySwitch = [...switches.values()].reduce((sum, pairs) => sum + sumOf(pairs) ** 2, 0);
  const byPair = found.reduce((sum, each) => sum + pullOf(each) ** 2, 0);
  const common = Math.max(0, bySwitch - byPair) * student95(switches.size - 1) ** 2;
  const half = Math.hypot((interval.high - interval.low) / 2, Math.sqrt(common));
  return { mean, interval: { low: mean - half, high: mean + half } };
}
