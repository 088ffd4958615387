import { UnionFind } from "@pinwright/kernel";

/** Two places that did not read as they should. */
export interface OddPair {
  /** `open`: they should be joined and are not; `short`: they are joined and should not be. */
  readonly kind: "open" | "short";
  readonly a: string;
  readonly b: string;
}

/**
 * Groups that a harness with these odd pairs reads. Of an open pair the second place is cut off from the first and from
 * whatever else the first still reaches, together with those that were found open with the first as well.
 * @param expected group of each place of a good harness
 */
export function groupsOfPairs(
  placeIds: readonly string[],
  expected: readonly number[],
  pairs: readonly OddPair[],
): readonly number[] {
  const index = new Map(placeIds.map((id, i) => [id, i]));
  const sets = new UnionFind(placeIds.length);
  const cutOff = new Set(pairs.flatMap(({ kind, b }) => (kind === "open" ? [index.get(b) ?? -1] : [])));
  const firstOf = new Map<number, number>();
  expected.forEach((group, i) => {
    if (cutOff.has(i)) return;
    const first = firstOf.get(group);
    if (first === undefined) firstOf.set(group, i);
    else sets.join(first, i);
  });
  for (const { kind, a, b } of pairs) {
    const [i, j] = [index.get(a), index.get(b)];
    if (kind === "short" && i !== undefined && j !== undefined) sets.join(i, j);
  }
  return placeIds.map((_, i) => sets.find(i));
}
