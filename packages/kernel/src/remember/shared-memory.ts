import { sameMembers } from "./same-members.ts";

/**
 * The last answer for each of several objects, kept for as long as the object itself: for something that is found
 * from data that never changes and that several computations want. It is found anew only when one of the further
 * inputs is another object than last time.
 */
export class SharedMemory<K extends object, T> {
  readonly #known = new WeakMap<K, { readonly inputs: readonly unknown[]; readonly output: T }>();

  /** The answer for `key`; `compute` must depend on nothing but `key` and `inputs`. */
  ask(key: K, inputs: readonly unknown[], compute: () => T): T {
    const known = this.#known.get(key);
    if (known !== undefined && sameMembers(known.inputs, inputs)) return known.output;
    const output = compute();
    this.#known.set(key, { inputs, output });
    return output;
  }
}
