import { demand, isRecord } from "../input/argument.js";
import { at } from "../numbers/column.js";
import { type Finding, placed } from "./finding.js";
import type { Sweep } from "./sweep.js";
import { checkSweep } from "./sweep-check.js";
import { type SweepInfo, sweepInfo } from "./sweep-info.js";

/**
 * One way of putting the antenna up, and what is known of it: a sweep, a sweep a band, repeats, readings noted by hand, or all of
 * these. {@link deploymentOf} makes one.
 */
export interface Deployment {
  /** What it is called in results */
  readonly label: string;
  /** The file or folder that it comes from, as it was named */
  readonly file: string;
  /** ISO 8601 date or date and time; null where nothing states one */
  readonly takenAt: string | null;
  /** Ascending by where they begin, whatever the order in which they were given */
  readonly parts: readonly [Sweep, ...Sweep[]];
}

/**
 * Joins sweeps and readings of one way of putting the antenna up.
 *
 * @param parts in any order: the same parts make the same deployment
 * @param named what it is called, where it comes from, and when it was taken; of the parts where absent
 * @throws TypeError for what is no sweep
 * @throws RangeError where there is none
 * @example
 * ```ts
 * import { check, deploymentOf, planById, readSweeps } from "@feedpoint/core";
 *
 * const [wide] = readSweeps("MHz,SWR\n6,4\n7,2\n8,3\n9,5\n10,6\n11,4\n12,3\n13,2\n14,1.5\n15,2\n");
 * const [band] = readSweeps("MHz,SWR\n7.0,1.6\n7.1,1.3\n7.2,1.5\n");
 * const { bands, parts } = check(deploymentOf([wide, band]), { plan: planById("itu-r1"), bands: ["40m", "20m"] });
 * bands[0]?.best?.swr; // → 1.3
 * parts.map((part) => part.bands.join()); // → ["20m", "40m"]
 * ```
 */
export function deploymentOf(parts: readonly Sweep[], named: Partial<Omit<Deployment, "parts">> = {}): Deployment {
  demand(Array.isArray(parts), "parts", "a list of sweeps", parts);
  parts.forEach((part, i) => {
    checkSweep(part, `parts[${i}]`);
  });
  const [first, ...others] = [...parts].sort(inOrder);
  if (first === undefined) throw new RangeError("a deployment needs at least one sweep or list of readings");
  const dates = parts.flatMap(({ takenAt }) => (takenAt === null ? [] : [takenAt])).sort();
  const label = named.label ?? [first, ...others].map((part) => part.label).join(", ");
  return Object.freeze({
    label,
    file: named.file ?? (others.length === 0 ? first.source.file : label),
    takenAt: named.takenAt === undefined ? (dates[0] ?? null) : named.takenAt,
    parts: Object.freeze([first, ...others] as const),
  });
}

const inOrder = (one: Sweep, other: Sweep): number =>
  at(one.frequencyHz, 0) - at(other.frequencyHz, 0) ||
  at(one.frequencyHz, one.frequencyHz.length - 1) - at(other.frequencyHz, other.frequencyHz.length - 1) ||
  compared(one.source.file, other.source.file) ||
  compared(one.label, other.label);

const compared = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

/** A sweep by itself is a deployment of one part. @throws TypeError for what is neither a sweep nor a deployment */
export function asDeployment(given: Sweep | Deployment, name = "sweep"): Deployment {
  if (isRecord(given) && Array.isArray(given.parts)) {
    given.parts.forEach((part, i) => {
      checkSweep(part, `${name}.parts[${i}]`);
    });
    demand(given.parts.length > 0, `${name}.parts`, "one sweep or more, as deploymentOf gives them", given.parts);
    return given as Deployment;
  }
  checkSweep(given, name);
  const sweep = given as Sweep;
  return { label: sweep.label, file: sweep.source.file, takenAt: sweep.takenAt, parts: [sweep] };
}

/** What was noticed when the parts were read; of several, each with the file that it is about. */
const findingsOfParts = ({ parts }: Deployment): readonly Finding[] =>
  parts.length === 1
    ? parts[0].findings
    : parts.flatMap(({ findings, source }) => findings.map((each) => placed(each, { file: source.file })));

/** What is said of a deployment in every result: of one part what is said of that. */
export function deploymentInfo(deployment: Deployment): SweepInfo {
  const { parts, label, file, takenAt } = deployment;
  const [first, ...others] = parts.map(sweepInfo) as [SweepInfo, ...SweepInfo[]];
  if (others.length === 0) return { ...first, label, file, takenAt };
  const all = [first, ...others];
  return {
    file,
    label,
    kind: all.some(({ kind }) => kind === "vector") ? "vector" : "scalar",
    description: `${all.length} parts: ${[...new Set(all.map(({ description }) => description))].join("; ")}`,
    points: all.reduce((sum, { points }) => sum + points, 0),
    startHz: Math.min(...all.map(({ startHz }) => startHz)),
    stopHz: Math.max(...all.map(({ stopHz }) => stopHz)),
    referenceOhms: first.referenceOhms,
    takenAt,
    findings: findingsOfParts(deployment),
  };
}
