import {
  closeSync,
  type Dirent,
  existsSync,
  fsyncSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join, relative, resolve } from "node:path";
import {
  LOG_FILE,
  type ReadOptions,
  readCompanions,
  readSweeps,
  type Sweep,
  suggestion,
  withReference,
} from "@feedpoint/core";
import { hintedMessage, UsageError } from "./exit.js";
import { folderAbove, isPattern, patternOf } from "./pattern.js";

/** Names that a folder is searched for; a file named on the command line is read whatever it is called. */
const SWEEP_NAMES = /\.(s\d+p|ts|csv|tsv|txt|dat)$/i;

/**
 * Reads a file's sweeps; "-" is standard input, "a.csv+b.csv" two files that each hold one part of a sweep.
 *
 * @throws ReadError, or UsageError where a file cannot be opened
 */
export function readFile(path: string, options: ReadOptions): Sweep[] {
  const companions = companionsIn(path);
  if (companions !== null) {
    return readCompanions(
      companions.map((fileName) => ({ bytes: bytesOf(fileName), fileName })),
      options,
    );
  }
  return readSweeps(bytesOf(path), { ...options, fileName: path === "-" ? "standard input" : path });
}

/** The files that "a.csv+b.csv" stands for; null where it is one file's own name, or none of the parts is a file. */
function companionsIn(path: string): readonly string[] | null {
  if (!path.includes("+") || existsSync(path)) return null;
  const parts = path.split("+");
  return parts.some((part) => existsSync(part)) ? parts : null;
}

/** Reads sweeps for judging: vector sweeps are converted to the wanted impedance. */
export function readForJudging(path: string, options: ReadOptions, systemOhms: number | null): Sweep[] {
  return readFile(path, options).map((sweep) => {
    if (systemOhms === null || sweep.referenceOhms === systemOhms) return sweep;
    if (sweep.kind === "vector") return withReference(sweep, systemOhms);
    throw new UsageError(
      `${path}: without phase, a sweep against ${sweep.referenceOhms} Ω cannot be judged against ${systemOhms} Ω.`,
    );
  });
}

/** Reads the sweeps of several files for judging; what cannot be read is told beside them. */
export function readAllForJudging(
  paths: readonly string[],
  options: ReadOptions,
  systemOhms: number | null,
): { readonly sweeps: readonly Sweep[]; readonly unreadable: readonly Problem[] } {
  const sweeps: Sweep[] = [];
  const unreadable: Problem[] = [];
  for (const file of paths) {
    try {
      sweeps.push(...readForJudging(file, options, systemOhms));
    } catch (error) {
      unreadable.push({ file, reason: hintedMessage(error) });
    }
  }
  return { sweeps, unreadable };
}

/** Reads the one sweep of a file for judging. @throws UsageError where there are several of the same range */
export function onlySweepIn(path: string, options: ReadOptions, systemOhms: number | null): Sweep {
  const sweeps = readForJudging(path, options, systemOhms);
  const [sweep] = sweeps;
  if (sweep !== undefined && sweeps.length === 1) return sweep;
  throw new UsageError(
    `${path} holds ${sweeps.length} sweeps of the same range; put the wanted one into a file of its own.`,
  );
}

function bytesOf(path: string): Uint8Array {
  try {
    if (path !== "-" && statSync(path).isDirectory()) {
      throw new UsageError(`${path}: this is a folder. Name a file in it; grade takes whole folders.`);
    }
    return readFileSync(path === "-" ? 0 : path);
  } catch (error) {
    if (error instanceof UsageError) throw error;
    throw new UsageError(`${path}: ${reasonOf(error)}.`, nearbyName(path));
  }
}

/** Where there is no file of a name, one in its folder that is called nearly so. */
function nearbyName(path: string): string {
  if (existsSync(path)) return "";
  try {
    return suggestion(basename(path), readdirSync(dirname(path)));
  } catch {
    return "";
  }
}

/** Why the system would not open a file, in words. */
export function reasonOf(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === "ENOENT") return "there is no such file or folder";
  if (code === "EACCES" || code === "EPERM") return "reading it is not permitted";
  if (code === "ENOSPC") return "the disk is full";
  if (code === "ELOOP") return "its links lead in a circle";
  return error instanceof Error ? error.message : String(error);
}

/** Sweep files, and what of the paths could not be looked into. */
export interface FoundFiles {
  readonly files: readonly string[];
  readonly problems: readonly Problem[];
}

/** A file or folder that could not be used, and a sentence that says why. */
export interface Problem {
  readonly file: string;
  readonly reason: string;
}

/**
 * The sweep files that paths stand for: files as named, folders searched to the bottom, patterns matched; sorted within each
 * path, each file once. What is not there or cannot be looked into is told beside them.
 */
export async function findSweepFilesIn(paths: readonly string[]): Promise<FoundFiles> {
  const search = newSearch();
  for (const path of paths) {
    if (!isPattern(path)) searchPath(path, search);
    else {
      const { folder, depth, matches } = await patternOf(path);
      const before = search.files.size + search.problems.length;
      searchFolder(folder, search, (file, name) => name !== LOG_FILE && matches(file), depth);
      if (search.files.size + search.problems.length === before) {
        search.problems.push({ file: path, reason: `${path}: no file matches this pattern.` });
      }
    }
  }
  return { files: [...search.files.values()], problems: search.problems };
}

/** The sweep files of files and folders. @throws UsageError where one does not exist or cannot be looked into */
export function findSweepFiles(paths: readonly string[]): readonly string[] {
  const search = newSearch();
  for (const path of paths) searchPath(path, search);
  if (search.problems[0] !== undefined) throw new UsageError(search.problems[0].reason);
  return [...search.files.values()];
}

/** What a search has found so far. */
interface Search {
  /** By where each lies, so that "x.s1p" and "./x.s1p" are one file */
  readonly files: Map<string, string>;
  readonly problems: Problem[];
}

const newSearch = (): Search => ({ files: new Map(), problems: [] });

function add(path: string, { files }: Search): void {
  const place = path === "-" ? path : resolve(path);
  if (!files.has(place)) files.set(place, path);
}

function searchPath(path: string, search: Search): void {
  try {
    const isDirectory = path !== "-" && companionsIn(path) === null && statSync(path).isDirectory();
    if (isDirectory) searchFolder(path, search, (_, name) => SWEEP_NAMES.test(name) && name !== LOG_FILE);
    else add(path, search);
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

/**
 * Writes a file whole or not at all: beside its place first, then moved there.
 *
 * @throws UsageError where a file is there already and may not be replaced, or where it cannot be written
 */
export function writeWhole(path: string, content: string | Uint8Array, mayReplace: boolean): void {
  if (!mayReplace && existsSync(path)) throw new UsageError(`${path} exists already. Say --force to write over it.`);
  const draft = `${path}.${process.pid}.part`;
  try {
    const handle = openSync(draft, "wx");
    try {
      writeFileSync(handle, content);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(draft, path);
  } catch (error) {
    rmSync(draft, { force: true });
    throw new UsageError(`${path}: ${reasonOf(error)}.`);
  }
}
