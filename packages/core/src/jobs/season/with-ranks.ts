/**
 * Entries with their places from 1 on; equal ones share the place of the first of them.
 *
 * @param entries in the order of `compare`
 */
export function withRanks<Entry>(
  entries: readonly Entry[],
  compare: (a: Entry, b: Entry) => number,
): readonly ({ readonly rank: number } & Entry)[] {
  let rank = 0;
  return entries.map((entry, i) => {
    const before = entries[i - 1];
    if (before === undefined || compare(before, entry) !== 0) rank = i + 1;
    return { rank, ...entry };
  });
}
