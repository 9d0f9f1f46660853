import { Worker } from "node:worker_threads";
import { type FileGrade, gradeFile } from "./grade-file.js";
import type { GradingSettings } from "./grading-settings.js";

/** Below this many files starting workers costs more than they save. */
const WORTH_WORKERS = 300;
const BATCH = 16;
/** Batches that each worker has in hand, so that it never waits; more would only fill memory. */
const AHEAD = 3;

/**
 * Grades files one after the other, in their order whatever the number of workers.
 *
 * @param jobs workers to use; 1: none, all in this thread
 */
export async function* gradeFiles(
  files: readonly string[],
  settings: GradingSettings,
  jobs: number,
): AsyncGenerator<FileGrade> {
  if (jobs === 1 || files.length < WORTH_WORKERS || files.includes("-")) {
    for (const file of files) {
      yield gradeFile(file, settings);
      // Lets an interrupt and the progress bar have their turn.
      await new Promise(setImmediate);
    }
    return;
  }
  const workers = Array.from({ length: jobs }, () => new GradingWorker(settings));
  try {
    const waiting: Promise<readonly FileGrade[]>[] = [];
    let next = 0;
    const send = () => {
      const batch = files.slice(next * BATCH, (next + 1) * BATCH);
      const worker = workers[next % jobs];
      if (batch.length === 0 || worker === undefined) return;
      waiting.push(worker.grade(batch));
      next++;
    };
    for (let i = 0; i < AHEAD * jobs; i++) send();
    for (let batch = waiting.shift(); batch !== undefined; batch = waiting.shift()) {
      const results = await batch;
      send();
      yield* results;
    }
  } finally {
    await Promise.all(workers.map((worker) => worker.stop()));
  }
}

/** A worker that answers its batches in their order. */
class GradingWorker {
  readonly #worker: Worker;
  readonly #waiting: { files: readonly string[]; resolve: (results: readonly FileGrade[]) => void }[] = [];
  #failure: string | null = null;

  constructor(settings: GradingSettings) {
    // The command is one file: the worker runs the same one, which sees that it is not the main thread.
    this.#worker = new Worker(new URL(import.meta.url), { workerData: settings });
    this.#worker.on("message", (results: readonly FileGrade[]) => this.#waiting.shift()?.resolve(results));
    this.#worker.on("error", (error) => this.#fail(error.message));
    this.#worker.on("exit", () => this.#fail("the worker stopped"));
  }

  grade(files: readonly string[]): Promise<readonly FileGrade[]> {
    const failure = this.#failure;
    if (failure !== null) return Promise.resolve(files.map((file) => ({ file, reason: `${file}: ${failure}` })));
    return new Promise((resolve) => {
      this.#waiting.push({ files, resolve });
      this.#worker.postMessage(files);
    });
  }

  stop(): Promise<number> {
    return this.#worker.terminate();
  }

  /** A batch whose worker died is reported file by file; nothing is lost in silence. */
  #fail(reason: string): void {
    this.#failure ??= reason;
    for (const { files, resolve } of this.#waiting.splice(0)) {
      resolve(files.map((file) => ({ file, reason: `${file}: ${reason}` })));
    }
  }
}
