import { splitChance } from "../../numbers/clusters.js";
import { grouped } from "../../numbers/grouped.js";
import type { ReceptionReport } from "../../reading/reports/report.js";
import { receiverName } from "./pairs.js";
import { ADJACENT_MS, slotMs, slotOf } from "./slots.js";

/** What was heard of only one of two deployments, by receivers that were known to be listening. */
export interface HeardOfOne {
  /** Transmissions next to each other of which a listening receiver heard only the first deployment's, or only the second's */
  readonly onlyBefore: number;
  readonly onlyAfter: number;
  /** Receivers that did so oftener for one than for the other */
  readonly receiversBefore: number;
  readonly receiversAfter: number;
  /** How likely a split of receivers as uneven is by chance: McNemar's exact test */
  readonly chance: number;
}

/** A receiver that reported anything within so many slots was listening. */
const LISTENING_SLOTS = 2;

/**
 * @param all every report on the band, of whomever: what proves that a receiver was listening
 */
export function heardOfOne(
  before: readonly ReceptionReport[],
  after: readonly ReceptionReport[],
  all: readonly ReceptionReport[],
): HeardOfOne {
  const only = new Map<string, { before: number; after: number }>();
  for (const [mode, reports] of grouped(all, (report) => report.mode)) {
    const own = (side: readonly ReceptionReport[]) => side.filter((report) => report.mode === mode);
    countOnly({ before: own(before), after: own(after), all: reports, mode }, only);
  }
  const counts = [...only.values()];
  const receiversBefore = counts.filter((count) => count.before > count.after).length;
  const receiversAfter = counts.filter((count) => count.after > count.before).length;
  return {
    onlyBefore: counts.reduce((sum, count) => sum + count.before, 0),
    onlyAfter: counts.reduce((sum, count) => sum + count.after, 0),
    receiversBefore,
    receiversAfter,
    chance: splitChance(receiversBefore, receiversAfter),
  };
}

interface OnOneMode {
  readonly before: readonly ReceptionReport[];
  readonly after: readonly ReceptionReport[];
  readonly all: readonly ReceptionReport[];
  readonly mode: string | null;
}

function countOnly(
  { before, after, all, mode }: OnOneMode,
  only: Map<string, { before: number; after: number }>,
): void {
  const slot = (report: ReceptionReport) => slotOf(report.time, mode);
  const slotsByReceiver = (reports: readonly ReceptionReport[]) =>
    new Map(
      Array.from(
        grouped(reports, ({ receiver }) => receiverName(receiver)),
        ([name, own]) => [name, new Set(own.map(slot))],
      ),
    );
  const [heardBefore, heardAfter] = [slotsByReceiver(before), slotsByReceiver(after)];
  const pairs = slotPairs(new Set(before.map(slot)), new Set(after.map(slot)), ADJACENT_MS / slotMs(mode));
  for (const [receiver, active] of slotsByReceiver(all)) {
    const count = only.get(receiver) ?? { before: 0, after: 0 };
    const [one, other] = [heardBefore.get(receiver), heardAfter.get(receiver)];
    for (const [first, second] of pairs) {
      const isHeard = one?.has(first) ?? false;
      if (isHeard === (other?.has(second) ?? false) || !isListening(active, first) || !isListening(active, second))
        continue;
      if (isHeard) count.before++;
      else count.after++;
    }
    only.set(receiver, count);
  }
}

function isListening(active: ReadonlySet<number>, at: number): boolean {
  for (let near = at - LISTENING_SLOTS; near <= at + LISTENING_SLOTS; near++) if (active.has(near)) return true;
  return false;
}

/** Slots of two deployments that follow each other, each in one pair at most. */
function slotPairs(
  before: ReadonlySet<number>,
  after: ReadonlySet<number>,
  farthest: number,
): readonly (readonly [number, number])[] {
  const ordered = [...new Set([...before, ...after])].sort((a, b) => a - b);
  const pairs: (readonly [number, number])[] = [];
  let waiting: number | null = null;
  for (const slot of ordered) {
    if (before.has(slot) && after.has(slot)) {
      pairs.push([slot, slot]);
      waiting = null;
    } else if (waiting !== null && before.has(waiting) !== before.has(slot) && slot - waiting <= farthest) {
      pairs.push(before.has(slot) ? [slot, waiting] : [waiting, slot]);
      waiting = null;
    } else waiting = slot;
  }
  return pairs;
}
