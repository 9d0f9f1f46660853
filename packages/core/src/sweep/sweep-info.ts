import { at } from "../numbers/column.js";
import type { Finding } from "./finding.js";
import type { Sweep } from "./sweep.js";

/** What is said of a sweep in every result. */
export interface SweepInfo {
  readonly file: string;
  readonly label: string;
  readonly kind: "vector" | "scalar";
  /** How the file was understood */
  readonly description: string;
  readonly points: number;
  readonly startHz: number;
  readonly stopHz: number;
  readonly referenceOhms: number;
  readonly takenAt: string | null;
  readonly findings: readonly Finding[];
}

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
