import { compareText, type Decimal, decimal, deepEqual } from "@pinwright/kernel";
import type { BillLine, BillNode, BillWhy } from "../../model/index.ts";

/** What is directly in one node: its lines in the bill's order, and the nodes that they lead to. */
export interface Contents {
  readonly node: BillNode;
  readonly lines: readonly BillLine[];
  /** Children, each once. */
  readonly children: readonly BillNode[];
}

/** Places that a line names at most. */
const MOST_PLACES = 500;

export const ONE: Decimal = decimal(1);

interface Piece {
  readonly child: BillNode;
  readonly why: BillWhy;
  readonly quantity: Decimal;
  readonly colour?: string;
  readonly at?: string;
}

/** Adds up what is in one node; one line for each child, reason and colour. */
export class ContentsBuilder {
  readonly #node: BillNode;
  readonly #lines = new Map<
    string,
    { line: Omit<BillLine, "quantity" | "at">; quantity: Decimal; at: Set<string> }
  >();
  readonly #children = new Map<string, BillNode>();

  constructor(node: BillNode) {
    this.#node = node;
  }

  add({ child, why, quantity, colour = "", at }: Piece): void {
    if (quantity === 0n) return;
    this.#children.set(child.id, child);
    const key = `${child.id}|${why}|${colour}`;
    const known = this.#lines.get(key);
    if (known !== undefined) {
      known.quantity += quantity;
      if (at !== undefined) known.at.add(at);
      return;
    }
    const line = { parentId: this.#node.id, childId: child.id, why, colour };
    this.#lines.set(key, { line, quantity, at: new Set(at === undefined ? [] : [at]) });
  }

  build(): Contents {
    const lines = [...this.#lines.values()]
      .map(({ line, quantity, at }) => ({
        ...line,
        quantity,
        at: [...at].sort(compareText).slice(0, MOST_PLACES),
      }))
      .sort(inOrder);
    return { node: this.#node, lines, children: [...this.#children.values()] };
  }
}

const inOrder = (a: BillLine, b: BillLine): number =>
  compareText(a.childId, b.childId) || compareText(a.why, b.why) || compareText(a.colour, b.colour);

/** Contents of one node that are told in several places, in one list. */
export function joinContents(node: BillNode, all: readonly Contents[]): Contents {
  const [only] = all;
  if (only !== undefined && all.length === 1 && only.node === node) return only;
  const lines = all.flatMap((c) => c.lines).sort(inOrder);
  const children = new Map(all.flatMap((c) => c.children).map((child) => [child.id, child]));
  return {
    node,
    lines: lines.some((l) => l.parentId !== node.id)
      ? lines.map((l) => ({ ...l, parentId: node.id }))
      : lines,
    children: [...children.values()],
  };
}

export const sameContents = (a: Contents, b: Contents): boolean => deepEqual(a, b);
