import { distance } from "fastest-levenshtein";

/** More than this share of a word wrong is another word, not a slip of the finger (our own choice). */
const MOST_WRONG = 0.4;

/** The known name that a misspelt one, or the beginning of one, most likely stands for; null where none is near. */
export function nearestName(name: string, known: readonly string[]): string | null {
  const begun = known.filter((candidate) => candidate.toLowerCase().startsWith(name.toLowerCase()));
  if (begun.length === 1) return begun[0] ?? null;
  let best: { name: string; away: number } | null = null;
  for (const candidate of known) {
    const away = distance(name.toLowerCase(), candidate.toLowerCase());
    if (best === null || away < best.away) best = { name: candidate, away };
  }
  return best !== null && best.away <= MOST_WRONG * Math.max(name.length, best.name.length) ? best.name : null;
}

/** ' Did you mean "…"?' where a known name is near, else nothing. */
export function suggestion(name: string, known: readonly string[]): string {
  const nearest = nearestName(name, known);
  return nearest === null ? "" : ` Did you mean "${nearest}"?`;
}
