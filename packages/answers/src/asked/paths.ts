/** Names of files and folders, written with either slash. */

const PLACE = /^(.*?)[/\\]*([^/\\]*)[/\\]*$/s;

/** The last name of a path: "b.csv" of "a/b.csv". */
export const basename = (path: string): string => PLACE.exec(path)?.[2] ?? path;

/** What lies before it: "a" of "a/b.csv"; "." where there is nothing, "/" at the top. */
export function dirname(path: string): string {
  const before = PLACE.exec(path)?.[1] ?? "";
  if (before !== "") return before;
  return /^[/\\]/.test(path) ? "/" : ".";
}
