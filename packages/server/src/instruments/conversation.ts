import { InstrumentError, type InstrumentTrouble } from "./instrument-error.ts";
import { type InstrumentAddress, openWire, type Wire } from "./transports.ts";

export interface ConversationOptions {
  readonly address: InstrumentAddress;
  /** Longest wait for the connection and for one whole answer, ms. */
  readonly timeoutMs: number;
  /** Ends a line that is sent; an answer ends with LF, a CR before it is taken away. */
  readonly lineEnd?: "\n" | "\r\n";
  /** Characters of an answer. */
  readonly longestAnswer?: number;
  /** After a serial answer that came too late the line must be quiet so long before the next question, ms. */
  readonly quietMs?: number;
}

const LONGEST_ANSWER = 65_536;
const QUIET_MS = 50;

/** What waits for a line. */
interface Waiting {
  readonly line: (line: string) => void;
  readonly fail: (trouble: InstrumentTrouble, says: string) => void;
}

/**
 * Lines to an instrument and back, one question at a time: whoever asks while another waits comes after. It opens by itself
 * with the first question and after anything went wrong. After a time-out the connection is given up, for the answer that
 * comes late must not be taken for that to the next question.
 */
export class Conversation {
  readonly #options: ConversationOptions;
  #wire: Wire | null = null;
  #last: Promise<unknown> = Promise.resolve();
  #heard = "";
  /** Characters that came on this connection. */
  #came = 0;
  #waiting: Waiting | null = null;
  #isDoubtful = false;
  #isOver = false;

  constructor(options: ConversationOptions) {
    this.#options = options;
  }

  /**
   * Sends a line and waits for one back.
   * @throws InstrumentError
   */
  ask(line: string): Promise<string> {
    return this.#inTurn(async () => {
      if (this.#isOver) throw new InstrumentError("ended", line, "");
      const wire = await this.#opened();
      return this.#answer(wire, line);
    });
  }

  /** Ends the connection, after what is asked already. */
  close(): Promise<void> {
    return this.#inTurn(async () => this.#drop());
  }

  /** Ends the connection at once and for good: whoever waits is told that it ended. */
  hangUp(): void {
    this.#isOver = true;
    const waiting = this.#waiting;
    this.#drop();
    waiting?.fail("ended", "");
  }

  #inTurn<T>(task: () => Promise<T>): Promise<T> {
    const turn = this.#last.then(task, task);
    this.#last = turn.catch(() => undefined);
    return turn;
  }

  #drop(): void {
    this.#wire?.destroy();
    this.#wire = null;
    this.#heard = "";
  }

  async #opened(): Promise<Wire> {
    if (this.#wire !== null) return this.#wire;
    const { address, timeoutMs } = this.#options;
    const wire = await openWire(address, timeoutMs);
    this.#wire = wire;
    this.#heard = "";
    wire.setEncoding("latin1");
    wire.on("data", (text) => this.#hear(wire, String(text)));
    wire.on("error", (error) => this.#lost(wire, error.message));
    wire.on("close", () => this.#lost(wire, ""));
    wire.resume();
    // A new connection of TCP begins empty; on a serial line what was asked before may still come.
    if (this.#isDoubtful && address.kind === "serial") await this.#quiet();
    this.#isDoubtful = false;
    return wire;
  }

  async #quiet(): Promise<void> {
    const { quietMs = QUIET_MS, timeoutMs } = this.#options;
    for (let waited = 0; waited < timeoutMs; waited += quietMs) {
      const before = this.#came;
      await new Promise((resolve) => setTimeout(resolve, quietMs));
      if (this.#came === before) return;
    }
  }

  #answer(wire: Wire, asked: string): Promise<string> {
    return new Promise((resolve, reject) => {
      const done = (): void => {
        clearTimeout(timer);
        this.#waiting = null;
      };
      const fail = (trouble: InstrumentTrouble, says: string): void => {
        done();
        this.#isDoubtful = true;
        this.#drop();
        reject(new InstrumentError(trouble, asked, says));
      };
      const timer = setTimeout(() => fail("time-out", this.#heard), this.#options.timeoutMs);
      this.#waiting = {
        line: (line) => {
          done();
          resolve(line);
        },
        fail,
      };
      // What came unasked answers nothing.
      this.#heard = "";
      wire.write(`${asked}${this.#options.lineEnd ?? "\n"}`, "latin1");
    });
  }

  #hear(wire: Wire, text: string): void {
    if (wire !== this.#wire) return;
    this.#heard += text;
    this.#came += text.length;
    const longest = this.#options.longestAnswer ?? LONGEST_ANSWER;
    const end = this.#heard.indexOf("\n");
    if (end > longest || (end < 0 && this.#heard.length > longest)) {
      this.#waiting?.fail("too-long", this.#heard.slice(0, 80));
      this.#heard = "";
      return;
    }
    if (end < 0) return;
    const line = this.#heard.slice(0, end).replace(/\r$/, "");
    this.#heard = this.#heard.slice(end + 1);
    this.#waiting?.line(line);
  }

  #lost(wire: Wire, says: string): void {
    if (wire !== this.#wire) return;
    const waiting = this.#waiting;
    this.#drop();
    waiting?.fail("ended", says);
  }
}
