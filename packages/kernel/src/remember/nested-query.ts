import { Query } from "./query.ts";

/**
 * A `Query` whose answers are put together from parts that are remembered too. The parts of one key are kept for as
 * long as its answer is: while the answer stands nobody asks for its parts, and they must not be forgotten for that.
 */
export class NestedQuery<T, P> {
  readonly #whole: Query<T>;
  readonly #equalParts: (a: P, b: P) => boolean;
  readonly #parts = new Map<string, Query<P>>();
  #asked = new Set<string>();
  #dropped = 0;

  /**
   * @param equal whether two answers are interchangeable
   * @param equalParts the same of two parts
   */
  constructor(equal: (a: T, b: T) => boolean, equalParts: (a: P, b: P) => boolean) {
    this.#whole = new Query(equal);
    this.#equalParts = equalParts;
  }

  /** The answer for `key`; `compute` must depend on nothing but `inputs`, and may ask `parts` for its parts. */
  ask(key: string, inputs: readonly unknown[], compute: (parts: Query<P>) => T): T {
    this.#asked.add(key);
    return this.#whole.ask(key, inputs, () => {
      const parts = this.#parts.get(key) ?? new Query(this.#equalParts);
      this.#parts.set(key, parts);
      const output = compute(parts);
      parts.sweep();
      return output;
    });
  }

  /** Drops what has not been asked for since the last call, and begins a new round. */
  sweep(): void {
    this.#whole.sweep();
    for (const [key, parts] of this.#parts) {
      if (this.#asked.has(key)) continue;
      this.#dropped += parts.computed;
      this.#parts.delete(key);
    }
    this.#asked = new Set();
  }

  /** How often an answer had to be computed so far. */
  get computed(): number {
    return this.#whole.computed;
  }

  /** How often a part had to be computed so far. */
  get computedParts(): number {
    return [...this.#parts.values()].reduce((sum, parts) => sum + parts.computed, this.#dropped);
  }
}
