import type { SweepGrade } from "@feedpoint/core";
import type { Problem } from "../files.js";

/** What came of some files, in their order. */
export interface Batch {
  readonly files: number;
  readonly graded: number;
  readonly points: number;
  readonly areAllRequired: boolean;
  readonly unreadable: readonly Problem[];
  /** Empty where the sweeps are streamed */
  readonly sweeps: readonly SweepGrade[];
  /** Lines of NDJSON; empty where the sweeps are not streamed, and where none reached the least grade */
  readonly lines: string;
}

/** A batch of one file that could not be read. */
export const unreadBatch = (problem: Problem): Batch => ({
  files: 1,
  graded: 0,
  points: 0,
  areAllRequired: true,
  unreadable: [problem],
  sweeps: [],
  lines: "",
});

/** Batches one after the other as one. */
export const joined = (batches: readonly Batch[]): Batch => ({
  files: sumOf(batches, "files"),
  graded: sumOf(batches, "graded"),
  points: sumOf(batches, "points"),
  areAllRequired: batches.every(({ areAllRequired }) => areAllRequired),
  unreadable: batches.flatMap(({ unreadable }) => unreadable),
  sweeps: batches.flatMap(({ sweeps }) => sweeps),
  lines: batches.map(({ lines }) => lines).join(""),
});

const sumOf = (batches: readonly Batch[], what: "files" | "graded" | "points") =>
  batches.reduce((sum, batch) => sum + batch[what], 0);
