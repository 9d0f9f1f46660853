import type { Curve } from "../curve/curve.js";
import type { Piece } from "../curve/pieces.js";
import {
  DIPOLE_GAIN_DBI,
  type ExposureDistance,
  exposureDistance,
  gainOf,
  greatestPowerAt,
  type Radiator,
} from "../facts/exposure/exposure.js";
import { EXPOSURE_RULES, type ExposureRuleId, isExempt } from "../facts/exposure/exposure-rules.js";
import { type Feedline, matchedLossDb } from "../facts/feedline/feedline.js";
import type { Mode } from "../facts/modes.js";
import { SPEED_OF_LIGHT } from "../numbers/constants.js";
import { greatestLossAt } from "./loss-bound.js";

/** What is said of people near the antenna. */
export interface People {
  /** The least distance of anybody from the wire, m; absent: not said */
  readonly distanceM?: number;
  /** Share of the time over which a rule averages that is spent on the air, above 0 up to 1; all of it where absent */
  readonly onAir?: number;
}

/** How far people must stay away by one rule, for a power in a mode on a band. */
export interface ExposureByRule extends ExposureDistance {
  readonly rule: ExposureRuleId;
  /** Where people are said to be: the greatest power at the transmitter with which the rule is kept there, W PEP; else null */
  readonly greatestWatts: number | null;
}

/** What a power means for people near the antenna. */
export interface Exposure {
  /** At the antenna, averaged over the time of a rule, W: less the loss of the matched line where one is stated */
  readonly averageWatts: number;
  /** By each rule that says something there */
  readonly byRule: readonly ExposureByRule[];
  /** Whether it needs no evaluation in the United States with people at the distance said; null where none was */
  readonly isExempt: ReturnType<typeof isExempt>;
}

/** A power in a mode, where it is sent, and what stands between it and people. */
export interface Transmitted {
  /** At the transmitter, W PEP */
  readonly watts: number;
  readonly mode: Mode;
  readonly pieces: readonly Piece[];
  readonly radiator: Radiator;
  readonly feedline: Feedline | null;
  /** What was swept, one curve at least: it bounds what the line may lose */
  readonly curves: readonly Curve[];
  readonly people: People;
}

/**
 * What a power means for people near the antenna, at the edges of the pieces where it may be sent: the limits of waves fall with
 * frequency, the fields beside a short wire grow the other way.
 */
export function exposureOf({ watts, mode, pieces, radiator, feedline, curves, people }: Transmitted): Exposure {
  const { distanceM, onAir = 1 } = people;
  const edges = [
    Math.min(...pieces.map(({ lowHz }) => lowHz)),
    Math.max(...pieces.map(({ highHz }) => highHz)),
  ] as const;
  const delivered = feedline === null ? 1 : 10 ** (-creditedLossDb(feedline, curves, edges[0]) / 10);
  const peakWatts = watts * delivered;
  const averageShare = mode.dutyFactor * onAir;
  const averageWatts = peakWatts * averageShare;
  const byRule = EXPOSURE_RULES.flatMap(({ id: rule }): readonly ExposureByRule[] => {
    const told = edges.map((edge) => exposureDistance(rule, edge, { peakWatts, averageWatts }, radiator));
    const [first, second] = told;
    if (!first || !second) return [];
    const farther = second.distanceM > first.distanceM ? second : first;
    return [{ rule, ...farther, greatestWatts: greatestOf(rule, edges, averageShare, delivered, distanceM, radiator) }];
  });
  return {
    averageWatts,
    byRule,
    isExempt: distanceM === undefined ? null : exemptOver(edges, averageWatts, distanceM, radiator),
  };
}

/** Whether a station needs no evaluation at any of some frequencies; null where the rule says nothing at one. */
function exemptOver(
  edges: readonly number[],
  averageWatts: number,
  distanceM: number,
  radiator: Radiator,
): Exposure["isExempt"] {
  const told = edges.map((edge) => {
    const overDipole = gainOf(radiator, SPEED_OF_LIGHT / edge) / 10 ** (DIPOLE_GAIN_DBI / 10);
    return isExempt(averageWatts * overDipole, edge, distanceM);
  });
  return STRICTEST_FIRST.find((answer) => told.includes(answer)) ?? null;
}

const STRICTEST_FIRST = [null, "too-near", "not-exempt", "exempt"] as const;

/** What the matched line loses, but no more than the sweep allows: what a mismatch adds, or a line cannot have lost, is not credited. */
const creditedLossDb = (feedline: Feedline, curves: readonly Curve[], frequencyHz: number): number =>
  Math.min(matchedLossDb(feedline, frequencyHz), greatestLossAt(curves, frequencyHz));

function greatestOf(
  rule: ExposureRuleId,
  edges: readonly number[],
  averageShare: number,
  delivered: number,
  distanceM: number | undefined,
  radiator: Radiator,
): number | null {
  if (distanceM === undefined) return null;
  const told = edges.map((edge) => greatestPowerAt(rule, edge, distanceM, averageShare, radiator));
  return Math.min(...told.map((watts) => watts ?? Number.POSITIVE_INFINITY)) / delivered;
}
