import { parentPort, workerData } from "node:worker_threads";
import { type FileGrade, gradeFile } from "./grade-file.js";
import type { GradingSettings } from "./grading-settings.js";

/** The thread of a worker: grades each batch of files that comes, and sends the results back in its order. */
const settings = workerData as GradingSettings;
parentPort?.on("message", (files: readonly string[]) => {
  const results: readonly FileGrade[] = files.map((file) => gradeFile(file, settings));
  parentPort?.postMessage(results);
});
