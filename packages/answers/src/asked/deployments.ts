import {
  type Deployment,
  type DeploymentLog,
  deploymentOf,
  rowFinder,
  type Sweep,
  type SweepGrade,
} from "@feedpoint/core";
import { basename, dirname } from "./paths.js";
import { hintedMessage, type Problem } from "./usage-error.js";

/** Files that may be one deployment: read together, so that what they cover can tell. */
export interface FileGroup {
  readonly files: readonly string[];
  /** What they are called together, and the folder or file that stands for them */
  readonly label: string;
  readonly file: string;
  /** The user, or the log, says that they are one */
  readonly isOne: boolean;
}

/** Files that were found, and what could not be looked into. */
export interface FoundFiles {
  readonly files: readonly string[];
  /** Those of them that were named by themselves */
  readonly named: ReadonlySet<string>;
  readonly problems: readonly Problem[];
}

/** How files are put together. */
export interface Grouping {
  /** What the user says: all that was named is one deployment, or each file is one; null: their folders and ranges tell */
  readonly said: "together" | "each" | null;
  readonly log: DeploymentLog | null;
}

/** More files than these are no parts of one deployment, unless the log says so (our own choice). */
const MOST_PARTS = 40;
/** The column of the log that tells which rows are of one deployment. */
export const DEPLOYMENT = "deployment";
const DATE = /(?<!\d)20\d\d[-_./]?(?:0[1-9]|1[0-2])[-_./]?(?:0[1-9]|[12]\d|3[01])(?!\d)/;

/**
 * The files that may be one deployment each: those whose rows in the log name the same one, and those of one folder, and of one
 * date where their names tell one. A file that was named by itself stands alone.
 */
export function fileGroups(
  { files, named }: Pick<FoundFiles, "files" | "named">,
  { said, log }: Grouping,
): readonly FileGroup[] {
  const [first] = files;
  if (said === "together" && first !== undefined && files.length > 1) {
    const label = files.map((file) => basename(file)).join(", ");
    return [{ files, label, file: files.join(","), isOne: true }];
  }
  if (said === "each") return files.map(alone);
  const deploymentIn = deploymentFinder(log);
  const groups = new Map<string, { files: string[]; name: string | null }>();
  for (const file of files) {
    const inLog = deploymentIn(file);
    const name = inLog?.name ?? null;
    const key =
      inLog !== null
        ? `log\n${inLog.name}\n${inLog.date}`
        : named.has(file) || file === "-"
          ? `file\n${file}`
          : folderKey(file);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { files: [file], name });
    else group.files.push(file);
  }
  const inFolder = new Map<string, number>();
  for (const {
    files: [one = ""],
  } of groups.values())
    inFolder.set(dirname(one), (inFolder.get(dirname(one)) ?? 0) + 1);
  return [...groups.values()].flatMap(({ files: own, name }): readonly FileGroup[] => {
    const [one = ""] = own;
    if (own.length === 1) return [named.has(one) || one === "-" ? alone(one) : inItsFolder(one)];
    if (name !== null) return [{ files: own, label: name, file: one, isOne: true }];
    if (own.length > MOST_PARTS) return own.map(alone);
    const folder = dirname(one);
    const date = (inFolder.get(folder) ?? 0) > 1 ? (DATE.exec(basename(one))?.[0] ?? null) : null;
    const label = date === null ? folderName(folder) : `${folderName(folder)}, ${date}`;
    return [{ files: own, label, file: date === null ? folder : `${folder}/${date}`, isOne: false }];
  });
}

const alone = (file: string): FileGroup => ({ files: [file], label: basename(file), file, isOne: false });

/** A folder by its name; behind that of the folder above where only that one states a date: "2026-05-25/before". */
function folderName(folder: string): string {
  const [own, above] = [basename(folder), basename(dirname(folder))];
  return !DATE.test(own) && DATE.test(above) ? `${above}/${own}` : own;
}

/** The one file of a folder that states a date, which the file's own name does not, goes by the folder's name. */
function inItsFolder(file: string): FileGroup {
  const label = folderName(dirname(file));
  return DATE.test(label) && !DATE.test(basename(file)) ? { ...alone(file), label } : alone(file);
}

const folderKey = (file: string): string => `folder\n${dirname(file)}\n${DATE.exec(basename(file))?.[0] ?? ""}`;

/**
 * Finds the deployment that the log names for a file, with its date: the same way of putting the antenna up on another day is
 * another deployment to be judged. null where the log names none.
 */
