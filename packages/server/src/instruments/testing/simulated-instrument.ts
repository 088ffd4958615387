import { LineServer } from "./line-server.ts";

/** An instrument that speaks SCPI on a port of this machine, for tests. */
export class SimulatedInstrument {
  readonly server: LineServer;
  /** Answers by question. */
  readonly answers = new Map<string, string>();
  /** What it was asked, in order. */
  readonly asked: string[] = [];
  /** Questions that it never answers, and forgets. */
  readonly silent = new Set<string>();
  readonly #errors: string[] = [];

  constructor(identity = "Pinwright,Simulated meter,0,1.0") {
    this.answers.set("*IDN?", identity);
    this.server = new LineServer((line) => this.#answer(line));
  }

  /** Puts an entry into its list of errors. */
  err(entry: string): void {
    this.#errors.push(entry);
  }

  #answer(line: string): string | null {
    this.asked.push(line);
    if (this.silent.has(line)) return null;
    if (line === "SYST:ERR?") return `${this.#errors.shift() ?? '0,"No error"'}\r\n`;
    const says = this.answers.get(line);
    if (says !== undefined) return `${says}\r\n`;
    // What it does not know has no answer, only an entry in the list.
    this.err('-113,"Undefined header"');
    return null;
  }
}
