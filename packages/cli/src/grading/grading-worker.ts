import { Worker } from "node:worker_threads";
import type { FileGrade } from "./grade-file.js";
import type { GradingSettings } from "./grading-settings.js";

/** A batch that a worker has in hand. */
interface Waiting {
  readonly resolve: (results: readonly FileGrade[]) => void;
  readonly reject: (reason: Error) => void;
}

/** A thread that grades batches of files and answers them in their order. */
export class GradingWorker {
  readonly #worker: Worker;
  readonly #waiting: Waiting[] = [];
  #failure: Error | null = null;

  constructor(settings: GradingSettings) {
    // Beside this code once it is built (see build.mjs).
    this.#worker = new Worker(new URL("./worker-thread.js", import.meta.url), { workerData: settings });
    this.#worker.on("message", (results: readonly FileGrade[]) => this.#waiting.shift()?.resolve(results));
    this.#worker.on("error", (error) => this.#fail(error));
    this.#worker.on("exit", () => this.#fail(new Error("the thread that read it ended")));
  }

  get hasEnded(): boolean {
    return this.#failure !== null;
  }

  /** Rejects where the thread ends before it has answered. */
  grade(files: readonly string[]): Promise<readonly FileGrade[]> {
    if (this.#failure !== null) return Promise.reject(this.#failure);
    return new Promise((resolve, reject) => {
      this.#waiting.push({ resolve, reject });
      this.#worker.postMessage(files);
    });
  }

  stop(): Promise<number> {
    return this.#worker.terminate();
  }

  #fail(reason: Error): void {
    this.#failure ??= reason;
    for (const { reject } of this.#waiting.splice(0)) reject(this.#failure);
  }
}
