import { gradeSweep, type SweepGrade } from "@feedpoint/core";
import { readForJudging } from "../files.js";
import type { GradingSettings } from "./grading-settings.js";

/** What became of a file: its sweeps, graded, or why it could not be read. */
export type FileGrade =
  | { readonly file: string; readonly sweeps: readonly SweepGrade[] }
  | { readonly file: string; readonly reason: string };

export function gradeFile(file: string, settings: GradingSettings): FileGrade {
  try {
    const sweeps = readForJudging(file, settings.reading, settings.systemOhms);
    return { file, sweeps: sweeps.map((sweep) => gradeSweep(sweep, settings)) };
  } catch (error) {
    return { file, reason: (error as Error).message };
  }
}
