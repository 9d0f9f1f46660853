import { at } from "../numbers/column.js";
import type { Finding } from "./finding.js";
import type { Sweep } from "./sweep.js";

/** What is said of a sweep in every result. */
export interface SweepInfo {
  /** The file's name as given */
  readonly file: string;
  /** What the sweep is called: the name without its folders */
  readonly label: string;
  readonly kind: "vector" | "scalar";
  /** How the file was understood */
  readonly description: string;
  /** How many samples it has */
  readonly points: number;
  /** First and last frequency, Hz */
  readonly startHz: number;
  readonly stopHz: number;
  readonly referenceOhms: number;
  /** ISO 8601 date or date and time; null where nothing states one */
  readonly takenAt: string | null;
  /** What was noticed when it was read */
  readonly findings: readonly Finding[];
}

/** What is said of a sweep in every result: where it comes from, what it spans, what was noticed when it was read. */
export function sweepInfo(sweep: Sweep): SweepInfo {
  const { frequencyHz } = sweep;
  return {
    file: sweep.source.file,
    label: sweep.label,
    kind: sweep.kind,
    description: sweep.source.description,
    points: frequencyHz.length,
    startHz: at(frequencyHz, 0),
    stopHz: at(frequencyHz, frequencyHz.length - 1),
    referenceOhms: sweep.referenceOhms,
    takenAt: sweep.takenAt,
    findings: sweep.findings,
  };
}
