import { type Rule, rowRule } from "./rule.ts";

/**
 * Ids that lie on a circle of `next`: those from which a walk comes back to its start. Strongly connected
 * components after R. Tarjan, "Depth-first search and linear graph algorithms", 1972, without recursion.
 */
export function onCircle(next: ReadonlyMap<string, readonly string[]>): ReadonlySet<string> {
  const found = new Set<string>();
  const order = new Map<string, number>();
  const low = new Map<string, number>();
  const open: string[] = [];
  const isOpen = new Set<string>();
  for (const start of next.keys()) {
    if (order.has(start)) continue;
    const walk: { id: string; rest: string[] }[] = [];
    const enter = (id: string) => {
      order.set(id, order.size);
      low.set(id, order.size - 1);
      open.push(id);
      isOpen.add(id);
      walk.push({ id, rest: [...(next.get(id) ?? [])] });
    };
    enter(start);
    for (let top = walk[walk.length - 1]; top !== undefined; top = walk[walk.length - 1]) {
      const to = top.rest.pop();
      if (to !== undefined) {
        if (!order.has(to)) enter(to);
        else if (isOpen.has(to)) low.set(top.id, Math.min(low.get(top.id) ?? 0, order.get(to) ?? 0));
        continue;
      }
      walk.pop();
      const above = walk[walk.length - 1];
      const own = low.get(top.id) ?? 0;
      if (above !== undefined) low.set(above.id, Math.min(low.get(above.id) ?? 0, own));
      if (own !== order.get(top.id)) continue;
      const component = open.splice(open.lastIndexOf(top.id));
      for (const id of component) isOpen.delete(id);
      const loops = component.length > 1 || (next.get(top.id) ?? []).includes(top.id);
      if (loops) for (const id of component) found.add(id);
    }
  }
  return found;
}

export const stepsNoCircle: Rule = rowRule(
  { table: "steps", about: "No step waits for itself, not even by way of others.", reads: ["after"] },
  (tables) => {
    const circle = onCircle(new Map(tables.steps.map((step) => [step.id, step.after])));
    return (row) =>
      circle.has(row.id) && row.after.some((id) => circle.has(id))
        ? { column: "after", expected: "steps that do not wait for this one; these go round in a circle" }
        : null;
  },
);

export const bomNoCircle: Rule = rowRule(
  { table: "bom", about: "No part contains itself, not even by way of others.", reads: ["parent", "part"] },
  (tables) => {
    const contains = new Map<string, string[]>();
    for (const { parent, part } of tables.bom) {
      if (parent !== null) contains.set(parent, [...(contains.get(parent) ?? []), part]);
    }
    const circle = onCircle(contains);
    return (row) =>
      row.parent !== null && circle.has(row.parent) && circle.has(row.part)
        ? {
            column: "part",
            expected: `a part that does not contain \`${row.parent}\`; these contain each other`,
          }
        : null;
  },
);
