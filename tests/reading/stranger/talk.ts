/** What people write around a table. All invented: an amateur aboard a canal boat. */
import { type Rng, words } from "./random.js";

const TALK = words(
  "Same wire again, this time over the bow rail; Sweep taken at the lower lock, boat moored on the left bank; \
Wire 20.6 m, counterpoise 3.2 m along the deck; Light wind, everything dry; Rope end tied to the third willow; \
Feeder came loose once, tied up again; Written down before breakfast; Antenna: end fed wire, sloping; \
Place: Reedmere basin; Taken on 2026-04-18 at 09:35; Date: 18.04.2026; Run 7 of 12; Operator: me, alone aboard; \
Far end 6 m above the water; Battery 12.6 V; Box of the analyser stood on the roof",
);

/** Words that end a file. */
export const FOOT = words(
  "End of data; Finished 09:52; Remark: rain began after the last point; -- end --; No further points; \
Next time with the longer counterpoise",
);

/** A few lines of talk, each begun alike. */
export function talk(rng: Rng, count: number, mark = ""): string[] {
  return rng.some(TALK, count).map((line) => mark + line);
}
