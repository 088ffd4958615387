import { sameMembers } from "./same-members.ts";

interface Remembered<T> {
  inputs: readonly unknown[];
  output: T;
  round: number;
}

/**
 * A pure computation that is asked again and again, one answer for each key. It is computed anew only when one
 * of its inputs is another object than last time (`Object.is`); and when the new answer equals the old one, the
 * old object is given back, so that whatever depends on it sees no change and stops there.
 */
export class Query<T> {
  readonly #remembered = new Map<string, Remembered<T>>();
  readonly #equal: (a: T, b: T) => boolean;
  #round = 0;
  #computed = 0;

  /** @param equal whether two answers are interchangeable */
  constructor(equal: (a: T, b: T) => boolean) {
    this.#equal = equal;
  }

  /** The answer for `key`; `compute` must depend on nothing but `inputs`. */
  ask(key: string, inputs: readonly unknown[], compute: () => T): T {
    const known = this.#remembered.get(key);
    if (known !== undefined && sameMembers(known.inputs, inputs)) {
      known.round = this.#round;
      return known.output;
    }
    this.#computed++;
    const fresh = compute();
    const output = known !== undefined && this.#equal(known.output, fresh) ? known.output : fresh;
    this.#remembered.set(key, { inputs, output, round: this.#round });
    return output;
  }

  /** Drops what has not been asked for since the last call, and begins a new round. */
  sweep(): void {
    for (const [key, known] of this.#remembered)
      if (known.round !== this.#round) this.#remembered.delete(key);
    this.#round++;
  }

  /** How often an answer had to be computed so far: what growth tests count. */
  get computed(): number {
    return this.#computed;
  }
}
