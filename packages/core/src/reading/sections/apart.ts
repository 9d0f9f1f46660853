import { type Finding, finding } from "../../sweep/finding.js";
import type { ReadPoints } from "../points/read-points.js";
import type { Section } from "./sections.js";

/** What sections hold, each its own sweep or several; null where they are parts of one sweep. */
export function apart(sections: readonly Section[], read: readonly ReadPoints[]): readonly ReadPoints[] | null {
  const areNotes = read.every(({ points }) => points.areSpots);
  if (areNotes ? sections.every(({ isBare }) => isBare) && goOneWay(read) : goOn(read)) return null;
  const values = sections.map(({ title }) => title);
  const told: Finding = finding("info", "series-told-apart", { column: "the titles", values });
  return read.map((one) => ({ ...one, findings: [told, ...one.findings] }));
}

/** A sweep goes on below a title where its next frequency is this near, in steps. */
const MOST_STEPS = 5;

/** Whether the frequencies of each section go on where those of the one before ended. */
function goOn(read: readonly ReadPoints[]): boolean {
  return read.every(({ points }, s) => {
    const before = read[s - 1]?.points.frequencyHz;
    if (before === undefined) return true;
    const [start = 0, last = 0] = [before.at(-2), before.at(-1)];
    const step = ((points.frequencyHz[0] ?? 0) - last) / (last - start);
    return step > 0 && step < MOST_STEPS;
  });
}

/** Whether single readings go one way through all sections: words among notes of one antenna head nothing. */
function goOneWay(read: readonly ReadPoints[]): boolean {
  const places = read.flatMap(({ points }) => [...points.frequencyHz]);
  const areAlong = (sign: number) => places.every((hz, i) => i === 0 || sign * (hz - (places[i - 1] ?? hz)) > 0);
  return areAlong(1) || areAlong(-1);
}