function deploymentFinder(log: DeploymentLog | null): (file: string) => { name: string; date: string } | null {
  const columnOf = (wanted: string) => log?.columns.find((name) => name.toLowerCase() === wanted);
  const [column, dated] = [columnOf(DEPLOYMENT), columnOf("date")];
  if (log === null || column === undefined) return () => null;
  const rowOf = rowFinder(log);
  return (file) => {
    const row = rowOf(file);
    const name = row?.[column] ?? "";
    const date = (dated === undefined ? "" : (row?.[dated] ?? "")) || (DATE.exec(file)?.[0] ?? "");
    return name === "" ? null : { name, date };
  };
}

/** What was read of some files: their deployments, and the files that could not be read. */
export interface ReadDeployments {
  readonly deployments: readonly Deployment[];
  readonly unreadable: readonly Problem[];
}

/**
 * Reads the files of a group, and tells by what they cover whether they are one deployment.
 *
 * @param read the sweeps of a file, as they are to be judged
 * @param reasonOf why a file could not be read, for a person
 */
export function readGroup(
  { files, label, file, isOne }: FileGroup,
  read: (path: string) => readonly Sweep[],
  reasonOf: (error: unknown) => string = hintedMessage,
): ReadDeployments {
  const sweeps: Sweep[] = [];
  const unreadable: Problem[] = [];
  for (const path of files) {
    try {
      sweeps.push(...read(path));
    } catch (error) {
      unreadable.push({ file: path, reason: reasonOf(error) });
    }
  }
  if (files.length > 1 && sweeps.length > 1 && (isOne || areParts(sweeps))) {
    return { deployments: [deploymentOf(sweeps, { label, file })], unreadable };
  }
  // What a group of one file goes by is its own name, unless its folder has a better one.
  const isRenamed = files.length === 1 && sweeps.length === 1 && label !== basename(file);
  return { deployments: sweeps.map((sweep) => deploymentOf([sweep], isRenamed ? { label } : {})), unreadable };
}

/** Reads all groups one after the other. @param read as of {@link readGroup} */
export function readGroups(groups: readonly FileGroup[], read: (path: string) => readonly Sweep[]): ReadDeployments {
  const all = groups.map((group) => readGroup(group, read));
  return {
    deployments: all.flatMap(({ deployments }) => deployments),
    unreadable: all.flatMap(({ unreadable }) => unreadable),
  };
}

/** Ends of two sweeps that differ by less than this, as a share of their frequency, are the same. */
const SAME_END = 0.02;

/**
 * Whether sweeps are parts of one deployment: they cover different ranges, and none of these oftener than there are ranges. Many
 * sweeps of one range are many deployments, or repeats that only the user can tell.
 */
function areParts(sweeps: readonly Sweep[]): boolean {
  const ranges: { readonly like: Sweep; count: number }[] = [];
  for (const sweep of sweeps) {
    const range = ranges.find(({ like }) => haveSameRange(like, sweep));
    if (range === undefined) ranges.push({ like: sweep, count: 1 });
    else range.count++;
  }
  return ranges.length > 1 && Math.max(...ranges.map(({ count }) => count)) <= ranges.length;
}

function haveSameRange(one: Sweep, other: Sweep): boolean {
  const isByHand = (sweep: Sweep) => sweep.kind === "scalar" && sweep.readings.length > 0;
  if (isByHand(one) || isByHand(other)) return isByHand(one) === isByHand(other);
  const isNear = (a = 0, b = 0) => Math.abs(a / b - 1) < SAME_END;
  return (
    isNear(one.frequencyHz.at(0), other.frequencyHz.at(0)) && isNear(one.frequencyHz.at(-1), other.frequencyHz.at(-1))
  );
}

/** Finds what the log says of a deployment: under its folder, or under the first of its files that has a row. */
export function deploymentRowFinder(log: DeploymentLog | null): (deployment: Deployment) => SweepGrade["log"] {
  if (log === null) return () => null;
  const rowOf = rowFinder(log);
  return ({ file, parts }) =>
    rowOf(file) ?? parts.map(({ source }) => rowOf(source.file)).find((row) => row !== null) ?? null;
}

/** By what each group goes in a log: its folder where a row names that, else those of its files that have a row, else all. */
export function placesInLog(groups: readonly FileGroup[], log: DeploymentLog | null): readonly string[] {
  if (log === null) return [];
  const rowOf = rowFinder(log);
  return groups.flatMap(({ file, files }) => {
    if (rowOf(file) !== null) return [file];
    const known = files.filter((each) => rowOf(each) !== null);
    return known.length > 0 ? known : files;
  });
}
