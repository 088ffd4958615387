import { nearest } from "../text/nearest.ts";

/** Candidates that may be compared in one book; beyond that faults come without a suggestion. */
const MOST_COMPARISONS = 1_000_000;

/** Finds nearest names, remembers them, and stops looking after a counted number of comparisons. */
export class Suggest {
  readonly #known = new Map<string, string | null>();
  #left = MOST_COMPARISONS;

  /** The candidate nearest to `value`. `domain` names the set of candidates. */
  near(domain: string, value: string, candidates: ReadonlySet<string>): string | null {
    const key = `${domain}\u0000${value}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    if (this.#left < candidates.size) return null;
    this.#left -= candidates.size;
    const found = nearest(value, candidates);
    this.#known.set(key, found);
    return found;
  }
}
