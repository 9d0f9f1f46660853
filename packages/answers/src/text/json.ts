/**
 * Results as JSON: an array where several inputs or sweeps were asked for, else the one object. Numbers that JSON cannot
 * hold (an infinite SWR) become null.
 */
export function jsonText(results: readonly unknown[], areSeveral = results.length > 1): string {
  return harmless(JSON.stringify(areSeveral ? results : results[0], null, 2));
}

/** One object a line. */
export function ndjsonText(results: readonly unknown[]): string {
  return results.map((result) => harmless(JSON.stringify(result))).join("\n");
}

/**
 * JSON leaves characters as they are that steer a terminal or reorder what is read, such as those from names of files; escaped
 * they are the same text to every program.
 */
const harmless = (json: string): string => (isPlain(json) ? json : escaped(json));

/** Told at once, where looking for characters of those kinds takes a while. */
const isPlain = (json: string): boolean => !/[^\n\x20-\x7e]/.test(json);

const escaped = (json: string): string =>
  json.replace(/[\u007f-\u009f\p{Cf}\p{Zl}\p{Zp}]/gu, (character) =>
    Array.from(
      { length: character.length },
      (_, i) => `\\u${character.charCodeAt(i).toString(16).padStart(4, "0")}`,
    ).join(""),
  );
