import { Worker } from "node:worker_threads";
import { messageSchema, type Progress, type ResultOf, resultSchemas, type Task } from "./messages.ts";

/** The other thread refused a task, and says why. */
export class TaskRefused extends Error {}
/** The task was stopped. */
export class TaskCancelled extends Error {}

/** Memory of the other thread: what it cannot do with this much fails by itself and takes nobody along. */
const LIMITS = { maxOldGenerationSizeMb: 2048, maxYoungGenerationSizeMb: 64 };

/**
 * Starts the thread. From sources it needs the same loader as the program itself; Node does not hand that on to
 * threads.
 */
function startWorker(): Worker {
  const here = import.meta.url;
  if (!here.endsWith(".ts")) return new Worker(new URL("./worker.mjs", here), { resourceLimits: LIMITS });
  const url = new URL("./worker.ts", here).href;
  const boot = `import("tsx/esm/api").then(({ register }) => { register(); return import(${JSON.stringify(url)}); })`;
  return new Worker(boot, { eval: true, resourceLimits: LIMITS });
}

interface Waiting {
  readonly task: Task;
  readonly onProgress: (progress: Progress) => void;
  readonly onStart: () => void;
  readonly resolve: (result: unknown) => void;
  readonly reject: (error: Error) => void;
}

export interface LaneCall {
  readonly onProgress?: (progress: Progress) => void;
  readonly onStart?: () => void;
  readonly signal?: AbortSignal;
}

/** One thread that does one task after the other. A task that is stopped ends the thread; the next starts another. */
export class Lane {
  readonly #queue: Waiting[] = [];
  #worker: Worker | null = null;
  #running: Waiting | null = null;
  #closed = false;

  /** Tasks that run or wait. */
  get length(): number {
    return this.#queue.length + (this.#running === null ? 0 : 1);
  }

  /**
   * Does a task in the other thread.
   * @throws TaskRefused, TaskCancelled, or whatever went wrong there
   */
  async run<K extends Task["kind"]>(
    task: Extract<Task, { readonly kind: K }>,
    call: LaneCall = {},
  ): Promise<ResultOf<K>> {
    const { signal } = call;
    if (this.#closed || signal?.aborted === true) throw new TaskCancelled("stopped");
    const result = await new Promise<unknown>((resolve, reject) => {
      const waiting: Waiting = {
        task,
        onProgress: call.onProgress ?? (() => undefined),
        onStart: call.onStart ?? (() => undefined),
        resolve,
        reject,
      };
      signal?.addEventListener("abort", () => this.#stop(waiting), { once: true });
      this.#queue.push(waiting);
      this.#next();
    });
    // The schema is the one of this kind of task, which the type of the result is made from.
    return resultSchemas[task.kind].parse(result) as ResultOf<K>;
  }

  /** Stops everything. */
  async close(): Promise<void> {
    this.#closed = true;
    for (const waiting of [...this.#queue, ...(this.#running === null ? [] : [this.#running])])
      this.#stop(waiting);
    await this.#worker?.terminate();
  }

  #next(): void {
    if (this.#running !== null || this.#closed) return;
    const next = this.#queue.shift();
    if (next === undefined) return;
    this.#running = next;
    next.onStart();
    const worker = this.#worker ?? this.#start();
    worker.ref();
    worker.postMessage(next.task);
  }

  #start(): Worker {
    const worker = startWorker();
    this.#worker = worker;
    worker.on("message", (raw: unknown) => {
      const running = this.#running;
      if (running === null || worker !== this.#worker) return;
      const message = messageSchema.parse(raw);
      if (message.type === "progress") running.onProgress(message);
      else {
        this.#running = null;
        worker.unref();
        if (message.type === "done") running.resolve(message.result);
        else running.reject(new TaskRefused(message.message));
        this.#next();
      }
    });
    worker.on("error", (error: unknown) => {
      if (worker === this.#worker) this.#lose(error instanceof Error ? error : new Error(String(error)));
    });
    worker.on("exit", () => {
      if (worker === this.#worker) this.#lose(new Error("the thread ended"));
    });
    return worker;
  }

  #stop(waiting: Waiting): void {
    const at = this.#queue.indexOf(waiting);
    if (at >= 0) {
      this.#queue.splice(at, 1);
      waiting.reject(new TaskCancelled("stopped"));
    } else if (waiting === this.#running) {
      const worker = this.#worker;
      this.#lose(new TaskCancelled("stopped"));
      void worker?.terminate();
    }
  }

  #lose(error: Error): void {
    const running = this.#running;
    this.#worker = null;
    this.#running = null;
    running?.reject(error);
    this.#next();
  }
}
