import type { AsideReason, Fact } from "@pinwright/contract";
import { Refused, Unreachable } from "../../api/call.ts";
import type { OutboxStore } from "./store.ts";

/** The server's answer to facts that it was sent. */
interface Taken {
  readonly heads: readonly { readonly stream: string; readonly seq: number }[];
  readonly aside: readonly { readonly stream: string; readonly seq: number; readonly why: AsideReason }[];
}

/** Whether what is kept here is also at the server. */
export type SendState =
  | { readonly state: "sent" | "sending" | "offline" | "signed-out" }
  | { readonly state: "refused"; readonly message: string };

/** What sending needs from its surroundings. */
export interface SenderHost {
  readonly send: (facts: readonly Fact[]) => Promise<Taken>;
  /** Sends pictures that facts name, by their hashes, before the facts; what the server does not take holds no fact up. */
  readonly sendPictures?: (hashes: readonly string[]) => Promise<void>;
  /** Where the server's streams stand. */
  readonly heads: () => Promise<readonly { readonly stream: string; readonly seq: number }[]>;
  readonly now: () => string;
  /** Does something after a while; the answer calls it off. */
  readonly later: (ms: number, work: () => void) => () => void;
  readonly told: (state: SendState) => void;
}

/** Facts of one request. */
const AT_ONCE = 200;
const DAY_MS = 86_400_000;
/** So long the server's facts stay here too, should it lose its own. */
const KEPT_DAYS = 30;

/** Hashes of the pictures that facts name. */
export const picturesOf = (facts: readonly Fact[]): readonly string[] =>
  facts.flatMap(({ body }) => ("picture" in body && body.picture !== undefined ? [body.picture] : []));

/** Wait before the n-th try again. */
const waitMs = (tries: number): number => Math.min(15_000, 500 * 2 ** tries);

/** The stream of this device is no longer its own: something else was written under its name. */
const BROKEN: ReadonlySet<AsideReason> = new Set(["fork", "hash", "link"]);

/**
 * Sends what waits, in order, until the server has it. A fact is only ever marked as sent on the server's answer; sending
 * it twice is harmless. After each break the server's streams are looked at: what it no longer has is sent again.
 */
export class Sender {
  readonly #store: OutboxStore;
  readonly #host: SenderHost;
  #running: Promise<void> | null = null;
  #again = false;
  #tries = 0;
  #compared = false;
  /** Whether links that are missing at the server were looked for in this run already. */
  #looked = false;
  #callOff: (() => void) | null = null;

  constructor(store: OutboxStore, host: SenderHost) {
    this.#store = store;
    this.#host = host;
  }

  /** Sends now whatever waits; resolves when nothing waits any more or nobody answers. */
  send(): Promise<void> {
    this.#callOff?.();
    this.#callOff = null;
    // What is written while the last batch is on its way goes after it.
    this.#again = true;
    this.#running ??= this.#run().finally(() => {
      this.#running = null;
    });
    return this.#running;
  }

  /** The network was away, or somebody else signed in: the server may have been put back meanwhile. */
  compareAgain(): void {
    this.#compared = false;
  }

  async #run(): Promise<void> {
    this.#looked = false;
    try {
      while (this.#again) {
        this.#again = false;
        if (!this.#compared) await this.#compare();
        await this.#sendAll();
      }
      this.#tries = 0;
      this.#host.told({ state: "sent" });
    } catch (error) {
      this.#compared = false;
      this.#fail(error);
    }
  }

  #fail(error: unknown): void {
    if (error instanceof Refused) {
      const { code, message } = error.problem;
      // A session that ended, or a token of the session before.
      const isOut = code === "not-signed-in" || code === "forged";
      this.#host.told(isOut ? { state: "signed-out" } : { state: "refused", message });
      if (isOut) return;
    } else if (error instanceof Unreachable) this.#host.told({ state: "offline" });
    else
      this.#host.told({ state: "refused", message: error instanceof Error ? error.message : String(error) });
    this.#callOff = this.#host.later(waitMs(this.#tries++), () => void this.send());
  }

  /** What this device sent and the server does not have, because it was put back to an earlier day, waits again. */
  async #compare(): Promise<void> {
    const heads = new Map((await this.#host.heads()).map(({ stream, seq }) => [stream, seq]));
    const gone = new Map<string, number>();
    for (const { fact, sentAt, why } of await this.#store.all()) {
      const isThere =
        sentAt === null || (why !== null && BROKEN.has(why)) || fact.seq <= (heads.get(fact.stream) ?? 0);
      if (!isThere && !gone.has(fact.stream)) gone.set(fact.stream, fact.seq);
    }
    for (const [stream, seq] of gone) await this.#store.sendAgain(stream, seq);
    await this.#store.forget(new Date(Date.parse(this.#host.now()) - KEPT_DAYS * DAY_MS).toISOString());
    this.#compared = true;
  }

  async #sendAll(): Promise<void> {
    for (;;) {
      const facts = await this.#store.waiting(AT_ONCE);
      if (facts.length === 0) return;
      this.#host.told({ state: "sending" });
      const pictures = picturesOf(facts);
      if (pictures.length > 0) await this.#host.sendPictures?.(pictures);
      const { aside } = await this.#host.send(facts);
      const reasons = new Map(aside.map(({ stream, seq, why }) => [`${stream} ${seq}`, why]));
      const sentAt = this.#host.now();
      const kept = facts.map((fact) => ({
        fact,
        sentAt,
        why: reasons.get(`${fact.stream} ${fact.seq}`) ?? null,
      }));
      await this.#store.settle(kept);
      if (kept.some(({ why }) => why !== null && BROKEN.has(why))) await this.#store.renew();
      if (this.#looked || !kept.some(({ why }) => why === "gap")) continue;
      this.#looked = true;
      await this.#compare();
    }
  }
}
