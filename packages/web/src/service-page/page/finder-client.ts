import type { FaultAnswer, FaultSession } from "@pinwright/engine";
import type { FromFinder, ToFinder } from "./protocol.ts";

/** The page's side of its own finder, whose code lies in the page as text: a page from a file may load nothing. */
export class FinderClient {
  readonly #worker: Worker;
  readonly #waiting = new Map<number, (answer: FaultAnswer) => void>();
  #next = 1;

  /** @param tell hears how far opening is, that it is done, and what went wrong */
  constructor(code: string, file: unknown, tell: (message: FromFinder) => void) {
    const address = URL.createObjectURL(new Blob([code], { type: "text/javascript" }));
    this.#worker = new Worker(address);
    this.#worker.onerror = (event) => tell({ type: "failed", message: event.message });
    this.#worker.onmessage = ({ data }: MessageEvent<FromFinder>) => {
      if (data.type !== "answer") return tell(data);
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

  #post(message: ToFinder): void {
    this.#worker.postMessage(message);
  }
}
