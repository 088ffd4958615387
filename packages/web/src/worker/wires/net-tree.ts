import type { LineResult } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { type EndPlace, endPlace, printedNo } from "./wires-at.ts";

/** How a point of a net is reached from the one before it. */
type Via =
  | {
      readonly kind: "wire";
      readonly wireId: string;
      readonly printed: string;
      readonly colour: string;
      readonly lengthMm: number;
      readonly harnessId: string;
    }
  /** Through a board, device or the mated halves of an in-line connector. */
  | { readonly kind: "through" };

/** One row of a drawn net: a point or splice, and how it hangs on an earlier row. */
export interface NetRow extends EndPlace {
  /** Row that it hangs on; null: the net starts, or starts anew, here. */
  readonly parent: number | null;
  readonly via: Via | null;
  /** Column of the drawing, 0 at the left. A chain stays in its column; a star opens new ones. */
  readonly column: number;
}

interface Edge {
  readonly to: string;
  readonly via: Via;
}

function edgesOf(line: LineResult, netId: string): ReadonlyMap<string, readonly Edge[]> {
  const edges = new Map<string, Edge[]>();
  const join = (a: string, b: string, via: Via): void => {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ] as const) {
      const list = edges.get(from);
      if (list === undefined) edges.set(from, [{ to, via }]);
      else list.push({ to, via });
    }
  };
  for (const harness of line.harnesses.values())
    for (const wire of harness.wires)
      if (wire.netId === netId)
        join(wire.a, wire.b, {
          kind: "wire",
          wireId: wire.id,
          printed: printedNo(harness, wire),
          colour: wire.colour,
          lengthMm: wire.finishedMm,
          harnessId: harness.harness.id,
        });
  for (const end of line.machine.ends)
    if (end.net === netId && !edges.has(end.point)) edges.set(end.point, []);
  for (const element of line.machine.elements)
    if (element.row.kind === "link" && edges.has(element.fromPointId) && edges.has(element.toPointId))
      join(element.fromPointId, element.toPointId, { kind: "through" });
  for (const [id] of [...edges]) {
    const point = line.machine.points.get(id);
    const half = point === undefined ? null : (line.machine.landings.get(point.landingId)?.half ?? null);
    if (point === undefined || half !== "a") continue;
    const mate = `${point.itemId}:b.${point.pin}`;
    if (edges.has(mate)) join(id, mate, { kind: "through" });
  }
  return edges;
}

/**
 * A net as rows that can be drawn one below the other: from where it is fed, along its wires and through boards
 * and mated plugs. The longest way on stays in its column. A part that nothing joins starts anew at the left.
 */
export function netTree(line: LineResult, netId: string): readonly NetRow[] {
  const edges = edgesOf(line, netId);
  const source = line.machine.nets.get(netId)?.source ?? null;
  const starts = [...edges.keys()].sort(
    (a, b) => Number(b === source) - Number(a === source) || compareText(a, b),
  );
  const seen = new Set<string>();
  const rows: NetRow[] = [];
  const first = source === null || !edges.has(source) ? loneEnd(edges, starts) : source;
  for (const start of first === null ? starts : [first, ...starts]) {
    if (seen.has(start)) continue;
    const sizes = new Map<string, number>();
    const order = walk(edges, start, seen, sizes);
    lay(line, order, sizes, start, rows);
  }
  return rows;
}

/** Of ends with one wire, that which the fewest others come before: a chain is drawn from its end. */
function loneEnd(edges: ReadonlyMap<string, readonly Edge[]>, ids: readonly string[]): string | null {
  const most = Math.max(0, ...[...edges.values()].map((list) => list.length));
  // A star is drawn from its middle, a chain from an end.
  if (most > 2) return ids.find((id) => (edges.get(id)?.length ?? 0) === most) ?? null;
  return ids.find((id) => (edges.get(id)?.length ?? 0) === 1) ?? null;
}

type Children = ReadonlyMap<string, readonly Edge[]>;

/** A spanning tree of what hangs together with a start, each node with the depth of what hangs below it. */
function walk(
  edges: ReadonlyMap<string, readonly Edge[]>,
  start: string,
  seen: Set<string>,
  sizes: Map<string, number>,
): Children {
  const children = new Map<string, Edge[]>();
  const order: string[] = [start];
  const parent = new Map<string, string>();
  seen.add(start);
  for (const id of order) {
    const own: Edge[] = [];
    for (const edge of edges.get(id) ?? []) {
      if (seen.has(edge.to)) continue;
      seen.add(edge.to);
      parent.set(edge.to, id);
      own.push(edge);
      order.push(edge.to);
    }
    children.set(id, own);
  }
  for (const id of order.toReversed()) {
    const own = sizes.get(id) ?? 1;
    sizes.set(id, own);
    const up = parent.get(id);
    if (up !== undefined) sizes.set(up, Math.max(sizes.get(up) ?? 1, own + 1));
  }
  return children;
}

/** Rows of a tree: short branches first, each in a column of its own, the longest last and straight on. */
function lay(
  line: LineResult,
  children: Children,
  sizes: ReadonlyMap<string, number>,
  start: string,
  rows: NetRow[],
): void {
  const todo: { id: string; parent: number | null; via: Via | null; column: number }[] = [
    { id: start, parent: null, via: null, column: 0 },
  ];
  for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
    const row = rows.length;
    rows.push({ ...endPlace(line, at.id), parent: at.parent, via: at.via, column: at.column });
    const own = [...(children.get(at.id) ?? [])].sort(
      (a, b) => (sizes.get(b.to) ?? 0) - (sizes.get(a.to) ?? 0) || compareText(a.to, b.to),
    );
    const column = at.column;
    // The stack gives the last one first: short branches before the one that goes straight on.
    own.forEach((edge, i) => {
      todo.push({ id: edge.to, parent: row, via: edge.via, column: i === 0 ? column : column + 1 });
    });
  }
}
