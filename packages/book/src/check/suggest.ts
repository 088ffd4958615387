import { nearest } from "../text/nearest.ts";

/** Candidates that may be compared in one book; beyond that faults come without a suggestion. */
const MOST_COMPARISONS = 1_000_000;

/** The nearest name that was found before among the very same candidates. */
interface Found {
  readonly candidates: ReadonlySet<string>;
  readonly nearest: string | null;
}

/** Nearest names by domain and value, kept from one check of a book to the next. */
export type Suggestions = Map<string, Found>;

/** Finds nearest names, remembers them, and stops looking after a counted number of comparisons. */
export class Suggest {
  readonly #before: Suggestions | null;
  readonly #known = new Map<string, string | null>();
  #left = MOST_COMPARISONS;

  /** With a memory, what it knows counts as compared but takes no time. */
  constructor(before: Suggestions | null = null) {
    this.#before = before;
  }

  /** The candidate nearest to `value`. `domain` names the set of candidates. */
  near(domain: string, value: string, candidates: ReadonlySet<string>): string | null {
    const key = `${domain}\u0000${value}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    if (this.#left < candidates.size) return null;
    this.#left -= candidates.size;
    const before = this.#before?.get(key);
    const found = before?.candidates === candidates ? before.nearest : nearest(value, candidates);
    this.#before?.set(key, { candidates, nearest: found });
    this.#known.set(key, found);
    return found;
  }
}
