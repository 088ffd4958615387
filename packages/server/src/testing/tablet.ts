import { createHash } from "node:crypto";
import { type Fact, type FactBody, factText, NO_FACT } from "@pinwright/contract";

/** A tablet that writes a stream. */
export class Tablet {
  readonly #stream: string;
  readonly #person: string;
  /** Minutes after eight on the day of the tests. */
  #minute: number;
  #seq = 0;
  #hash = NO_FACT;

  constructor(stream: string, person: string, minute = 0) {
    this.#stream = stream;
    this.#person = person;
    this.#minute = minute;
  }

  write(body: FactBody, person = this.#person): Fact {
    this.#seq += 1;
    this.#minute += 1;
    const at = new Date(Date.UTC(2026, 2, 30, 8, this.#minute)).toISOString();
    const text = { stream: this.#stream, seq: this.#seq, before: this.#hash, at, person, body };
    this.#hash = createHash("sha256").update(factText(text)).digest("hex");
    return { ...text, hash: this.#hash };
  }
}
