import type { FaultTable } from "./fault-table.ts";
import type { Sightings } from "./seen.ts";
import { SymptomOdds } from "./symptom-odds.ts";

/** Faults with the same symptoms, and how likely it is that one of them is the cause. */
export interface Likely {
  /** Index of the class; two: both at once. */
  readonly classes: readonly [number] | readonly [number, number];
  /** 0 to 1; those of all answers add up to 1. */
  readonly probability: number;
}

/** Chance that a second fault is there when there is one: what is old has often two (common practice, no source). */
const SECOND = 0.2;
/** Symptoms that are looked at for pairs: those of the single faults that explain most of what was seen. */
const MOST_PAIR_STEPS = 1_000_000;

/**
 * The likeliest causes of what was seen, the likeliest first: every single fault exactly, and of two at once the pairs of
 * those single faults that explain most. A wrong tick costs a cause some of its odds, and never all.
 * @param most so many answers
 */
export function likeliest(table: FaultTable, seen: Sightings, most: number): readonly Likely[] {
  const odds = new SymptomOdds(table, seen);
  const best = new Best(most);
  const logs = table.classes.map((one) => Math.log(one.odds));
  const gains = table.classes.map((_, c) => odds.gain(c));
  gains.forEach((gain, c) => {
    best.take(c, -1, (logs[c] ?? 0) + gain);
  });
  const paired = explaining(table, gains);
  odds.lay(paired);
  for (const [i, p] of paired.entries())
    for (let j = i + 1; j < paired.length; j++) {
      const q = paired[j] ?? -1;
      best.take(p, q, Math.log(SECOND) + (logs[p] ?? 0) + (logs[q] ?? 0) + odds.pairGain(i, j));
    }
  return best.answers();
}

/** Classes that explain something of what was seen, those first that explain most, as many as pairs are made of. */
function explaining({ classes }: FaultTable, gains: readonly number[]): readonly number[] {
  const all = gains.flatMap((gain, c) => (gain > 0 ? [c] : []));
  all.sort((p, q) => (gains[q] ?? 0) - (gains[p] ?? 0) || p - q);
  let symptoms = 0;
  const tooMany = all.findIndex((c, i) => {
    symptoms += classes[c]?.symptoms.size ?? 0;
    return symptoms * i > MOST_PAIR_STEPS;
  });
  return tooMany < 0 ? all : all.slice(0, tooMany);
}

interface Answer {
  readonly p: number;
  /** −1: a single class. */
  readonly q: number;
  readonly log: number;
}

const isBefore = (one: Answer, other: Answer): boolean =>
  one.log !== other.log ? one.log > other.log : one.p !== other.p ? one.p < other.p : one.q < other.q;

/** The best of very many answers, and the sum of all. */
class Best {
  readonly #most: number;
  /** In order, the best first. */
  readonly #kept: Answer[] = [];
  /** Sum of the odds of all, as a multiple of those with the largest log so far: hundreds of ticks are more than a number holds. */
  #sum = 0;
  #largest = Number.NEGATIVE_INFINITY;

  constructor(most: number) {
    this.#most = most;
  }

  take(p: number, q: number, log: number): void {
    if (log > this.#largest) {
      this.#sum = this.#sum * Math.exp(this.#largest - log) + 1;
      this.#largest = log;
    } else this.#sum += Math.exp(log - this.#largest);
    const last = this.#kept[this.#most - 1];
    if (last !== undefined && log < last.log) return;
    const one = { p, q, log };
    if (last !== undefined && !isBefore(one, last)) return;
    let [low, high] = [0, this.#kept.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      const other = this.#kept[middle];
      if (other !== undefined && isBefore(other, one)) low = middle + 1;
      else high = middle;
    }
    this.#kept.splice(low, 0, one);
    if (this.#kept.length > this.#most) this.#kept.pop();
  }

  answers(): readonly Likely[] {
    return this.#kept.map(({ p, q, log }) => ({
      classes: q < 0 ? [p] : [p, q],
      probability: Math.exp(log - this.#largest) / this.#sum,
    }));
  }
}
