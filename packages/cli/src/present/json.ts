/**
 * Results as JSON: an array where several inputs or sweeps were asked for, else the one object. Numbers that JSON cannot
 * hold (an infinite SWR) become null.
 */
export function jsonText(results: readonly unknown[], areSeveral = results.length > 1): string {
  return JSON.stringify(areSeveral ? results : results[0], null, 2);
}

/** One object a line. */
export function ndjsonText(results: readonly unknown[]): string {
  return results.map((result) => JSON.stringify(result)).join("\n");
}
