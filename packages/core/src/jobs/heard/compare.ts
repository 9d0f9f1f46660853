import { median } from "simple-statistics";
import { clusteredMean, signFlipChance } from "../../numbers/clusters.js";

import type { ReceptionReport } from "../../reading/reports/report.js";
import { type ReceiverValue, receiverValues, widened } from "./by-receiver.js";
import { type HeardOfOne, heardOfOne } from "./only-one.js";
import { isSameSlot, pairsOf, type ReportPair } from "./pairs.js";
import { SECTORS, type Sector } from "./where.js";

/** Whether the second of two deployments is heard better than the first; "cannot-tell" is no "equal". */
export type HeardVerdict = "better" | "worse" | "cannot-tell";

/** How two deployments compare on the air, on one band. */
export interface HeardComparison {
  readonly before: string;
  readonly after: string;
  readonly band: string;
  readonly verdict: HeardVerdict;
  /** By how much the second is heard better, dB, powers taken off; null where there is no pair */
  readonly differenceDb: number | null;
  /** Both ends that hold it with 95 %, the receivers taken for what they are: the only independent witnesses */
  readonly lowDb: number | null;
  readonly highDb: number | null;
  readonly receivers: number;
  readonly pairs: number;
  /** Switches from one to the other that lie between the two of a pair; of pairs in one slot each slot */
  readonly switches: number;
  /** Pairs heard in one slot; the others lie next to each other in time */
  readonly sameSlot: number;
  /** Between the two of a pair, ms */
  readonly medianGapMs: number | null;
  /** Pairs too near an end of the scale for their difference to count */
  readonly offScale: number;
  /** Pairs of which both powers were stated, and so taken off */
  readonly withPowers: number;
  /** What it would take to tell a difference of `ofDb`, by how these receivers scatter; null where it is told, or nothing is known */
  readonly toTell: { readonly ofDb: number; readonly receivers: number; readonly pairs: number } | null;
  /** By direction, where three receivers or more lie in one; a difference here is one of pattern */
  readonly sectors: readonly SectorDifference[];
  readonly heardOfOne: HeardOfOne;
}

/** How two deployments compare in one direction. */
export interface SectorDifference {
  readonly sector: Sector;
  readonly receivers: number;
  readonly pairs: number;
  readonly differenceDb: number;
  /** Both ends that hold it with 95 % */
  readonly lowDb: number;
  readonly highDb: number;
}

/**
 * Where the mean of both reports of a pair must lie, dB in 2500 Hz. Estimates are even from about -18 to +13 (O. Duffy,
 * "WSPR for A/B tests"); the mean, and not each by itself, so that a difference does not choose its own pairs.
 */
const SCALE_DB = { low: -20, high: 8 };
/** Fewer receivers cannot show a difference on both sides of 5 %, whatever they say (signs alone). */
const FEWEST_RECEIVERS = 6;
/** So far beyond the interval of 95 % a difference is told: about 98 %, so that of many nights hardly one is told wrongly. */
const TOLD_BEYOND = 1.2;
/** What fades for all receivers at once is the same for all pairs of a switch: a few switches do not tell how much that is. */
const FEWEST_SWITCHES = 4;
/** A smaller difference is hardly worth more nights. */
const LEAST_WORTH_DB = 1;

/**
 * @param all every report on the band, of whomever
 * @param turnOf what tells the times on the air apart, one from the next
 * @param sectorOf the direction in which a receiver lies; null: not known
 */
