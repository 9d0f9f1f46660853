/** Readings by hand with bounds, remarks, dates and talk, of which some are no readings. */
import {
  bandName,
  bandsOf,
  droppable,
  type Noted,
  type NotedVariants,
  perBand,
  relined,
  swrBy,
  within,
} from "./noted.js";
import { at, type Rng, words } from "./random.js";
import type { Reading } from "./truth.js";

const plain = perBand("{b} {s}", "{b}: {s}");

/** Adds a remark to some of the lines. */
function remarked(rng: Rng, noted: Noted, share: number, remarks: readonly string[]): Noted {
  return droppable(relined(noted, (line) => (rng.chance(share) ? line + rng.pick(remarks) : line)));
}

const REMARKS = [
  " good",
  " (wind)",
  " - rope slack",
  "?",
  "*",
  " with tuner bypassed",
  ", best so far",
  " !",
  " (was better in spring)",
  " # dip",
];
const BETWEEN = ["then it rained", "counterpoise moved to port", "tea", "a barge went by, 2 minutes", "wind 4"];
const ODD_NAMES = words("lock band 1.6; the long one: 2.2; harbour channel 1.7; 37m 1.9; canal net 1.4; 55 m: 2.4");

export const REMARKED: NotedVariants = {
  bounds: (rng) => {
    const noted = plain(rng);
    const style = rng.pick([">{}", "> {}", "{}+", "over {}", "more than {}"]);
    const limit = rng.pick(["5", "10", "3"]);
    const second = at(noted.readings, 1);
    const old = String(second.swr[0]);
    const bounded: Reading = { ...second, swr: [Number(limit)], bound: "atLeast", droppable: true };
    const line = at(noted.lines, 1);
    return {
      lines: noted.lines.with(1, line.slice(0, line.lastIndexOf(old)) + style.replace("{}", limit)),
      readings: noted.readings.with(1, bounded),
    };
  },
  remarks: (rng) => remarked(rng, plain(rng), 0.5, REMARKS),
  "remarks with numbers": (rng) => {
    const noted = plain(rng);
    return remarked(rng, noted, 0.4, [" (wire 20.6 m)", " (at 14:30)", " (2nd try)", " with 5 W", ", 6 m up"]);
  },
  "dates before the readings": (rng) => {
    const noted = perBand("{b}: {s}", "{b} {s}")(rng);
    const date = rng.pick(["12 May ", "2026-05-12 ", "12.5. ", "9:40 ", "12/5 "]);
    return droppable(relined(noted, (line) => date + line));
  },
  "talk between": (rng) => {
    const noted = perBand("{b} {s}", "{b}: SWR {s}")(rng);
    return { ...noted, lines: noted.lines.flatMap((line) => (rng.chance(0.4) ? [rng.pick(BETWEEN), line] : [line])) };
  },
  "best and width": (rng) => {
    const name = bandName(rng);
    const noted: Noted = { lines: [], readings: [], clear: false };
    for (const band of bandsOf(rng, 3)) {
      const swr = swrBy(rng);
      const middle = ((band.low + band.high) / 2).toFixed(3);
      noted.lines.push(`${name(band)}: ${swr} at best, below 2 from ${band.low} to ${middle}`);
      noted.readings.push(within(band, swr, { droppable: true }));
    }
    return noted;
  },
  "unknown band names": (rng) => {
    const noted = plain(rng);
    return { ...noted, lines: noted.lines.toSpliced(1, 0, rng.pick(ODD_NAMES)), mustCaution: true };
  },
};
