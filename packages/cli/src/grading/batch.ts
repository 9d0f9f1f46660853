import type { Problem } from "@feedpoint/answers/asked/usage-error";
import type { SweepGrade } from "@feedpoint/core";

/** What is counted while files are graded. */
export interface Counts {
  readonly files: number;
  readonly graded: number;
  readonly points: number;
  readonly areAllRequired: boolean;
}

/** What came of some files, in their order. */
export interface Batch extends Counts {
  readonly unreadable: readonly Problem[];
  /** Empty where the sweeps are streamed */
  readonly sweeps: readonly SweepGrade[];
  /** Lines of NDJSON; empty where the sweeps are not streamed, and where none reached the least grade */
  readonly lines: string;
}

export const NO_COUNTS: Counts = { files: 0, graded: 0, points: 0, areAllRequired: true };

export const countsTogether = (one: Counts, other: Counts): Counts => ({
  files: one.files + other.files,
  graded: one.graded + other.graded,
  points: one.points + other.points,
  areAllRequired: one.areAllRequired && other.areAllRequired,
});

/** A batch of files of which none could be read. */
export const unreadBatch = (problems: readonly Problem[]): Batch => ({
  ...NO_COUNTS,
  files: problems.length,
  unreadable: problems,
  sweeps: [],
  lines: "",
});

/** Batches one after the other as one. */
export const joined = (batches: readonly Batch[]): Batch => ({
  ...batches.reduce<Counts>(countsTogether, NO_COUNTS),
  unreadable: batches.flatMap(({ unreadable }) => unreadable),
  sweeps: batches.flatMap(({ sweeps }) => sweeps),
  lines: batches.map(({ lines }) => lines).join(""),
});
