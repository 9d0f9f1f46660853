import type { AnswerMessage, AskName, Asks } from "../protocol.js";

/** Why an ask came to nothing: the worker refused it with a sentence, or it was stopped. */
export class Refusal extends Error {
  override readonly name = "Refusal";
}

interface Waiting {
  readonly resolve: (answer: never) => void;
  readonly reject: (refusal: Refusal) => void;
}

/** What the page asks its worker, and how it stops it. */
export interface WorkerClient {
  readonly ask: <Name extends AskName>(name: Name, ask: Asks[Name]["ask"]) => Promise<Asks[Name]["answer"]>;
  /** Ends what is going on, and all that it knew: the next ask begins with a new worker. */
  readonly stop: (why: string) => void;
}

/** @param script the worker's own code @param onBroken told where a worker cannot be started, or dies */
export function workerClient(script: string, onBroken: (why: string) => void): WorkerClient {
  const place = URL.createObjectURL(new Blob([script], { type: "text/javascript" }));
  const waiting = new Map<number, Waiting>();
  let worker = started();
  let last = 0;

  function started(): Worker {
    const fresh = new Worker(place);
    fresh.addEventListener("message", ({ data }: MessageEvent<AnswerMessage>) => {
      const own = waiting.get(data.id);
      waiting.delete(data.id);
      if ("refusal" in data) own?.reject(new Refusal(data.refusal));
      else own?.resolve(data.answer as never);
    });
    fresh.addEventListener("error", ({ message }) => onBroken(message));
    return fresh;
  }

  return {
    ask: (name, ask) =>
      new Promise((resolve, reject) => {
        const id = ++last;
        waiting.set(id, { resolve, reject });
        worker.postMessage({ id, name, ask });
      }),
    stop: (why) => {
      worker.terminate();
      for (const { reject } of waiting.values()) reject(new Refusal(why));
      waiting.clear();
      worker = started();
    },
  };
}
