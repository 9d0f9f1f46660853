import type { Finding } from "../../sweep/finding.js";
import type { Points } from "./arrange.js";

/** What a reader hands on: points in the file's order, and how they were understood. */
export interface ReadPoints {
  readonly format: "touchstone" | "delimited";
  readonly points: Points;
  readonly referenceOhms: number;
  readonly description: string;
  readonly comments: readonly string[];
  readonly findings: readonly Finding[];
}
