import type { ElectricSolution } from "../../model/index.ts";
import { isCopper } from "../network/copper.ts";
import type { Part } from "../network/parts.ts";

/** How a node is reached: from which one, over which part, and how many parts from the start. */
export interface Step {
  readonly from: string;
  /** Null at a start. */
  readonly by: Part | null;
  readonly steps: number;
}

/** Wires, contacts, fuses, links, shunts, and the contacts of elements that are closed in play. */
export const conductorsOf = (
  parts: readonly Part[],
  { elements }: Pick<ElectricSolution, "elements">,
): readonly Part[] =>
  parts.filter(
    (part) =>
      isCopper(part) ||
      (part.kind === "element" && part.element.row.kind === "contact" && elements.has(part.id)),
  );

/** The way with the fewest parts from some nodes to every node that parts lead to; the first of equals counts. */
export function waysFrom(parts: readonly Part[], starts: readonly string[]): ReadonlyMap<string, Step> {
  const beside = new Map<string, Part[]>();
  for (const part of parts) {
    for (const node of [part.a, part.b]) {
      const list = beside.get(node);
      if (list === undefined) beside.set(node, [part]);
      else list.push(part);
    }
  }
  const ways = new Map<string, Step>(starts.map((node) => [node, { from: node, by: null, steps: 0 }]));
  const reached = [...starts];
  for (let n = 0; n < reached.length; n++) {
    const from = reached[n] ?? "";
    for (const by of beside.get(from) ?? []) {
      const to = by.a === from ? by.b : by.a;
      if (ways.has(to)) continue;
      ways.set(to, { from, by, steps: (ways.get(from)?.steps ?? 0) + 1 });
      reached.push(to);
    }
  }
  return ways;
}
