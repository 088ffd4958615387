import { compareText, type Decimal } from "@pinwright/kernel";
import type { Lack, Missing, Total } from "../../model/index.ts";

/** Sum that lacks nothing. */
export const total = (value: Decimal): Total => ({ value, missing: [] });

/** A sum to which one thing is missing. */
export const lacking = (lack: Lack, id: string): Total => ({ value: 0n, missing: [{ lack, id }] });

/** What several sums lack, each once, in code-point order of id. */
export function joinMissing(lists: Iterable<readonly Missing[]>): readonly Missing[] {
  const kept = new Map<string, Missing>();
  let only: readonly Missing[] = [];
  let count = 0;
  for (const list of lists) {
    if (list.length === 0) continue;
    only = list;
    count += 1;
    for (const missing of list) kept.set(`${missing.id}|${missing.lack}`, missing);
  }
  if (count <= 1) return only;
  return [...kept.values()].sort((a, b) => compareText(a.id, b.id) || compareText(a.lack, b.lack));
}

/** Sum of sums, with all that any of them lacks. */
export function addTotals(totals: readonly Total[]): Total {
  return {
    value: totals.reduce((sum, { value }) => sum + value, 0n),
    missing: joinMissing(totals.map(({ missing }) => missing)),
  };
}
