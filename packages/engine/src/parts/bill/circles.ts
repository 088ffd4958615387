import { compareText } from "@pinwright/kernel";
import type { Contents } from "./contents.ts";

interface Visit {
  readonly id: string;
  readonly children: readonly string[];
  next: number;
}

/** Nodes from the leaves up, and the groups of nodes that contain themselves. */
export interface Ranked {
  readonly order: readonly string[];
  readonly circles: readonly (readonly string[])[];
}

/**
 * Ranks nodes so that each comes after all that it contains; nodes in a circle are left out and told of. The strongly
 * connected components of Tarjan (1972), without recursion, so that no depth of levels is too much.
 * @param roots where to begin, in this order
 */
export function rankNodes(roots: readonly string[], contents: ReadonlyMap<string, Contents>): Ranked {
  const seen = new Map<string, { index: number; low: number; open: boolean }>();
  const open: string[] = [];
  const order: string[] = [];
  const circles: string[][] = [];
  const visits: Visit[] = [];
  const enter = (id: string): void => {
    seen.set(id, { index: seen.size, low: seen.size, open: true });
    open.push(id);
    const children = [...new Set(contents.get(id)?.lines.map((line) => line.childId))];
    visits.push({ id, children, next: 0 });
  };
  const leave = ({ id, children }: Visit): void => {
    const own = seen.get(id);
    if (own === undefined || own.low !== own.index) return;
    const group = open.splice(open.lastIndexOf(id));
    for (const member of group) {
      const mark = seen.get(member);
      if (mark !== undefined) mark.open = false;
    }
    if (group.length === 1 && !children.includes(id)) order.push(id);
    else circles.push(group.sort(compareText));
  };
  for (const root of roots) {
    if (!seen.has(root)) enter(root);
    for (let visit = visits.at(-1); visit !== undefined; visit = visits.at(-1)) {
      const own = seen.get(visit.id);
      const childId = visit.children[visit.next++];
      if (childId === undefined) {
        visits.pop();
        leave(visit);
        const above = seen.get(visits.at(-1)?.id ?? "");
        if (above !== undefined && own !== undefined) above.low = Math.min(above.low, own.low);
        continue;
      }
      const child = seen.get(childId);
      if (child === undefined) enter(childId);
      else if (child.open && own !== undefined) own.low = Math.min(own.low, child.index);
    }
  }
  return { order, circles: circles.sort((a, b) => compareText(a[0] ?? "", b[0] ?? "")) };
}
