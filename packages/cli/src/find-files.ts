import { type Dirent, existsSync, readdirSync, statSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import type { FoundFiles } from "@feedpoint/answers/asked/deployments";
import { type Problem, UsageError } from "@feedpoint/answers/asked/usage-error";
import { LOG_FILE } from "@feedpoint/core/for-command";
import { companionsIn, reasonOf } from "./files.js";
import { folderAbove, isPattern, patternOf } from "./pattern.js";

/** Names that a folder is searched for; a file named on the command line is read whatever it is called. */
const SWEEP_NAMES = /\.(s\d+p|ts|csv|tsv|txt|dat)$/i;

/**
 * The sweep files that paths stand for: files as named, folders searched to the bottom, patterns matched; sorted within each
 * path, each file once. What cannot be looked into is told beside them.
 *
 * @param missing what is not there is told as well, or kept as a file, which says more when it is read
 */
export async function findSweepFilesIn(
  paths: readonly string[],
  missing: "told" | "kept" = "told",
): Promise<FoundFiles> {
  const search = newSearch();
  for (const path of paths) {
    if (missing === "kept" && !existsSync(path) && companionsIn(path) === null) name(path, search);
    else if (!isPattern(path)) searchPath(path, search);
    else {
      const { folder, depth, matches } = await patternOf(path);
      const before = search.problems.length;
      let matched = 0;
      const isWanted = (file: string, name: string) => {
        const isMatch = name !== LOG_FILE && matches(file);
        if (isMatch) matched++;
        return isMatch;
      };
      searchFolder(folder, search, isWanted, depth);
      if (matched === 0 && search.problems.length === before) {
        search.problems.push({ file: path, reason: `${path}: no file matches this pattern.` });
      }
    }
  }
  return { files: [...search.files.values()], named: search.named, problems: search.problems };
}

/** The sweep files of files and folders. @throws UsageError where one does not exist or cannot be looked into */
function findSweepFiles(paths: readonly string[]): readonly string[] {
  const search = newSearch();
  for (const path of paths) searchPath(path, search);
  if (search.problems[0] !== undefined) throw new UsageError(search.problems[0].reason);
  return [...search.files.values()];
}

/** What a search has found so far. */
interface Search {
  /** By where each lies, so that "x.s1p" and "./x.s1p" are one file */
  readonly files: Map<string, string>;
  readonly named: Set<string>;
  readonly problems: Problem[];
}

const newSearch = (): Search => ({ files: new Map(), named: new Set(), problems: [] });

function add(path: string, { files }: Search): void {
  const place = path === "-" ? path : resolve(path);
  if (!files.has(place)) files.set(place, path);
}

/** Adds a file that was named by itself. */
function name(path: string, search: Search): void {
  add(path, search);
  search.named.add(path);
}

function searchPath(path: string, search: Search): void {
  try {
    const isDirectory = path !== "-" && companionsIn(path) === null && statSync(path).isDirectory();
    if (isDirectory) searchFolder(path, search, (_, name) => SWEEP_NAMES.test(name) && name !== LOG_FILE);
    else name(path, search);
  } catch (error) {
    search.problems.push({ file: path, reason: `${path}: ${reasonOf(error)}.` });
  }
}

const byName = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

/** Searches a folder. Links to files are followed; links to folders are not, for they may lead in a circle. */
function searchFolder(
  folder: string,
  search: Search,
  isWanted: (path: string, name: string) => boolean,
  depth = Number.POSITIVE_INFINITY,
): void {
  let names: readonly Dirent[];
  try {
    names = readdirSync(folder, { withFileTypes: true }).sort((a, b) => byName(a.name, b.name));
  } catch (error) {
    search.problems.push({ file: folder, reason: `${folder}: ${reasonOf(error)}.` });
    return;
  }
  for (const entry of names) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      if (depth > 0) searchFolder(path, search, isWanted, depth - 1);
    } else if (isWanted(path, entry.name) && (entry.isFile() || isLinkToFile(entry, path))) add(path, search);
  }
}

/** Whether a link leads to a file, or to nothing that can be told: reading it then says why. */
function isLinkToFile(entry: Dirent, path: string): boolean {
  if (!entry.isSymbolicLink()) return false;
  try {
    return statSync(path).isFile();
  } catch {
    return true;
  }
}

/** The folder that a path is about: itself, the one that a file is in, or the one above a pattern's first wildcard. */
export function folderOf(path: string): string {
  if (isFolder(path)) return path;
  return isPattern(path) ? folderAbove(path) : dirname(path);
}

export function isFolder(path: string): boolean {
  try {
    return path !== "-" && statSync(path).isDirectory();
  } catch {
    return false;
  }
}

/** Sweep files of the same name in two folders. */
export function pairedByName(first: string, second: string): Pairing {
  const others = new Map(findSweepFiles([second]).map((file) => [relative(second, file), file]));
  const pairs: (readonly [string, string])[] = [];
  const alone: string[] = [];
  for (const file of findSweepFiles([first])) {
    const name = relative(first, file);
    const other = others.get(name);
    if (other === undefined) alone.push(file);
    else pairs.push([file, other]);
    others.delete(name);
  }
  return { pairs, alone: [...alone, ...others.values()] };
}

/** Files of two folders that have the same name, and those of either that have no namesake. */
export interface Pairing {
  readonly pairs: readonly (readonly [string, string])[];
  readonly alone: readonly string[];
}
