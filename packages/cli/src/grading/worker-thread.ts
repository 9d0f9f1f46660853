import { parentPort, workerData } from "node:worker_threads";
import type { FileGroup } from "@feedpoint/answers/asked/deployments";
import { graderOf } from "./grader.js";
import type { GradingSettings } from "./grading-settings.js";

/** The work of a worker's thread: grades each batch of files that comes, and sends back what came of it. */
export function answerBatches(): void {
  const grade = graderOf(workerData as GradingSettings);
  parentPort?.on("message", (groups: readonly FileGroup[]) => parentPort?.postMessage(grade(groups)));
}
