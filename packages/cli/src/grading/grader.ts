import { gradeSweep, hasProblem, type SweepGrade } from "@feedpoint/core";
import { readReferred } from "../files.js";
import { ndjsonText } from "../present/json.js";
import { type Batch, joined, unreadBatch } from "./batch.js";
import type { GradingSettings } from "./grading-settings.js";
import { type GradedLine, reaches } from "./report.js";
import { logRowFinder } from "./season.js";

/** Prepares to grade files, batch after batch. */
export function graderOf(settings: GradingSettings): (files: readonly string[]) => Batch {
  const rowOf = logRowFinder(settings);

  const gradeFile = (file: string): Batch => {
    try {
      const sweeps = readReferred(file, settings).map((sweep) => ({
        ...gradeSweep(sweep, settings),
        log: rowOf(sweep.source.file),
      }));
      return batchOf(sweeps, settings);
    } catch (error) {
      return unreadBatch({ file, reason: (error as Error).message });
    }
  };
  return (files) => joined(files.map(gradeFile));
}

/** The batch of one file that could be read. */
function batchOf(sweeps: readonly SweepGrade[], { require, minGrade, isStreamed }: GradingSettings): Batch {
  const streamed = isStreamed ? sweeps.filter(({ grade }) => minGrade === undefined || reaches(grade, minGrade)) : [];
  return {
    files: 1,
    graded: sweeps.length,
    points: sweeps.reduce((sum, { sweep }) => sum + sweep.points, 0),
    areAllRequired:
      require === undefined || sweeps.every((graded) => reaches(graded.grade, require) && !hasProblem(graded)),
    unreadable: [],
    sweeps: isStreamed ? [] : sweeps,
    lines: streamed.map((sweep) => `${ndjsonText([lineOf(sweep)])}\n`).join(""),
  };
}

const lineOf = (sweep: SweepGrade): GradedLine => ({ schema: "feedpoint/graded-sweep@1", ...sweep });
