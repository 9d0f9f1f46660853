/** One result as an object, several as an array; numbers that JSON cannot hold (an infinite SWR) become null. */
export function jsonText(results: readonly unknown[]): string {
  return JSON.stringify(results.length === 1 ? results[0] : results, null, 2);
}

/** One object a line. */
export function ndjsonText(results: readonly unknown[]): string {
  return results.map((result) => JSON.stringify(result)).join("\n");
}