export function compareOnBand(
  names: { readonly before: string; readonly after: string; readonly band: string },
  sides: { readonly before: readonly ReceptionReport[]; readonly after: readonly ReceptionReport[] },
  all: readonly ReceptionReport[],
  turnOf: (report: ReceptionReport) => number,
  sectorOf: (receiver: string) => Sector | null,
): HeardComparison {
  const { before, after } = sides;
  const found = pairsOf(before, after).flatMap((pair) => {
    const difference = differenceOf(pair);
    return difference === null ? [] : [{ pair, difference, turn: turnOfPair(pair, turnOf) }];
  });
  const counting = found.filter(({ pair }) => isOnScale(pair));
  const receivers = receiverValues(counting);
  const switches = new Set(counting.map(({ turn }) => turn)).size;
  const { mean, interval } =
    receivers.length === 0 ? { mean: null, interval: null } : widened(clusteredMean(receivers), counting, receivers);
  const gaps = counting.map(({ pair }) => Math.abs(pair.after.time - pair.before.time));
  const verdict = switches < FEWEST_SWITCHES ? "cannot-tell" : verdictOf(mean, interval, receivers);
  return {
    ...names,
    verdict,
    differenceDb: mean,
    lowDb: interval?.low ?? null,
    highDb: interval?.high ?? null,
    receivers: receivers.length,
    pairs: counting.length,
    switches,
    sameSlot: counting.filter(({ pair }) => isSameSlot(pair)).length,
    medianGapMs: gaps.length === 0 ? null : median(gaps),
    offScale: found.length - counting.length,
    withPowers: counting.filter(({ pair }) => hasPowers(pair)).length,
    toTell: verdict === "cannot-tell" ? wanted(mean, interval, receivers.length, counting.length) : null,
    sectors: sectorDifferences(receivers, sectorOf),
    heardOfOne: heardOfOne(before, after, all),
  };
}

/** Fewer receivers than these say nothing of a direction. */
const FEWEST_IN_SECTOR = 3;

function sectorDifferences(
  receivers: readonly ReceiverValue[],
  sectorOf: (receiver: string) => Sector | null,
): readonly SectorDifference[] {
  return SECTORS.flatMap((sector) => {
    const own = receivers.filter(({ receiver }) => sectorOf(receiver) === sector);
    if (own.length < FEWEST_IN_SECTOR) return [];
    const { mean, interval } = clusteredMean(own);
    if (interval === null) return [];
    const pairs = own.reduce((sum, each) => sum + each.pairs, 0);
    return [{ sector, receivers: own.length, pairs, differenceDb: mean, lowDb: interval.low, highDb: interval.high }];
  });
}

const hasPowers = ({ before, after }: ReportPair): boolean => before.powerW !== null && after.powerW !== null;

/** By how much the second was heard better, dB; null where a report has no ratio to noise. */
function differenceOf({ before, after }: ReportPair): number | null {
  if (before.snrDb === null || after.snrDb === null) return null;
  const power = before.powerW === null || after.powerW === null ? 0 : 10 * Math.log10(after.powerW / before.powerW);
  return after.snrDb - before.snrDb - power;
}

function isOnScale({ before, after }: ReportPair): boolean {
  const mean = ((before.snrDb ?? 0) + (after.snrDb ?? 0)) / 2;
  return mean >= SCALE_DB.low && mean <= SCALE_DB.high;
}

/** The switch between the two of a pair, by the time on the air of the later one; the slot itself where both are in one. */
function turnOfPair(pair: ReportPair, turnOf: (report: ReceptionReport) => number): number {
  const { before, after } = pair;
  return isSameSlot(pair) ? before.time : turnOf(before.time > after.time ? before : after);
}

/** Told only where the interval, a fifth wider, leaves out 0, and the signs of the receivers alone say so as well. */
function verdictOf(
  mean: number | null,
  interval: { readonly low: number; readonly high: number } | null,
  receivers: readonly ReceiverValue[],
): HeardVerdict {
  if (mean === null || interval === null || receivers.length < FEWEST_RECEIVERS) return "cannot-tell";
  if (Math.abs(mean) <= (TOLD_BEYOND * (interval.high - interval.low)) / 2) return "cannot-tell";
  const chance = signFlipChance(receivers.map(({ value }) => value));
  if (chance !== null && chance > 0.05) return "cannot-tell";
  return mean > 0 ? "better" : "worse";
}

/** An interval is as wide as the root of the receivers is small. */
function wanted(
  mean: number | null,
  interval: { readonly low: number; readonly high: number } | null,
  receivers: number,
  pairs: number,
): HeardComparison["toTell"] {
  if (mean === null || interval === null) return null;
  const ofDb = Math.max(LEAST_WORTH_DB, Math.abs(mean));
  const times = Math.max(1, ((TOLD_BEYOND * (interval.high - interval.low)) / 2 / ofDb) ** 2);
  const least = Math.max(FEWEST_RECEIVERS, Math.ceil(times * receivers));
  return { ofDb, receivers: least, pairs: Math.ceil((pairs * least) / receivers) };
}
