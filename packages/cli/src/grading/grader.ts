import { type FileGroup, readGroup } from "@feedpoint/answers/asked/deployments";
import { graderBy } from "@feedpoint/answers/judged/grading";
import { type GradedLine, reaches } from "@feedpoint/answers/judged/report";
import { ndjsonText } from "@feedpoint/answers/text/json";
import { hasProblem, type SweepGrade } from "@feedpoint/core";
import { readReferred } from "../files.js";
import { type Batch, joined } from "./batch.js";
import type { GradingSettings } from "./grading-settings.js";

/** Prepares to grade groups of files, batch after batch. */
export function graderOf(settings: GradingSettings): (groups: readonly FileGroup[]) => Batch {
  const gradeOne = graderBy(settings);

  const gradeGroup = (group: FileGroup): Batch => {
    const { deployments, unreadable } = readGroup(
      group,
      (path) => readReferred(path, settings),
      (error) => (error as Error).message,
    );
    const sweeps = deployments.map(gradeOne);
    return { ...batchOf(sweeps, settings), files: group.files.length, unreadable };
  };
  return (groups) => joined(groups.map(gradeGroup));
}

/** The batch of one group of files. */
function batchOf(
  sweeps: readonly SweepGrade[],
  { require, minGrade, isStreamed }: GradingSettings,
): Omit<Batch, "files" | "unreadable"> {
  const streamed = isStreamed ? sweeps.filter(({ grade }) => minGrade === undefined || reaches(grade, minGrade)) : [];
  return {
    graded: sweeps.length,
    points: sweeps.reduce((sum, { sweep }) => sum + sweep.points, 0),
    areAllRequired:
      require === undefined || sweeps.every((graded) => reaches(graded.grade, require) && !hasProblem(graded)),
    sweeps: isStreamed ? [] : sweeps,
    lines: streamed.map((sweep) => `${ndjsonText([lineOf(sweep)])}\n`).join(""),
  };
}

const lineOf = (sweep: SweepGrade): GradedLine => ({ schema: "feedpoint/graded-sweep@1", ...sweep });
