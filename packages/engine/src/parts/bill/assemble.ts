import { compareText, type Decimal, deepEqual, Query, timesDecimal } from "@pinwright/kernel";
import type { Bill, BillLine, BillNode } from "../../model/index.ts";
import { rankNodes } from "./circles.ts";
import { type Contents, joinContents, ONE, sameContents } from "./contents.ts";
import { MACHINE_NODE } from "./nodes.ts";

/**
 * Puts the contents of all nodes together into the bill of a machine, with a memory: the contents of a node that are
 * told as before keep their identity, and the levels are found anew only when something contains other things.
 */
export class BillAssembler {
  readonly #joined = new Query<Contents>(sameContents);
  readonly #children = new Query<readonly BillNode[]>(deepEqual);
  readonly #levels = new Query<Levels>(Object.is);
  readonly #bill = new Query<Bill>(Object.is);

  assemble(all: readonly Contents[]): Bill {
    const contents = this.#joinedContents(all);
    const structure = [...contents.values()].map((c) =>
      this.#children.ask(c.node.id, [c], () => [c.node, ...c.children]),
    );
    const levels = this.#levels.ask("all", structure, () => levelsOf(contents));
    return this.#bill.ask("all", [levels, ...contents.values()], () => billOf(contents, levels));
  }

  sweep(): void {
    for (const query of [this.#joined, this.#children, this.#levels, this.#bill]) query.sweep();
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

/** What contains what, whatever the quantities. */
interface Levels {
  /** What is in the machine, in code-point order. */
  readonly nodes: ReadonlyMap<string, BillNode>;
  /** Those of them that are in no circle, leaves first. */
  readonly order: readonly string[];
  readonly circles: Bill["circles"];
}

function levelsOf(contents: ReadonlyMap<string, Contents>): Levels {
  const found = new Map<string, BillNode>();
  const waiting = [MACHINE_NODE];
  const reached = new Set(waiting);
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    const own = contents.get(id);
    if (own === undefined) continue;
    for (const node of [own.node, ...own.children]) {
      found.set(node.id, node);
      if (reached.has(node.id)) continue;
      reached.add(node.id);
      waiting.push(node.id);
    }
  }
  const roots = [MACHINE_NODE, ...[...contents.keys()].sort(compareText)];
  const { order, circles } = rankNodes(roots, contents);
  return {
    nodes: new Map([...found].sort(([a], [b]) => compareText(a, b))),
    order: order.filter((id) => found.has(id)),
    circles,
  };
}

function billOf(contents: ReadonlyMap<string, Contents>, { nodes, order, circles }: Levels): Bill {
  const lines: BillLine[] = [];
  for (const id of nodes.keys()) for (const line of contents.get(id)?.lines ?? []) lines.push(line);
  return { nodes, lines, totals: totalsOf(contents, nodes, order), order, circles };
}

/** How much of each node is in one machine: from the machine down. */
function totalsOf(
  contents: ReadonlyMap<string, Contents>,
  nodes: ReadonlyMap<string, BillNode>,
  order: readonly string[],
): ReadonlyMap<string, Decimal> {
  const totals = new Map<string, Decimal>(order.map((id) => [id, 0n]));
  if (totals.has(MACHINE_NODE)) totals.set(MACHINE_NODE, ONE);
  for (let i = order.length - 1; i >= 0; i -= 1) {
    const id = order[i] ?? "";
    const times = totals.get(id) ?? 0n;
    if (times === 0n) continue;
    // Nearly all are counted in wholes, which need no rounding.
    const whole = times % ONE === 0n ? times / ONE : null;
    for (const { childId, quantity } of contents.get(id)?.lines ?? []) {
      const before = totals.get(childId);
      // In a circle.
      if (before === undefined) continue;
      totals.set(childId, before + (whole === null ? timesDecimal(times, quantity) : whole * quantity));
    }
  }
  return new Map(
    [...nodes.keys()].flatMap((id) => {
      const total = totals.get(id);
      return total === undefined || total === 0n ? [] : [[id, total] as const];
    }),
  );
}
