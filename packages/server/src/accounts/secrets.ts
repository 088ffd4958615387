import { hash, verify } from "@node-rs/argon2";
import { Refused } from "../http/problem.ts";

/**
 * Cost of a hash: Argon2id, which is the usual one here, 19 MiB, two passes, one lane. Source: OWASP Password Storage Cheat Sheet, the smallest
 * of its equal choices.
 */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

/** Hashes that are worked on at once, and those that may wait: memory and processor stay free for the others. */
const AT_ONCE = 2;
const WAITING = 40;

/** Keeps secrets as hashes and checks them, a few at a time. */
export class Secrets {
  readonly #waiting: (() => void)[] = [];
  #running = 0;
  /** Hash that nothing was made from which is ever typed. It is checked when there is no other. */
  readonly #nobody: Promise<string>;

  constructor(random: (bytes: number) => Uint8Array) {
    this.#nobody = hash(random(32), COST);
  }

  /** The hash of a secret, with its salt and its cost in it. */
  hash(secret: string): Promise<string> {
    return this.#inTurn(() => hash(secret.normalize("NFKC"), COST));
  }

  /** Whether a secret is the one of a hash. With no hash the answer is no, and takes as long. */
  verify(known: string | null, secret: string): Promise<boolean> {
    return this.#inTurn(async () => {
      const same = await verify(known ?? (await this.#nobody), secret.normalize("NFKC"));
      return known !== null && same;
    });
  }

  async #inTurn<T>(work: () => Promise<T>): Promise<T> {
    if (this.#running >= AT_ONCE) {
      if (this.#waiting.length >= WAITING)
        throw new Refused(
          "busy",
          "Too many people sign in just now. Try again in a moment.",
          {},
          { "retry-after": "2" },
        );
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    } else this.#running++;
    try {
      return await work();
    } finally {
      // Whoever waits first takes this place over.
      const next = this.#waiting.shift();
      if (next === undefined) this.#running--;
      else next();
    }
  }
}
