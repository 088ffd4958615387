import { compareText } from "@pinwright/kernel";
import type { ElectricSolution, Machine } from "../../model/index.ts";
import { type Part, wireNode } from "../network/parts.ts";
import type { LadderNode, LadderPart, Ways } from "./load-ladder.ts";

interface TreeTask {
  readonly machine: Machine;
  readonly solution: ElectricSolution;
  readonly ways: Ways;
  /** Node that a node's volts are given against, where that is not the return of the ladder's supply. */
  readonly against: (node: string) => string | null;
  /** Where each load hangs. */
  readonly ends: readonly { readonly loadId: string; readonly node: string }[];
}

interface Edge {
  readonly to: string;
  readonly parts: readonly Part[];
}

/**
 * The ways to some loads as a tree. What is only passed stands with the part after it: the wires' side of a contact is
 * a node of its own only where several wires go on from it.
 */
export function ladderNodes(task: TreeTask): readonly LadderNode[] {
  const { ways, ends, machine, solution, against } = task;
  const loads = new Map<string, string[]>();
  for (const { loadId, node } of ends) {
    const list = loads.get(node);
    if (list === undefined) loads.set(node, [loadId]);
    else list.push(loadId);
  }
  const children = childrenOf(ways, [...loads.keys()]);
  const below = belowOf(children, loads, ways.start);
  const nodes: LadderNode[] = [];
  const todo: { id: string; parent: number | null; parts: readonly Part[] }[] = [
    { id: ways.start, parent: null, parts: [] },
  ];
  for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
    const place = nodes.length;
    const { id, parent, parts } = at;
    const point = id.startsWith(WIRE) ? id.slice(WIRE.length) : id;
    nodes.push({
      nodeId: id,
      pointId: machine.points.has(point) ? point : null,
      parent,
      parts: parts.map((part) => ladderPart(part, solution)),
      volts: solution.volts.get(id) ?? null,
      against: against(id),
      loadIds: (loads.get(id) ?? []).toSorted(compareText),
      below: below.get(id) ?? 0,
    });
    // The stack gives the last one first: few loads before many, so that the trunk goes on at the end.
    const next = (children.get(id) ?? []).map(({ to, part }) =>
      passed(children, loads, { to, parts: [part] }),
    );
    next.sort((p, q) => (below.get(q.to) ?? 0) - (below.get(p.to) ?? 0) || compareText(q.to, p.to));
    for (const edge of next) todo.push({ id: edge.to, parent: place, parts: edge.parts });
  }
  return nodes;
}

const WIRE = wireNode("");

type Children = ReadonlyMap<string, readonly { readonly to: string; readonly part: Part }[]>;

function childrenOf(ways: Ways, leaves: readonly string[]): Children {
  const children = new Map<string, { to: string; part: Part }[]>();
  const seen = new Set<string>();
  for (const leaf of leaves)
    for (let to = leaf; !seen.has(to); ) {
      seen.add(to);
      const before = ways.before(to);
      if (before === null) break;
      const list = children.get(before.node);
      if (list === undefined) children.set(before.node, [{ to, part: before.part }]);
      else list.push({ to, part: before.part });
      to = before.node;
    }
  return children;
}

/** Loads at and below each node; deeper nodes come later in the order of a walk. */
function belowOf(
  children: Children,
  loads: ReadonlyMap<string, readonly string[]>,
  start: string,
): ReadonlyMap<string, number> {
  const order = [start];
  for (const node of order) for (const { to } of children.get(node) ?? []) order.push(to);
  const below = new Map<string, number>();
  for (const node of order.reverse())
    below.set(
      node,
      (children.get(node) ?? []).reduce(
        (sum, { to }) => sum + (below.get(to) ?? 0),
        loads.get(node)?.length ?? 0,
      ),
    );
  return below;
}

/** On past nodes on the wires' side of a contact from which only one part leads on. */
function passed(children: Children, loads: ReadonlyMap<string, readonly string[]>, from: Edge): Edge {
  let edge = from;
  for (;;) {
    const next = children.get(edge.to) ?? [];
    const [only] = next;
    if (!edge.to.startsWith(WIRE) || only === undefined || next.length > 1 || loads.has(edge.to)) return edge;
    edge = { to: only.to, parts: [...edge.parts, only.part] };
  }
}

function ladderPart(part: Part, { wires, contacts, elements }: ElectricSolution): LadderPart {
  if (part.kind === "wire") return { kind: "wire", id: part.id, carried: wires.get(part.id) ?? null };
  if (part.kind === "contact")
    return { kind: "contact", id: part.id, carried: contacts.get(part.id) ?? null };
  return { kind: kindOf(part), id: part.id, carried: elements.get(part.id) ?? null };
}

function kindOf(part: Part): LadderPart["kind"] {
  const kind = part.kind === "element" ? part.element.row.kind : "link";
  switch (kind) {
    case "fuse":
    case "resistor":
    case "driver":
    case "diode":
      return kind;
    case "contact":
      return "switch";
    default:
      return "link";
  }
}
