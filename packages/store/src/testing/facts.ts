import { type Fact, type FactBody, NO_FACT } from "@pinwright/contract";
import { factHash } from "../records/chain.ts";

/** A device that writes a stream: each fact linked to the one before. */
export class TestStream {
  readonly #stream: string;
  #seq = 0;
  #hash = NO_FACT;
  #minute = 0;

  constructor(stream: string) {
    this.#stream = stream;
  }

  write(body: FactBody, person = "ann"): Fact {
    this.#seq += 1;
    this.#minute += 1;
    const at = new Date(Date.UTC(2027, 0, 4, 8, this.#minute)).toISOString();
    const text = { stream: this.#stream, seq: this.#seq, before: this.#hash, at, person, body };
    this.#hash = factHash(text);
    return { ...text, hash: this.#hash };
  }
}
