import type { ServerEvent } from "@pinwright/contract";
import type { Caller } from "../accounts/caller.ts";
import { Refused } from "../http/problem.ts";

/** How often a line that says nothing is sent, so that nobody in between thinks that the stream is dead. */
const HEARTBEAT_MS = 15_000;
/** Bytes that may wait for one slow reader. Beyond, its stream ends; it comes again and asks for what it missed. */
const WAITING_BYTES = 4 * 1024 * 1024;
/** Events that are kept for those who come again, and how much they may hold together. */
const KEPT = 500;
const KEPT_BYTES = 8 * 1024 * 1024;
const STREAMS = { all: 500, person: 40 } as const;

const encoder = new TextEncoder();
const ALIVE = encoder.encode(": alive\n\n");

interface Listener {
  readonly caller: Caller;
  readonly stream: ReadableStreamDefaultController<Uint8Array>;
}

/**
 * Pushes events to every open browser. An event has the id `<run>-<number>`; who comes again with the last one that
 * it saw gets those after it, as long as they are kept. Whoever comes too late, or to another run of the server,
 * asks `changesSince` anyway.
 */
export class Hub {
  readonly #run: string;
  readonly #now: () => number;
  readonly #listeners = new Set<Listener>();
  readonly #kept: { readonly no: number; readonly bytes: Uint8Array }[] = [];
  #keptBytes = 0;
  #no = 0;
  readonly #beat: NodeJS.Timeout;

  /** @param run name of this run of the server; @param now ms since 1970 */
  constructor(run: string, now: () => number) {
    this.#run = run;
    this.#now = now;
    this.#beat = setInterval(() => this.#heartbeat(), HEARTBEAT_MS);
    this.#beat.unref();
  }

  /** How many streams are open. */
  get open(): number {
    return this.#listeners.size;
  }

  push(event: ServerEvent): void {
    this.#no++;
    const bytes = encoder.encode(`id: ${this.#run}-${this.#no}\ndata: ${JSON.stringify(event)}\n\n`);
    this.#kept.push({ no: this.#no, bytes });
    this.#keptBytes += bytes.byteLength;
    while (this.#kept.length > KEPT || (this.#keptBytes > KEPT_BYTES && this.#kept.length > 0))
      this.#keptBytes -= this.#kept.shift()?.bytes.byteLength ?? 0;
    for (const listener of this.#listeners) this.#send(listener, bytes);
  }

  /** Opens a stream. @param lastId id of the last event that the reader has seen, if it was here before */
  stream(caller: Caller, lastId: string | null): ReadableStream<Uint8Array> {
    const own = [...this.#listeners].filter((l) => l.caller.person.id === caller.person.id).length;
    if (this.#listeners.size >= STREAMS.all || own >= STREAMS.person)
      throw new Refused(
        "busy",
        "Too many pages of this app are open. Close some of them.",
        {},
        { "retry-after": "10" },
      );
    let listener: Listener | null = null;
    return new ReadableStream<Uint8Array>(
      {
        start: (stream) => {
          listener = { caller, stream };
          this.#listeners.add(listener);
          stream.enqueue(encoder.encode(`retry: 1000\nid: ${this.#run}-${this.#no}\n: open\n\n`));
          for (const bytes of this.#missed(lastId)) this.#send(listener, bytes);
        },
        cancel: () => {
          if (listener !== null) this.#listeners.delete(listener);
        },
      },
      { highWaterMark: WAITING_BYTES, size: (piece) => piece?.byteLength ?? 0 },
    );
  }

  /** Tells a person's pages that their rights changed, and ends their streams. `hash`: only those of this session. */
  endOf(personId: string, hash?: string): void {
    const event: ServerEvent = { type: "session" };
    const bytes = encoder.encode(`data: ${JSON.stringify(event)}\n\n`);
    for (const listener of this.#listeners) {
      if (listener.caller.person.id !== personId) continue;
      if (hash !== undefined && listener.caller.sessionHash !== hash) continue;
      this.#send(listener, bytes);
      this.#end(listener);
    }
  }

  close(): void {
    clearInterval(this.#beat);
    for (const listener of this.#listeners) this.#end(listener);
  }

  #missed(lastId: string | null): readonly Uint8Array[] {
    const [, run, no] = /^([\w]+)-(\d{1,15})$/.exec(lastId ?? "") ?? [];
    if (run !== this.#run || no === undefined) return [];
    return this.#kept.filter((event) => event.no > Number(no)).map((event) => event.bytes);
  }

  #send(listener: Listener, bytes: Uint8Array): void {
    // `desiredSize` is what still fits; null when the reader went away with an error.
    if ((listener.stream.desiredSize ?? 0) <= 0) this.#end(listener);
    else listener.stream.enqueue(bytes);
  }

  #end(listener: Listener): void {
    if (!this.#listeners.delete(listener)) return;
    try {
      listener.stream.close();
    } catch {
      // It was closed from the other side in the meantime, which is all that is wanted.
    }
  }

  #heartbeat(): void {
    for (const listener of this.#listeners) {
      const { expiresAt, person, sessionHash } = listener.caller;
      if (expiresAt !== null && expiresAt <= this.#now()) this.endOf(person.id, sessionHash ?? undefined);
      else this.#send(listener, ALIVE);
    }
  }
}
