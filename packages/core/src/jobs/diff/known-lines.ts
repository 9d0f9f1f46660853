import { sweepAtAntenna } from "../../bands/antenna-end.js";
import { lossContradicted } from "../../bands/band-feedline.js";
import { type Feedline, matchedLossDb } from "../../facts/feedline/feedline.js";
import { demand } from "../../input/argument.js";
import { type Finding, finding } from "../../sweep/finding.js";
import { referredTo } from "../../sweep/sweep.js";
import { commonSamples, meanDifference } from "./common-samples.js";
import { electricalLengthM, type LineChange, lossAt10MHzDb } from "./line-change.js";
import { type Group, mapGroup, type Side } from "./sides.js";

/** The lines that both sides were swept through: one for all deployments of a side, or one for each. */
export interface KnownLines {
  readonly before: readonly Feedline[];
  readonly after: readonly Feedline[];
}

/** @throws TypeError for a side whose lines are neither one nor as many as it has deployments */
export function checkKnownLines(lines: KnownLines | null, before: Group, after: Group): void {
  for (const [name, group] of [["before", before] as const, ["after", after] as const]) {
    const count = lines?.[name].length;
    const fits = count === undefined || count === 1 || count === group.length;
    demand(fits, `feedlines.${name}`, "one line, or one for each deployment", lines?.[name]);
  }
}

/** What is compared. */
export interface Both {
  readonly before: Group;
  readonly after: Group;
}

/** Sweeps with phase as they would be at the antenna's end of their lines, each against the reference that it has. */
export function withoutLines({ before, after }: Both, lines: KnownLines): Both {
  const takenOut = (group: Group, known: readonly Feedline[]) =>
    mapGroup(group, (sweep, i) =>
      sweep.kind === "scalar"
        ? sweep
        : referredTo(sweepAtAntenna(sweep, known[i] ?? (known[0] as Feedline)), sweep.referenceOhms),
    );
  return { before: takenOut(before, lines.before), after: takenOut(after, lines.after) };
}

/** What a stated length, and the speed on its kind of line, are known to: m, and a share of both lines (our own choice). */
const LENGTH_DOUBT_M = 0.3;
const LENGTH_DOUBT_SHARE = 0.03;
/** What the loss of its kind is known to: dB at 10 MHz, and a share of both lines (our own choice). */
const LOSS_DOUBT_DB = 0.1;
const LOSS_DOUBT_SHARE = 0.2;

/** Whether what remains of a change of the line is within what stated lengths and kinds are known to. */
export function isWithinDoubt(line: LineChange, { before, after }: KnownLines): boolean {
  const longest = (of: (feedline: Feedline) => number) => Math.max(...before.map(of)) + Math.max(...after.map(of));
  const lengthM = longest(({ lengthM: physical, velocityFactor }) => physical / velocityFactor);
  const lossDb = longest((feedline) => matchedLossDb(feedline, 10e6));
  return (
    Math.abs(electricalLengthM(line.delayS)) <= LENGTH_DOUBT_M + LENGTH_DOUBT_SHARE * lengthM &&
    Math.abs(lossAt10MHzDb(line)) <= LOSS_DOUBT_DB + LOSS_DOUBT_SHARE * lossDb
  );
}

export const LINES_NEED_PHASE = finding("caution", "lines-need-phase", {});

/** Of a difference so small nobody asks what explains it, and one that leaves no more is explained; root mean square of Γ. */
const NO_DIFFERENCE = 0.012;
/** Shares of the difference at the analyser that may be left at the antenna where the line explains all of it, and a part. */
const ALL_EXPLAINED = 0.25;
const PART_EXPLAINED = 0.75;

/**
 * That lines were taken out, and how much of the difference they explain.
 *
 * @param measured both sides at the analyser
 * @param taken both sides at the antennas
 * @param left what seems left of a change of the line, and for what reason that was taken out too; null where nothing is
 */
export function linesTakenOut(
  { before, after }: KnownLines,
  measured: readonly [Side, Side],
  taken: readonly [Side, Side],
  left: { readonly change: LineChange; readonly takenOutAs: "within-doubt" | "asked-for" | null } | null,
): readonly Finding[] {
  const titleOf = (side: readonly Feedline[]) =>
    [...new Set(side.map(({ title, lengthM }) => (lengthM === 0 ? title : `${lengthM} m, ${title}`)))].join("; ");
  const [atAnalyser, atAntennas] = [differenceOf(measured), differenceOf(taken)];
  const tooLossy = [before, after].flatMap((side, i) =>
    side.flatMap((line) => lossContradicted(sweepsOf(measured[i] as Side), line)),
  );
  const said = finding("info", "lines-taken-out", {
    before: titleOf(before),
    after: titleOf(after),
    left: left && {
      lengthM: electricalLengthM(left.change.delayS),
      lossDb: lossAt10MHzDb(left.change),
      takenOutAs: left.takenOutAs,
    },
    atAnalyser,
    atAntennas,
    explains: whatIsExplained(atAnalyser, atAntennas),
  });
  return [said, ...tooLossy];
}

const sweepsOf = ({ all }: Side) => all.flatMap(({ parts }) => parts.map(({ analysis }) => analysis.curve.sweep));

function whatIsExplained(atAnalyser: number, atAntennas: number): "all" | "part" | "none" | null {
  if (atAnalyser <= NO_DIFFERENCE) return null;
  if (atAntennas <= Math.max(NO_DIFFERENCE, ALL_EXPLAINED * atAnalyser)) return "all";
  return atAntennas <= PART_EXPLAINED * atAnalyser ? "part" : "none";
}

/** Root mean square of the difference of Γ of two sides; 0 where nothing is common to them. */
function differenceOf([first, second]: readonly [Side, Side]): number {
  const [before, after] = [first.middle.curve, second.middle.curve];
  if (before === null || after === null) return 0;
  const samples = commonSamples(before, after);
  return samples.frequencyHz.length === 0 ? 0 : meanDifference(samples);
}
