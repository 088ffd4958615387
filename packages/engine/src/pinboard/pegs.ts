import type { BookRow } from "@pinwright/book";
import type { PointMm } from "@pinwright/kernel";
import type { Pinboard } from "../model/index.ts";
import type { PinboardInput } from "./input.ts";
import type { BoardTree } from "./tree.ts";

/** Places and directions that choices of the kind `peg` ask for, by the numbers of the tree. */
export interface AskedPegs {
  readonly nodeAt: ReadonlyMap<number, PointMm>;
  /** Bends of a branch, in the order from its `a` to its `b`. */
  readonly bendsOf: ReadonlyMap<number, readonly PointMm[]>;
  /** Direction of the branch that leads to a node, from `a` to `b`, by branch; degrees. */
  readonly directionOf: ReadonlyMap<number, number>;
  /** Nodes whose place was only kept from an earlier result. */
  readonly settled: ReadonlySet<number>;
  /** Subjects that name nothing in this harness, and those whose value cannot be read. */
  readonly unknown: readonly string[];
  readonly unreadable: readonly string[];
}

/** Subjects of bends start with this after the harness. */
const BENDS = "bends:";

/** `x,y` in board mm, or null. */
function readPoint(text: string): PointMm | null {
  const found = /^\s*(-?\d+(?:\.\d+)?)\s*,\s*(-?\d+(?:\.\d+)?)\s*$/.exec(text);
  return found === null ? null : { xMm: Number(found[1]), yMm: Number(found[2]) };
}

const readAngle = (text: string): number | null =>
  /^\s*-?\d+(?:\.\d+)?\s*$/.test(text) ? Number(text) : null;

/**
 * Reads the choices: `harness|node id` with `x,y` in board mm, or with the direction in degrees of the branch
 * that leads to the node; `harness|bends:branch id` with the `x,y` of its bend pegs separated by spaces.
 */
export function askedPegs(input: PinboardInput, tree: BoardTree): AskedPegs {
  const nodes = new Map(tree.nodes.map((n, i) => [n.id, i]));
  const branches = new Map(
    tree.branches.flatMap((b, i) => b.parts.map((part) => [part.source.id, i] as const)),
  );
  const bendsOfPart = new Map<string, readonly PointMm[]>();
  const nodeAt = new Map<number, PointMm>();
  const bendsOf = new Map<number, readonly PointMm[]>();
  const directionOf = new Map<number, number>();
  const settled = new Set<number>();
  const unknown: string[] = [];
  const unreadable: string[] = [];
  const own = `${input.harness.id}|`;
  const readNode = (row: BookRow<"choices">, node: number): boolean => {
    const at = readPoint(row.value);
    const deg = readAngle(row.value);
    if (at !== null) {
      nodeAt.set(node, at);
      if (row.held === "settled") settled.add(node);
    } else if (deg !== null) {
      tree.branches.forEach((b, i) => {
        if (b.b === node) directionOf.set(i, deg);
      });
    }
    return at !== null || deg !== null;
  };
  const readBends = (row: BookRow<"choices">, id: string): boolean => {
    const points = row.value.trim().split(/\s+/).map(readPoint);
    const bends = points.filter((p) => p !== null);
    if (bends.length === points.length) bendsOfPart.set(id, bends);
    return bends.length === points.length;
  };
  for (const [subject, row] of [...input.pegs].sort(([p], [q]) => (p < q ? -1 : p > q ? 1 : 0))) {
    if (!subject.startsWith(own)) continue;
    const id = subject.slice(own.length);
    const node = nodes.get(id);
    const bent = id.startsWith(BENDS) ? id.slice(BENDS.length) : "";
    if (node === undefined && !branches.has(bent)) unknown.push(subject);
    else if (!(node !== undefined ? readNode(row, node) : readBends(row, bent))) unreadable.push(subject);
  }
  for (const id of bendsOfPart.keys()) {
    const branch = branches.get(id) ?? -1;
    const parts = tree.branches[branch]?.parts ?? [];
    const bends = parts.flatMap(({ source, forward }) => {
      const own = bendsOfPart.get(source.id) ?? [];
      return forward ? own : own.toReversed();
    });
    bendsOf.set(branch, bends);
  }
  return { nodeAt, bendsOf, directionOf, settled, unknown, unreadable };
}

const written = (p: PointMm): string => `${p.xMm},${p.yMm}`;

/**
 * The choices that keep a pinboard as it is: a subject and a value for every node and every bent branch, to be
 * stored as settled choices of the kind `peg`. Nodes that a straight run only passes follow from its ends.
 */
export function settlePegs(
  pinboard: Pinboard,
): readonly { readonly subject: string; readonly value: string }[] {
  const meeting = new Map<string, number>();
  for (const { line } of pinboard.branches) {
    for (const end of [line[0], line.at(-1)]) {
      if (end !== undefined) meeting.set(written(end), (meeting.get(written(end)) ?? 0) + 1);
    }
  }
  return [
    ...pinboard.nodes
      .filter((n) => n.peg || meeting.get(written(n.at)) !== 2)
      .map((n) => ({ subject: `${pinboard.harnessId}|${n.id}`, value: written(n.at) })),
    ...pinboard.branches
      .filter((b) => b.line.length > 2)
      .map((b) => ({
        subject: `${pinboard.harnessId}|${BENDS}${b.id}`,
        value: b.line.slice(1, -1).map(written).join(" "),
      })),
  ];
}
