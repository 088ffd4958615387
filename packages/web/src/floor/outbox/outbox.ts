import { type Fact, type FactBody, factSchema, factText, NO_FACT } from "@pinwright/contract";
import type { OutboxStore, StreamEnd } from "./store.ts";

/** SHA-256 of a text or file, in hexadecimal digits. */
export async function sha256(content: string | Blob): Promise<string> {
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : await content.arrayBuffer();
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** A name for something that this device makes up: a stream, a defect. Nobody else makes up the same. */
export function madeUp(prefix: string): string {
  const bytes = crypto.getRandomValues(new Uint8Array(9));
  return `${prefix}-${Array.from(bytes, (byte) => byte.toString(36).padStart(2, "0")).join("")}`;
}

/** What was seen, as links behind the end of a stream. Anything that is no fact throws before it becomes one. */
async function chained(
  end: StreamEnd,
  bodies: readonly FactBody[],
  person: string,
  at: string,
): Promise<readonly Fact[]> {
  const facts: Fact[] = [];
  let [seq, before] = [end.seq, end.hash];
  for (const body of bodies) {
    seq += 1;
    const text = { stream: end.stream, seq, before, at, person, body };
    before = await sha256(factText(text));
    facts.push(factSchema.parse({ ...text, hash: before }));
  }
  return facts;
}

/** The end of a stream that nothing was written to. */
export const freshEnd = (): StreamEnd => ({ stream: madeUp("t"), seq: 0, hash: NO_FACT });

/** Others that write to the same stream, such as a second window, come between only so often. */
const MOST_TRIES = 20;

/** Writes what was seen on the floor to this device, one link after the other, before anything is said to be done. */
export class Outbox {
  readonly #store: OutboxStore;
  readonly #now: () => string;
  #last: Promise<unknown> = Promise.resolve();

  constructor(store: OutboxStore, now: () => string) {
    this.#store = store;
    this.#now = now;
  }

  /** Keeps facts together, all or none; resolves when they outlive the page. */
  write(bodies: readonly FactBody[], person: string): Promise<readonly Fact[]> {
    const written = this.#last.then(() => this.#write(bodies, person));
    this.#last = written.catch(() => undefined);
    return written;
  }

  async #write(bodies: readonly FactBody[], person: string): Promise<readonly Fact[]> {
    if (bodies.length === 0) return [];
    const at = this.#now();
    for (let tries = 0; tries < MOST_TRIES; tries++) {
      const end = await this.#store.end();
      const facts = await chained(end, bodies, person, at);
      if (await this.#store.append(end, facts)) return facts;
    }
    throw new Error("Another window of this device writes all the time.");
  }
}
