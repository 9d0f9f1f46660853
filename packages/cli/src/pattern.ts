import { existsSync } from "node:fs";
import { dirname, normalize, sep } from "node:path";

/** Names of files with wildcards, such as `sweeps/**` + `/*.s1p`. */
export interface Pattern {
  /** The folder that holds all that may match: the one above the first wildcard */
  readonly folder: string;
  /** Folders below it that a match may lie in, at most */
  readonly depth: number;
  readonly matches: (path: string) => boolean;
}

const WILDCARD = /[*?[{]/;

/** Whether a path is no file's own name but a pattern. */
export const isPattern = (path: string): boolean => path !== "-" && WILDCARD.test(path) && !existsSync(path);

/** Slashes lean forward in a pattern; elsewhere than on Windows a backslash takes a wildcard its meaning. */
const forward = (path: string) => (sep === "\\" ? path.replaceAll("\\", "/") : path);

/** The folder above a pattern's first wildcard. */
export const folderAbove = (pattern: string): string => dirname(forward(pattern).replace(/[*?[{].*$/s, "x"));

export async function patternOf(text: string): Promise<Pattern> {
  // Behind a dynamic import, so that only a run with a pattern loads it.
  const { default: picomatch } = await import("picomatch");
  const pattern = normalize(forward(text)).replaceAll(sep, "/");
  const folder = folderAbove(pattern);
  // A name may hold a line end.
  const isMatch = picomatch(pattern, { flags: "s" });
  const depthOf = (path: string) => path.split("/").length;
  return {
    folder,
    depth: pattern.includes("**")
      ? Number.POSITIVE_INFINITY
      : depthOf(pattern) - depthOf(folder === "." ? "x" : `${folder}/x`),
    matches: (path) => isMatch(path.replaceAll(sep, "/")),
  };
}
