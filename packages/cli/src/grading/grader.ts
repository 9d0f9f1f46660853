import { gradeSweep, rowFinder, type SweepGrade } from "@feedpoint/core";
import { type Problem, readForJudging } from "../files.js";
import { ndjsonText } from "../present/json.js";
import { type Batch, joined, unreadBatch } from "./batch.js";
import type { GradingSettings } from "./grading-settings.js";
import { type GradedLine, reaches } from "./report.js";

/** Prepares to grade files, batch after batch. */
export function graderOf(settings: GradingSettings): (files: readonly string[]) => Batch {
  const { log, require, minGrade, isStreamed } = settings;
  const rowOf = log === null ? () => null : rowFinder(log);
  const lineOf = (sweep: SweepGrade): string => {
    const line: GradedLine = { schema: "feedpoint/graded-sweep@1", ...sweep };
    return `${ndjsonText([line])}\n`;
  };
  const batchOf = (sweeps: readonly SweepGrade[]): Batch => ({
    files: 1,
    graded: sweeps.length,
    points: sweeps.reduce((sum, { sweep }) => sum + sweep.points, 0),
    areAllRequired: require === undefined || sweeps.every(({ grade }) => reaches(grade, require)),
    unreadable: [],
    sweeps: isStreamed ? [] : sweeps,
    lines: !isStreamed
      ? ""
      : sweeps
          .filter(({ grade }) => minGrade === undefined || reaches(grade, minGrade))
          .map(lineOf)
          .join(""),
  });
  const gradeFile = (file: string): Batch => {
    const sweeps = gradedSweeps(file, settings);
    return "reason" in sweeps ? unreadBatch(sweeps) : batchOf(sweeps.map((sweep) => ({ ...sweep, log: rowOf(file) })));
  };
  return (files) => joined(files.map(gradeFile));
}

/** A file's sweeps, graded, or why it could not be read. */
function gradedSweeps(file: string, settings: GradingSettings): readonly SweepGrade[] | Problem {
  try {
    return readForJudging(file, settings.reading, settings.systemOhms).map((sweep) => gradeSweep(sweep, settings));
  } catch (error) {
    return { file, reason: (error as Error).message };
  }
}
