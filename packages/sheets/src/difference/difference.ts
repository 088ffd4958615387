import { leafText } from "../compose/body-hash.ts";
import { leavesOf, type PlacedLeaf } from "../compose/leaves.ts";
import type { Box, Page } from "../compose/mark.ts";

/** Two drawings laid over each other: what is in both, what only the old one has, and what only the new one has. */
export interface Difference {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly same: readonly PlacedLeaf[];
  readonly old: readonly PlacedLeaf[];
  readonly fresh: readonly PlacedLeaf[];
}

const boxText = (box: Box | null): string =>
  box === null
    ? ""
    : [box.xMm, box.yMm, box.widthMm, box.heightMm].map((mm) => Math.round(mm * 1000)).join(",");

const keyOf = ({ leaf, clip }: PlacedLeaf): string => `${leafText(leaf, 0, 0)} ${boxText(clip)}`;

/**
 * Compares the marks of two pages, each where its groups put it, to a micrometre. A mark that both have so many times
 * is in both so many times. What changes from print to print (date, revision, code) is left out. A missing page has
 * nothing.
 */
export function pageDifference(before: Page | null, after: Page | null): Difference {
  const marksOf = (page: Page | null): readonly PlacedLeaf[] =>
    page === null ? [] : leavesOf(page.marks).filter(({ frame, leaf }) => !frame && leaf.kind !== "code");
  const [was, is] = [marksOf(before), marksOf(after)];
  const left = new Map<string, number>();
  for (const placed of was) {
    const key = keyOf(placed);
    left.set(key, (left.get(key) ?? 0) + 1);
  }
  const same: PlacedLeaf[] = [];
  const fresh: PlacedLeaf[] = [];
  for (const placed of is) {
    const key = keyOf(placed);
    const count = left.get(key) ?? 0;
    if (count === 0) fresh.push(placed);
    else {
      left.set(key, count - 1);
      same.push(placed);
    }
  }
  const old: PlacedLeaf[] = [];
  // From the end, so that of marks that the old drawing has more often the last ones are left over.
  for (const placed of [...was].reverse()) {
    const key = keyOf(placed);
    const count = left.get(key) ?? 0;
    if (count === 0) continue;
    left.set(key, count - 1);
    old.unshift(placed);
  }
  return {
    widthMm: Math.max(before?.widthMm ?? 0, after?.widthMm ?? 0),
    heightMm: Math.max(before?.heightMm ?? 0, after?.heightMm ?? 0),
    same,
    old,
    fresh,
  };
}
