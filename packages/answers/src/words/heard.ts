import type { HeardComparison } from "@feedpoint/core";
import { fixed, signed } from "../text/units.js";

/** "B is 3.1 dB (1.2 to 5.0) up on A on 40m: 14 receivers, 62 pairs, 2 min apart", or that it cannot be told, and what would tell. */
export function comparisonText(comparison: HeardComparison): string {
  const { before, after, band, verdict, differenceDb, lowDb, highDb, toTell } = comparison;
  const rests = restsOn(comparison);
  if (differenceDb === null) return `${band}: no pair of ${before} and ${after}, so they are not compared.`;
  if (lowDb === null || highDb === null)
    return `${band}: cannot tell ${after} from ${before} by ${rests} (${signed(differenceDb, 1)} dB).`;
  const size = fixed(Math.abs(differenceDb), 1);
  if (verdict === "better")
    return `${after} is ${size} dB (${fixed(lowDb, 1)} to ${fixed(highDb, 1)}) up on ${before} on ${band}: ${rests}.`;
  if (verdict === "worse")
    return `${after} is ${size} dB (${fixed(-highDb, 1)} to ${fixed(-lowDb, 1)}) down on ${before} on ${band}: ${rests}.`;
  const wanted =
    comparison.switches < 4
      ? " Too few switches from one to the other: what fades for all receivers at once would pass for a difference."
      : toTell === null
        ? ""
        : toTell.receivers <= comparison.receivers
          ? ` A difference of ${fixed(toTell.ofDb, 1)} dB would have shown.`
          : ` To tell ${fixed(toTell.ofDb, 1)} dB would take about ${toTell.receivers} receivers, ${toTell.pairs} pairs in all.`;
  return `${band}: cannot tell ${after} from ${before}: ${signed(differenceDb, 1)} dB, ±${fixed((highDb - lowDb) / 2, 1)} dB, by ${rests}.${wanted}`;
}

/** "By direction, vee over sloper on 40m: E +3.1 ±1.2 dB (3 receivers), …"; null where no direction has enough receivers. */
export function sectorsText({ before, after, band, sectors }: HeardComparison): string | null {
  if (sectors.length === 0) return null;
  const parts = sectors.map(
    ({ sector, receivers, differenceDb, lowDb, highDb }) =>
      `${sector} ${signed(differenceDb, 1)} ±${fixed((highDb - lowDb) / 2, 1)} dB (${receivers})`,
  );
  return `By direction, with how many receivers, ${after} over ${before} on ${band}: ${parts.join(", ")}. Where directions differ, that is the pattern.`;
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;

function restsOn({ receivers, pairs, sameSlot, medianGapMs, offScale, withPowers }: HeardComparison): string {
  const gap =
    pairs === 0 || medianGapMs === null
      ? ""
      : sameSlot === pairs
        ? ", in the same slot"
        : `, ${fixed(medianGapMs / 60_000, 0)} min apart at the median`;
  const powers = pairs > 0 && withPowers === pairs ? ", powers taken off" : "";
  const off = offScale === 0 ? "" : `; ${counted(offScale, "pair")} near an end of the scale left out`;
  return `${counted(receivers, "receiver")}, ${counted(pairs, "pair")}${gap}${powers}${off}`;
}

/** What receivers that were listening heard of one alone; null where they heard both or neither. */
export function heardOfOneText({ before, after, band, heardOfOne }: HeardComparison): string | null {
  const { onlyBefore, onlyAfter, receiversBefore, receiversAfter, chance } = heardOfOne;
  if (onlyBefore + onlyAfter === 0) return null;
  return `${band}: receivers known to be listening heard ${onlyAfter} times only ${after} and ${onlyBefore} times only ${before}; ${counted(receiversAfter, "receiver")} more often the one, ${receiversBefore} the other (by chance as uneven: ${fixed(chance, 2)}).`;
}
