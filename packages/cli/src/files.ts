import {
  closeSync,
  existsSync,
  fchmodSync,
  fsyncSync,
  lstatSync,
  openSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  readSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, resolve } from "node:path";
import { type ReadingSettings, referred } from "@feedpoint/answers/asked/referred";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { type LineLedger, lineLedger, type ReadOptions, readCompanions, readSweeps, type Sweep } from "@feedpoint/core";
import { suggestion } from "@feedpoint/core/for-command";

/**
 * Reads a file's sweeps; "-" is standard input, "a.csv+b.csv" two files that each hold one part of a sweep.
 *
 * @throws ReadError, or UsageError where a file cannot be opened
 */
function readFile(path: string, options: ReadOptions): Sweep[] {
  const companions = companionsIn(path);
  if (companions !== null) {
    return readCompanions(
      companions.map((fileName) => ({ bytes: bytesOf(fileName).slice(), fileName })),
      options,
    );
  }
  return readSweeps(bytesOf(path), { ...options, fileName: path === "-" ? "standard input" : path });
}

/** A file's sweeps, and what became of its lines where that is known. @throws as {@link readFile} */
export function readWithLedger(path: string, options: ReadOptions): { sweeps: Sweep[]; ledger: LineLedger | null } {
  if (companionsIn(path) !== null) return { sweeps: readFile(path, options), ledger: null };
  const bytes = bytesOf(path).slice();
  const named = { ...options, fileName: path === "-" ? "standard input" : path };
  return { sweeps: readSweeps(bytes, named), ledger: lineLedger(bytes, named) };
}

/** The files that "a.csv+b.csv" stands for; null where it is one file's own name, or none of the parts is a file. */
export function companionsIn(path: string): readonly string[] | null {
  if (!path.includes("+") || existsSync(path)) return null;
  const parts = path.split("+");
  return parts.some((part) => existsSync(part)) ? parts : null;
}

/** Reads sweeps as they are to be seen. @throws as {@link readFile} and {@link referred} do */
export const readReferred = (path: string, settings: ReadingSettings): Sweep[] =>
  readFile(path, settings.reading).map((sweep) => referred(sweep, settings));

/** Reads the one sweep of a file for judging. @throws UsageError where there are several of the same range */
export function onlySweepIn(path: string, settings: ReadingSettings): Sweep {
  const sweeps = readReferred(path, settings);
  const [sweep] = sweeps;
  if (sweep !== undefined && sweeps.length === 1) return sweep;
  throw new UsageError(
    `${path} holds ${sweeps.length} sweeps of the same range; put the wanted one into a file of its own.`,
  );
}

/** The bytes of a file, in a room that those of the next file may take: none is needed once it has been read. */
function bytesOf(path: string): Uint8Array {
  try {
    if (path === "-") return readFileSync(0);
    const handle = openSync(path, "r");
    try {
      return contentOf(handle);
    } finally {
      closeSync(handle);
    }
  } catch (error) {
    const isFolder = (error as NodeJS.ErrnoException).code === "EISDIR";
    const remedy = isFolder ? " Name a file in it; grade takes whole folders." : "";
    throw new UsageError(`${path}: ${reasonOf(error)}.${remedy}`, nearbyName(path));
  }
}

/** Asking for memory and clearing it takes longer than reading a sweep's file into it. */
const room = new Uint8Array(1 << 18);

function contentOf(handle: number): Uint8Array {
  let length = 0;
  for (;;) {
    const count = readSync(handle, room, length, room.length - length, null);
    length += count;
    if (count === 0) return room.subarray(0, length);
    if (length === room.length) return Buffer.concat([room, readFileSync(handle)]);
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
export function reasonOf(error: unknown, doing: "reading" | "writing" = "reading"): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === "ENOENT") return "there is no such file or folder";
  if (code === "EACCES" || code === "EPERM") return `${doing} it is not permitted`;
  if (code === "EISDIR") return "this is a folder";
  if (code === "ENOSPC") return "the disk is full";
  if (code === "ELOOP") return "its links lead in a circle";
  return error instanceof Error ? error.message : String(error);
}

/**
 * Writes what a command makes: to standard output where no file is named, or "-" is.
 *
 * @returns whether a file was written
 * @throws UsageError as `writeWhole` does
 */
export function writeOutput(path: string | undefined, content: string | Uint8Array, mayReplace: boolean): boolean {
  if (path === undefined || path === "-") {
    process.stdout.write(content);
    return false;
  }
  writeWhole(path, content, mayReplace);
  return true;
}

/**
 * Writes a file whole or not at all: beside its place first, then moved there. One that is replaced keeps its permissions, and a
 * link to it goes on leading there.
 *
 * @throws UsageError where a file, or a link to one yet to be, is there already and may not be replaced, or where it cannot be
 *   written
 */
export function writeWhole(path: string, content: string | Uint8Array, mayReplace: boolean): void {
  let draft: string | null = null;
  try {
    if (!mayReplace && lstatSync(path, { throwIfNoEntry: false }) !== undefined)
      throw new UsageError(`${path} exists already. Say --force to write over it.`);
    const place = placeBehind(path);
    draft = `${place}.${process.pid}.part`;
    const handle = openSync(draft, "wx");
    try {
      const replaced = statSync(place, { throwIfNoEntry: false });
      if (replaced !== undefined) fchmodSync(handle, replaced.mode);
      writeFileSync(handle, content);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(draft, place);
  } catch (error) {
    if (draft !== null) rmSync(draft, { force: true });
    throw error instanceof UsageError ? error : new UsageError(`${path}: ${reasonOf(error, "writing")}.`);
  }
}

/** Where a path leads, its links followed, whether a file is there or not. @throws UsageError for a link to no folder */
function placeBehind(path: string): string {
  // Asked of the system first, which notices links that lead in a circle.
  if (statSync(path, { throwIfNoEntry: false }) !== undefined) return realpathSync(path);
  if (!lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink()) return path;
  const target = resolve(realpathSync(dirname(path)), readlinkSync(path));
  if (!existsSync(dirname(target)))
    throw new UsageError(`${path} is a link to ${target}, and the folder of that is not there.`);
  return placeBehind(target);
}
