import { fileGroups, readGroup } from "@feedpoint/answers/asked/deployments";
import { basename } from "@feedpoint/answers/asked/paths";
import { referred } from "@feedpoint/answers/asked/referred";
import type { Settings } from "@feedpoint/answers/asked/settings";
import {
  type Deployment,
  type DeploymentLog,
  ReadError,
  type ReceptionReport,
  readDeploymentLog,
  readReports,
  readSweeps,
  type Sweep,
} from "@feedpoint/core";
import { LOG_FILE } from "@feedpoint/core/for-command";
import type { Session, Source, Unread } from "../protocol.js";
import { readOptionsOf, unreadBecause } from "./questions.js";

/** What the sources of a session hold. */
export interface ReadSources {
  readonly deployments: readonly Deployment[];
  readonly log: DeploymentLog | null;
  readonly unread: readonly Unread[];
  /** What others heard of us */
  readonly reports: readonly ReceptionReport[];
}

/** What came of reading a source: its sweeps or reports, or why there are none. */
type Outcome =
  | { readonly sweeps: readonly Sweep[]; readonly reports: readonly ReceptionReport[] }
  | { readonly error: unknown };

/** By source and by what was said of it, so that nothing is read twice. */
const outcomes = new Map<string, Outcome>();

/** Reads what was not read before, and groups it as the command groups the files of a folder. */
export async function readSources({ sources, together }: Session, settings: Settings): Promise<ReadSources> {
  const isLog = ({ path }: Source) => basename(path).toLowerCase() === LOG_FILE;
  const { log, unread: unreadLogs } = await readLog(sources.filter(isLog));
  const files = sources.filter((source) => !isLog(source));
  const read = new Map<string, Outcome>();
  for (const source of files) read.set(source.path, await outcomeOf(source));
  const sweepsOf = (path: string): readonly Sweep[] => {
    const outcome = read.get(path) ?? { sweeps: [], reports: [] };
    if ("error" in outcome) throw outcome.error;
    return outcome.sweeps.map((sweep) => referred(sweep, settings));
  };
  const said = together === "found" ? null : together === "one" ? "together" : "each";
  const reports = [...read.values()].flatMap((outcome) => ("error" in outcome ? [] : outcome.reports));
  const holdsSweeps = ({ path }: Source) => {
    const outcome = read.get(path);
    return outcome === undefined || "error" in outcome || outcome.sweeps.length > 0;
  };
  const paths = files.filter(holdsSweeps).map(({ path }) => path);
  // What was opened by itself, or typed, has no folder, and stands alone.
  const groups = fileGroups(
    { files: paths, named: new Set(paths.filter((path) => !path.includes("/"))) },
    { said, log },
  );
  const errors = new Map<string, unknown>();
  const told = (path: string) => {
    try {
      return sweepsOf(path);
    } catch (error) {
      errors.set(path, error);
      throw error;
    }
  };
  const deployments = groups.flatMap((group) => readGroup(group, told).deployments);
  const unread = files.flatMap((source) => {
    const error = errors.get(source.path);
    return error === undefined ? [] : [unreadBecause(error, source)];
  });
  return { deployments, log, unread: [...unread, ...unreadLogs], reports };
}

async function outcomeOf({ id, path, content, readAs }: Source): Promise<Outcome> {
  const key = `${id} ${JSON.stringify(readAs)}`;
  const known = outcomes.get(key);
  if (known !== undefined) return known;
  let outcome: Outcome;
  try {
    const bytes = new Uint8Array(await content.arrayBuffer());
    const reports = reportsIn(bytes, path);
    const sweeps = reports.length > 0 ? [] : readSweeps(bytes, { ...readOptionsOf(readAs), fileName: path });
    outcome = { sweeps, reports };
  } catch (error) {
    outcome = { error };
  }
  outcomes.set(key, outcome);
  return outcome;
}

/** A file is one of reports where it has their columns or is a log of the air; what is neither may be a sweep. */
function reportsIn(bytes: Uint8Array, path: string): readonly ReceptionReport[] {
  try {
    return readReports(bytes, { fileName: path }).reports;
  } catch (error) {
    if (error instanceof ReadError) return [];
    throw error;
  }
}

/** The first log counts, as beside the command. */
async function readLog([first]: readonly Source[]): Promise<Pick<ReadSources, "log" | "unread">> {
  if (first === undefined) return { log: null, unread: [] };
  try {
    return { log: readDeploymentLog(new Uint8Array(await first.content.arrayBuffer()), first.path), unread: [] };
  } catch (error) {
    return { log: null, unread: [unreadBecause(error, first)] };
  }
}
