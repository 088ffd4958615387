import { type FaultTable, type Likely, likeliest, type Sightings } from "../faults/index.ts";

/** One suspect, or two at once, and how much speaks for it; weights need not add up to 1. */
export interface Hypothesis {
  readonly suspects: readonly number[];
  readonly weight: number;
  /** Place of its classes in what `likeliest` gave. */
  readonly at: number;
}

/** Answers of `likeliest` that are followed: what is beyond them no later look brings back. */
const MOST_LIKELY = 150;
/** Suspects that are followed. */
const MOST_HYPOTHESES = 120;
/** Suspects of each class of a pair that are followed. */
const MOST_OF_PAIR = 3;

/** What can be behind what was seen, before any look: at most so many that an answer stays quick. */
export function hypothesesOf(
  table: FaultTable,
  seen: Sightings,
): { readonly likely: readonly Likely[]; readonly hypotheses: readonly Hypothesis[] } {
  const likely = likeliest(table, seen, MOST_LIKELY);
  const all = likely.flatMap(({ classes, probability }, at): readonly Hypothesis[] => {
    const [first, second] = classes.map((c) => shares(table, c));
    if (first === undefined) return [];
    if (second === undefined)
      return first.map(([s, share]) => ({ suspects: [s], weight: probability * share, at }));
    const some = second.slice(0, MOST_OF_PAIR);
    return first
      .slice(0, MOST_OF_PAIR)
      .flatMap(([p, a]) => some.map(([q, b]) => ({ suspects: [p, q], weight: probability * a * b, at })));
  });
  return {
    likely,
    hypotheses: all
      .map((one, n) => ({ one, n }))
      .sort((p, q) => q.one.weight - p.one.weight || p.n - q.n)
      .slice(0, MOST_HYPOTHESES)
      .map(({ one }) => one),
  };
}

/** Suspects of a class with their share in it. */
function shares(table: FaultTable, c: number): readonly (readonly [suspect: number, share: number])[] {
  const one = table.classes[c];
  if (one === undefined) return [];
  return one.suspects.map((s) => [s, (table.suspects[s]?.odds ?? 0) / one.odds] as const);
}
