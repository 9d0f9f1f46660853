import { type Finding, finding } from "../../sweep/finding.js";
import type { TextLines } from "../text/text-lines.js";
import { itemsOf } from "./note-items.js";
import type { NotedReading } from "./note-line.js";
import { liesIn, type Place } from "./note-place.js";
import { plainNote } from "./note-words.js";

/** That a frequency stands straight behind a band that it does not lie in, as in "40m 14.200 MHz 1.5" and "80m;7.05;1.4". */
export function contradicted(
  rows: readonly (NotedReading & { readonly line: number })[],
  lines: TextLines,
): readonly Finding[] {
  for (const { isAtFrequency, lowHz, line } of rows) {
    const band = isAtFrequency ? bandAtStart(lines.text(line - 1)) : null;
    if (band === null || liesIn(lowHz, band)) continue;
    const others = rows.filter((row) => row.line === line && row.isAtFrequency && liesIn(row.lowHz, band));
    if (others.length === 0)
      return [finding("caution", "band-contradicted", { band: band.name, frequencyHz: lowHz }, { line })];
  }
  return [];
}

/** The band that a line begins with, if a number follows it and no word does: "80m loop 14.2" tells the antenna's. */
function bandAtStart(line: string): Place | null {
  const [first, second] = itemsOf(plainNote(line).trim());
  const isBand = first?.kind === "place" && first.place !== null && !first.place.isAtFrequency;
  return isBand && (second?.kind === "number" || second?.kind === "place") ? first.place : null;
}
