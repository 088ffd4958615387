import type { FaultAnswer, FaultSession } from "@pinwright/engine";
import type { FromFinder, ToFinder } from "./protocol.ts";

/** The page's side of whoever finds faults beside it. */
export class FinderClient {
  readonly #worker: Worker;
  readonly #waiting = new Map<number, (answer: FaultAnswer) => void>();
  #next = 1;

  /** @param tell hears how far opening is, that it is done, and what went wrong */
  constructor(worker: Worker, file: unknown, tell: (message: FromFinder) => void) {
    this.#worker = worker;
    this.#worker.onerror = (event) => tell({ type: "failed", message: event.message });
    this.#worker.onmessage = ({ data }: MessageEvent<FromFinder>) => {
      if (data.type !== "answer") {
        tell(data);
        return;
      }
      this.#waiting.get(data.id)?.(data.answer);
      this.#waiting.delete(data.id);
    };
    this.#post({ type: "open", file });
  }

  answer(session: FaultSession): Promise<FaultAnswer> {
    const id = this.#next++;
    return new Promise((done) => {
      this.#waiting.set(id, done);
      this.#post({ type: "ask", id, session });
    });
  }

  close(): void {
    this.#worker.terminate();
  }

  #post(message: ToFinder): void {
    this.#worker.postMessage(message);
  }
}
