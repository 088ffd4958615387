import { compareText } from "@pinwright/kernel";

type Pair = readonly [before: string, after: string];

const followers = (pairs: readonly Pair[]): ReadonlyMap<string, readonly string[]> => {
  const after = new Map<string, string[]>();
  for (const [from, to] of pairs) {
    const known = after.get(from);
    if (known === undefined) after.set(from, [to]);
    else known.push(to);
    if (!after.has(to)) after.set(to, []);
  }
  return after;
};

/**
 * Strongly connected parts of a graph, each before those it leads to (R. Tarjan, Depth-first search and linear graph
 * algorithms, SIAM J. on Computing 1 (1972) 146–160, from memory), without recursion.
 */
function componentsOf(pairs: readonly Pair[]): readonly (readonly string[])[] {
  const after = followers(pairs);
  const index = new Map<string, number>();
  const low = new Map<string, number>();
  const open: string[] = [];
  const isOpen = new Set<string>();
  const components: string[][] = [];
  const enter = (id: string): { readonly id: string; next: number } => {
    index.set(id, index.size);
    low.set(id, index.get(id) ?? 0);
    open.push(id);
    isOpen.add(id);
    return { id, next: 0 };
  };
  const lower = (id: string, to: number): void => {
    low.set(id, Math.min(low.get(id) ?? 0, to));
  };
  for (const root of [...after.keys()].sort(compareText)) {
    if (index.has(root)) continue;
    const way = [enter(root)];
    for (let at = way.at(-1); at !== undefined; at = way.at(-1)) {
      const to = after.get(at.id)?.[at.next++];
      if (to !== undefined) {
        if (!index.has(to)) way.push(enter(to));
        else if (isOpen.has(to)) lower(at.id, index.get(to) ?? 0);
        continue;
      }
      way.pop();
      const parent = way.at(-1);
      if (parent !== undefined) lower(parent.id, low.get(at.id) ?? 0);
      if (low.get(at.id) !== index.get(at.id)) continue;
      const component = open.splice(open.indexOf(at.id));
      for (const id of component) isOpen.delete(id);
      components.push(component.sort(compareText));
    }
  }
  return components.reverse();
}

/** What waits for itself: parts of a graph from each node of which all others are reached. */
export const knotsOf = (pairs: readonly Pair[]): readonly (readonly string[])[] =>
  componentsOf(pairs).filter((component) => component.length > 1);

/**
 * For each node the longest way to it, each pair counting for `weight`. Nodes that wait for each other have one rank.
 */
export function ranksOf(
  pairs: readonly Pair[],
  weight: (before: string, after: string) => number,
): ReadonlyMap<string, number> {
  const after = followers(pairs);
  const components = componentsOf(pairs);
  const componentOf = new Map(components.flatMap((ids, i) => ids.map((id) => [id, i] as const)));
  const ranks: number[] = components.map(() => 0);
  components.forEach((ids, i) => {
    for (const id of ids)
      for (const to of after.get(id) ?? []) {
        const target = componentOf.get(to) ?? i;
        if (target !== i) ranks[target] = Math.max(ranks[target] ?? 0, (ranks[i] ?? 0) + weight(id, to));
      }
  });
  return new Map([...componentOf].map(([id, i]) => [id, ranks[i] ?? 0]));
}

/** Whether a way leads from one node to another. */
export function reaches(pairs: readonly Pair[], from: string, to: string): boolean {
  const after = followers(pairs);
  const seen = new Set([from]);
  const ask = [from];
  for (let id = ask.pop(); id !== undefined; id = ask.pop()) {
    if (id === to) return true;
    for (const next of after.get(id) ?? []) {
      if (seen.has(next)) continue;
      seen.add(next);
      ask.push(next);
    }
  }
  return false;
}
