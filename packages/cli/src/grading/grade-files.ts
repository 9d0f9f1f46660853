import type { FileGroup } from "@feedpoint/answers/asked/deployments";
import { type Batch, joined, unreadBatch } from "./batch.js";
import { graderOf } from "./grader.js";
import type { GradingSettings } from "./grading-settings.js";
import { GradingWorker } from "./grading-worker.js";

/** Below this many deployments starting workers costs more than they save. */
const WORTH_WORKERS = 1000;
const BATCH = 16;
/** Batches that each worker has in hand, so that it never waits; more would only fill memory. */
const AHEAD = 3;

/**
 * Grades deployments batch after batch, in their order whatever the number of workers.
 *
 * @param jobs workers to use; 1: none, all in this thread
 */
export async function* gradeFiles(
  groups: readonly FileGroup[],
  settings: GradingSettings,
  jobs: number,
): AsyncGenerator<Batch> {
  const readsInput = groups.some(({ files }) => files.includes("-"));
  if (jobs === 1 || groups.length < WORTH_WORKERS || readsInput) yield* gradeHere(groups, settings);
  else yield* gradeInWorkers(groups, settings, jobs);
}

/** After so long what was graded is handed on, and an interrupt and the progress bar have their turn, ms. */
const TURN_MS = 20;

async function* gradeHere(groups: readonly FileGroup[], settings: GradingSettings): AsyncGenerator<Batch> {
  const grade = graderOf(settings);
  let graded: Batch[] = [];
  let since = performance.now();
  for (const [i, group] of groups.entries()) {
    graded.push(grade([group]));
    if (performance.now() - since < TURN_MS && i < groups.length - 1) continue;
    yield joined(graded);
    graded = [];
    await new Promise(setImmediate);
    since = performance.now();
  }
}

async function* gradeInWorkers(
  groups: readonly FileGroup[],
  settings: GradingSettings,
  jobs: number,
): AsyncGenerator<Batch> {
  const batches = Math.ceil(groups.length / BATCH);
  const workers = Array.from({ length: Math.min(jobs, batches) }, () => new GradingWorker(settings));
  const waiting: Promise<Batch>[] = [];
  let next = 0;
  let isOver = false;
  const workerAt = (place: number): GradingWorker => {
    const present = workers[place];
    if (present !== undefined && !present.hasEnded) return present;
    const other = new GradingWorker(settings);
    workers[place] = other;
    return other;
  };
  const send = () => {
    if (next === batches) return;
    const batch = groups.slice(next * BATCH, (next + 1) * BATCH);
    const worker = workerAt(next % workers.length);
    waiting.push(worker.grade(batch).catch(() => (isOver ? joined([]) : gradeEachAlone(batch, settings))));
    next++;
  };
  try {
    for (let i = 0; i < AHEAD * workers.length; i++) send();
    for (let batch = waiting.shift(); batch !== undefined; batch = waiting.shift()) {
      const result = await batch;
      send();
      yield result;
    }
  } finally {
    isOver = true;
    await Promise.all(workers.map((worker) => worker.stop()));
  }
}

/**
 * What becomes of a batch whose worker died, by a file that fills all memory perhaps: each deployment has a worker of its own, so
 * that only the one that kills it is lost.
 */
async function gradeEachAlone(groups: readonly FileGroup[], settings: GradingSettings): Promise<Batch> {
  const results: Batch[] = [];
  for (const group of groups) {
    const worker = new GradingWorker(settings);
    const lost = (error: Error) =>
      unreadBatch(group.files.map((file) => ({ file, reason: `${file}: ${error.message}.` })));
    results.push(await worker.grade([group]).catch(lost));
    await worker.stop();
  }
  return joined(results);
}
