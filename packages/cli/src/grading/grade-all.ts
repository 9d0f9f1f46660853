import { availableParallelism } from "node:os";
import type { Grade, SweepGrade } from "@feedpoint/core";
import type { Problem } from "../files.js";
import type { FoundFiles } from "../find-files.js";
import { ndjsonText } from "../present/json.js";
import { gradeFiles } from "./grade-files.js";
import type { GradingSettings } from "./grading-settings.js";
import { progressOf } from "./progress.js";
import { type GradedLine, reaches } from "./report.js";
import { logRowFinder, type Season } from "./season.js";

/** How a run goes about it. */
export interface Run {
  readonly season: Season;
  /** Absent: one for each processor */
  readonly jobs?: number;
  readonly require?: Grade;
  readonly minGrade?: Grade;
  /** Whether each sweep is written as it is done and then forgotten */
  readonly isStreamed: boolean;
}

/** What came of a run. */
export interface Outcome {
  /** None where they were streamed */
  readonly sweeps: readonly SweepGrade[];
  /** Files that were to be graded, and other places that could not be looked into */
  readonly files: number;
  readonly graded: number;
  readonly points: number;
  readonly unreadable: readonly Problem[];
  readonly areAllRequired: boolean;
  readonly isInterrupted: boolean;
}

/** Grades all files. An interrupt ends it between two files. */
export async function gradeAll(found: FoundFiles, settings: GradingSettings, run: Run): Promise<Outcome> {
  const { season, require, minGrade } = run;
  const rowOf = logRowFinder(season);
  const sweeps: SweepGrade[] = [];
  const unreadable = [...found.problems];
  let [done, graded, points] = [0, 0, 0];
  let areAllRequired = true;
  let isInterrupted = false;
  const interrupt = () => {
    isInterrupted = true;
  };
  process.once("SIGINT", interrupt);
  const progress = progressOf(found.files.length);
  for await (const result of gradeFiles(found.files, settings, run.jobs ?? availableParallelism())) {
    progress.advance();
    done++;
    if ("reason" in result) unreadable.push(result);
    else {
      for (const each of result.sweeps) {
        const sweep = { ...each, log: rowOf(each.sweep.file) };
        graded++;
        points += sweep.sweep.points;
        if (require !== undefined && !reaches(sweep.grade, require)) areAllRequired = false;
        if (!run.isStreamed) sweeps.push(sweep);
        else if (minGrade === undefined || reaches(sweep.grade, minGrade))
          await write(`${ndjsonText([lineOf(sweep)])}\n`);
      }
    }
    if (isInterrupted) break;
  }
  progress.stop();
  process.removeListener("SIGINT", interrupt);
  if (isInterrupted) {
    process.stderr.write(`feedpoint: interrupted after ${done} of ${found.files.length} files.\n`);
  }
  const files = found.files.length + found.problems.length;
  return { sweeps, files, graded, points, unreadable, areAllRequired, isInterrupted };
}

const lineOf = (sweep: SweepGrade): GradedLine => ({ schema: "feedpoint/graded-sweep@1", ...sweep });

/** Writes to standard output, waiting where its reader is slower. */
async function write(text: string): Promise<void> {
  if (!process.stdout.write(text)) await new Promise<void>((resolve) => process.stdout.once("drain", resolve));
}
