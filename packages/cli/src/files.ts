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
import { isAbsolute, join, relative } from "node:path";
import { LOG_FILE, type ReadOptions, readCompanions, readSweeps, type Sweep, withReference } from "@feedpoint/core";
import { UsageError } from "./exit.js";

/** Names that a folder is searched for; a file named on the command line is read whatever it is called. */
const SWEEP_NAMES = /\.(s\d+p|ts|csv|tsv|txt|dat)$/i;

/**
 * Reads a file's sweeps; "-" is standard input, "a.csv+b.csv" two files that each hold one part of a sweep.
 *
 * @throws ReadError, or UsageError where a file cannot be opened
 */
export function readFile(path: string, options: ReadOptions): Sweep[] {
  if (path.includes("+") && !existsSync(path)) {
    return readCompanions(
      path.split("+").map((fileName) => ({ bytes: bytesOf(fileName), fileName })),
      options,
    );
  }
  return readSweeps(bytesOf(path), { ...options, fileName: path === "-" ? "standard input" : path });
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
      throw new UsageError(`${path}: this is a folder. Use grade for a folder, or name the files in it.`);
    }
    return readFileSync(path === "-" ? 0 : path);
  } catch (error) {
    if (error instanceof UsageError) throw error;
    throw new UsageError(`${path}: ${reasonOf(error)}.`);
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
  readonly problems: readonly { readonly file: string; readonly reason: string }[];
}

/**
 * The sweep files that paths stand for: files as named, folders searched to the bottom, patterns matched; sorted within each
 * path, each file once. What cannot be looked into is told beside them.
 *
 * @throws UsageError for a path that does not exist and is no pattern
 */
export async function findSweepFilesIn(paths: readonly string[]): Promise<FoundFiles> {
  const patterns = new Map<string, readonly string[]>();
  for (const path of paths) {
    if (path === "-" || existsSync(path) || !/[*?[{]/.test(path)) continue;
    const { glob } = await import("tinyglobby");
    const matches = (
      await glob([path.replaceAll("\\", "/")], { expandDirectories: false, absolute: isAbsolute(path) })
    ).sort(byName);
    if (matches.length === 0) throw new UsageError(`${path}: no file matches this pattern.`);
    patterns.set(path, matches);
  }
  return foundIn(paths.flatMap((path) => patterns.get(path) ?? [path]));
}

/** The sweep files of files and folders. @throws UsageError where one does not exist or cannot be looked into */
export function findSweepFiles(paths: readonly string[]): readonly string[] {
  const { files, problems } = foundIn(paths);
  if (problems[0] !== undefined) throw new UsageError(problems[0].reason);
  return files;
}

function foundIn(paths: readonly string[]): FoundFiles {
  const files = new Set<string>();
  const problems: { file: string; reason: string }[] = [];
  for (const path of paths) {
    if (path === "-") {
      files.add(path);
      continue;
    }
    let isDirectory: boolean;
    try {
      isDirectory = statSync(path).isDirectory();
    } catch (error) {
      throw new UsageError(`${path}: ${reasonOf(error)}.`);
    }
    if (!isDirectory) files.add(path);
    else collectBelow(path, files, problems);
  }
  return { files: [...files], problems };
}

const byName = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

/** Collects the sweep files of a folder. Links to files are followed; links to folders are not, for they may lead in a circle. */
function collectBelow(folder: string, files: Set<string>, problems: { file: string; reason: string }[]): void {
  let names: readonly Dirent[];
  try {
    names = readdirSync(folder, { withFileTypes: true }).sort((a, b) => byName(a.name, b.name));
  } catch (error) {
    problems.push({ file: folder, reason: `${folder}: ${reasonOf(error)}.` });
    return;
  }
  for (const entry of names) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) collectBelow(path, files, problems);
    else if (SWEEP_NAMES.test(entry.name) && entry.name !== LOG_FILE && (entry.isFile() || isLinkToFile(entry, path)))
      files.add(path);
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

export function isFolder(path: string): boolean {
  try {
    return path !== "-" && statSync(path).isDirectory();
  } catch {
    return false;
  }
}

/** Sweep files of the same name in two folders. */
export function pairedByName(first: string, second: string): readonly (readonly [string, string])[] {
  const others = new Map(findSweepFiles([second]).map((file) => [relative(second, file), file]));
  return findSweepFiles([first]).flatMap((file) => {
    const other = others.get(relative(first, file));
    return other === undefined ? [] : [[file, other] as const];
  });
}

/**
 * Writes a file whole or not at all: beside its place first, then moved there.
 *
 * @throws UsageError where a file is there already and may not be replaced, or where it cannot be written
 */
export function writeWhole(path: string, text: string, mayReplace: boolean): void {
  if (!mayReplace && existsSync(path)) throw new UsageError(`${path} exists already. Say --force to write over it.`);
  const draft = `${path}.${process.pid}.part`;
  try {
    const handle = openSync(draft, "wx");
    try {
      writeFileSync(handle, text);
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
