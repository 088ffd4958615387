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

/** What a tester wrote, as groups; or the names in it that the harness does not have. */
export interface ReadFile {
  readonly groups: readonly number[];
  readonly unknown: readonly string[];
}

/**
 * Reads the text of a tester: each line names places that read joined, with spaces between; a line after `#` is a remark. A
 * place that no line names is joined to nothing.
 */
export function groupsOfText(placeIds: readonly string[], text: string): ReadFile {
  const index = new Map(placeIds.map((id, i) => [id, i]));
  const sets = new UnionFind(placeIds.length);
  const unknown = new Set<string>();
  for (const line of text.split(/\r?\n/u)) {
    if (line.trimStart().startsWith("#")) continue;
    const names = line
      .trim()
      .split(/[\s,;]+/u)
      .filter((name) => name !== "");
    let first: number | null = null;
    for (const name of names) {
      const at = index.get(name);
      if (at === undefined) unknown.add(name);
      else if (first === null) first = at;
      else sets.join(first, at);
    }
  }
  return { groups: placeIds.map((_, i) => sets.find(i)), unknown: [...unknown] };
}
