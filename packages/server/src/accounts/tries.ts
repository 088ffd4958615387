const SECOND = 1000;
/** Longest wait. */
const MOST_MS = 15 * 60 * SECOND;
/** After this time without a try, earlier ones are forgotten. */
const FORGET_MS = 24 * 60 * 60 * SECOND;
/** Names and addresses that are remembered; the one that was quiet longest goes first. */
const KEPT = 10_000;

interface Tries {
  count: number;
  lastAt: number;
  freeAt: number;
}

/**
 * Counts tries by name or address and makes whoever fails wait: after `free` failures 1 s, then twice as long each
 * time, up to 15 minutes. A four-digit code would then stand for half a year against someone who never stops.
 * Common practice, no source.
 */
export class TryLimit {
  readonly #free: number;
  readonly #now: () => number;
  readonly #tries = new Map<string, Tries>();

  constructor(free: number, now: () => number) {
    this.#free = free;
    this.#now = now;
  }

  /** How long this key has to wait yet, ms. */
  waitMs(key: string): number {
    return Math.max(0, (this.#tries.get(key)?.freeAt ?? 0) - this.#now());
  }

  /** Counts a try as failed before it is looked at, so that many at once count as many. */
  count(key: string): void {
    const now = this.#now();
    const known = this.#tries.get(key);
    const tries =
      known !== undefined && now - known.lastAt < FORGET_MS ? known : { count: 0, lastAt: 0, freeAt: 0 };
    tries.count++;
    tries.lastAt = now;
    const over = tries.count - this.#free;
    if (over > 0) tries.freeAt = now + Math.min(MOST_MS, SECOND * 2 ** Math.min(over - 1, 30));
    this.#tries.delete(key);
    this.#tries.set(key, tries);
    for (const oldest of this.#tries.keys()) {
      if (this.#tries.size <= KEPT) break;
      this.#tries.delete(oldest);
    }
  }

  /** The try was right after all. */
  forgive(key: string, all: boolean): void {
    const tries = this.#tries.get(key);
    if (tries === undefined) return;
    if (all || tries.count <= 1) this.#tries.delete(key);
    else {
      tries.count--;
      tries.freeAt = 0;
    }
  }

  /** How many keys are remembered. */
  get size(): number {
    return this.#tries.size;
  }
}
