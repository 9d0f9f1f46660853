import {
  closeSync,
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
import { join, relative } from "node:path";
import { type ReadOptions, readCompanions, readSweeps, type Sweep, withReference } from "@feedpoint/core";
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

/** The sweep files that paths stand for: files as named, folders searched to the bottom, sorted, each once. */
export function findSweepFiles(paths: readonly string[]): readonly string[] {
  const found = new Set<string>();
  for (const path of paths) {
    if (path === "-") {
      found.add(path);
      continue;
    }
    let isFolder: boolean;
    try {
      isFolder = statSync(path).isDirectory();
    } catch (error) {
      throw new UsageError(`${path}: ${reasonOf(error)}.`);
    }
    if (!isFolder) found.add(path);
    else for (const file of filesBelow(path)) found.add(file);
  }
  return [...found];
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
  const others = new Map(filesBelow(second).map((file) => [relative(second, file), file]));
  return filesBelow(first).flatMap((file) => {
    const other = others.get(relative(first, file));
    return other === undefined ? [] : [[file, other] as const];
  });
}

function filesBelow(folder: string): string[] {
  const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  return entries.flatMap((entry) => {
    const path = join(folder, entry.name);
    // Links are not followed, so that a circle of them cannot trap the search.
    if (entry.isDirectory()) return filesBelow(path);
    return entry.isFile() && SWEEP_NAMES.test(entry.name) ? [path] : [];
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
