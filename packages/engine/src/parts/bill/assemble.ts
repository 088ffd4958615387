import { compareText, type Decimal, deepEqual, Query, sameMembers, timesDecimal } from "@pinwright/kernel";
import type { Bill, BillLine, BillNode } from "../../model/index.ts";
import { type Ranked, rankNodes } from "./circles.ts";
import { type Contents, joinContents, ONE, sameContents } from "./contents.ts";
import { MACHINE_NODE } from "./nodes.ts";

/**
 * Puts the contents of all nodes together into the bill of a machine, with a memory: the contents of a node that are
 * told as before keep their identity, and the levels are found anew only when something contains other things.
 */
export class BillAssembler {
  readonly #joined = new Query<Contents>(sameContents);
  readonly #reached = new Query<ReadonlyMap<string, Contents>>(sameEntries);
  readonly #children = new Query<readonly BillNode[]>(deepEqual);
  readonly #ranks = new Query<Ranked>(Object.is);
  readonly #nodes = new Query<ReadonlyMap<string, BillNode>>(Object.is);
  readonly #bill = new Query<Bill>(Object.is);

  assemble(all: readonly Contents[]): Bill {
    const contents = this.#joinedContents(all);
    const flat = [...contents].flat();
    const reached = this.#reached.ask("all", flat, () => reachedFrom(contents));
    const structure = [...contents.values()].map((c) =>
      this.#children.ask(c.node.id, [c], () => [c.node, ...c.children]),
    );
    const ranks = this.#ranks.ask("all", structure, () =>
      rankNodes([MACHINE_NODE, ...[...contents.keys()].sort(compareText)], contents),
    );
    const nodes = this.#nodes.ask("all", structure, () => nodesOf(reached));
    return this.#bill.ask("all", [reached, ranks, nodes], () => billOf(reached, ranks, nodes));
  }

  sweep(): void {
    for (const query of [this.#joined, this.#reached, this.#children, this.#ranks, this.#nodes, this.#bill])
      query.sweep();
  }

  #joinedContents(all: readonly Contents[]): ReadonlyMap<string, Contents> {
    const groups = new Map<string, Contents[]>();
    for (const contents of all) {
      const group = groups.get(contents.node.id);
      if (group === undefined) groups.set(contents.node.id, [contents]);
      else group.push(contents);
    }
    return new Map(
      [...groups].flatMap(([id, group]) => {
        const [first] = group;
        return first === undefined
          ? []
          : [[id, this.#joined.ask(id, group, () => joinContents(first.node, group))] as const];
      }),
    );
  }
}

const sameEntries = (a: ReadonlyMap<string, Contents>, b: ReadonlyMap<string, Contents>): boolean =>
  sameMembers([...a].flat(), [...b].flat());

/** Contents of what is in the machine, by node in code-point order. */
function reachedFrom(contents: ReadonlyMap<string, Contents>): ReadonlyMap<string, Contents> {
  const reached = new Set<string>();
  const waiting = [MACHINE_NODE];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (reached.has(id)) continue;
    reached.add(id);
    for (const { childId } of contents.get(id)?.lines ?? []) waiting.push(childId);
  }
  return new Map(
    [...reached].sort(compareText).flatMap((id) => {
      const own = contents.get(id);
      return own === undefined ? [] : [[id, own] as const];
    }),
  );
}

function nodesOf(reached: ReadonlyMap<string, Contents>): ReadonlyMap<string, BillNode> {
  const nodes = new Map<string, BillNode>();
  for (const { node, children } of reached.values())
    for (const each of [node, ...children]) nodes.set(each.id, each);
  return new Map([...nodes].sort(([a], [b]) => compareText(a, b)));
}

function billOf(
  reached: ReadonlyMap<string, Contents>,
  { order, circles }: Ranked,
  nodes: ReadonlyMap<string, BillNode>,
): Bill {
  const lines: BillLine[] = [];
  for (const contents of reached.values()) lines.push(...contents.lines);
  const own = order.filter((id) => nodes.has(id));
  return { nodes, lines, totals: totalsOf(reached, own), order: own, circles };
}

/** How much of each node is in one machine: from the machine down. */
function totalsOf(
  reached: ReadonlyMap<string, Contents>,
  order: readonly string[],
): ReadonlyMap<string, Decimal> {
  const ranked = new Set(order);
  const totals = new Map<string, Decimal>();
  if (ranked.has(MACHINE_NODE)) totals.set(MACHINE_NODE, ONE);
  for (const id of order.toReversed()) {
    const times = totals.get(id);
    if (times === undefined) continue;
    for (const { childId, quantity } of reached.get(id)?.lines ?? []) {
      if (!ranked.has(childId)) continue;
      const more = times === ONE ? quantity : timesDecimal(times, quantity);
      totals.set(childId, (totals.get(childId) ?? 0n) + more);
    }
  }
  return new Map([...totals].sort(([a], [b]) => compareText(a, b)));
}
