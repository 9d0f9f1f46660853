import { join } from "node:path";
import { Worker } from "node:worker_threads";
import type { FileGroup } from "@feedpoint/answers/asked/deployments";
import type { Batch } from "./batch.js";
import type { GradingSettings } from "./grading-settings.js";

/** Files that a worker has in hand. */
interface Waiting {
  readonly resolve: (result: Batch) => void;
  readonly reject: (reason: Error) => void;
}

/** A thread that grades deployments, batch after batch, and answers in their order. */
export class GradingWorker {
  readonly #worker: Worker;
  readonly #waiting: Waiting[] = [];
  #failure: Error | null = null;

  constructor(settings: GradingSettings) {
    // Beside this code once it is built (see build/command.mjs).
    this.#worker = new Worker(join(import.meta.dirname, "worker-thread.js"), { workerData: settings });
    this.#worker.on("message", (result: Batch) => this.#waiting.shift()?.resolve(result));
    this.#worker.on("error", (error) => this.#fail(error));
    this.#worker.on("exit", () => this.#fail(new Error("the thread that read it ended")));
  }

  get hasEnded(): boolean {
    return this.#failure !== null;
  }

  /** Rejects where the thread ends before it has answered. */
  grade(groups: readonly FileGroup[]): Promise<Batch> {
    if (this.#failure !== null) return Promise.reject(this.#failure);
    return new Promise((resolve, reject) => {
      this.#waiting.push({ resolve, reject });
      this.#worker.postMessage(groups);
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
