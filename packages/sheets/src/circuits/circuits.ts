import type { BoardItem, LineResult, PlacedElement } from "@pinwright/engine";
import { type CircuitGraph, isControl, isShunt, type LaidWire } from "./graph.ts";
import { type FuseNode, otherSide, type Rails, type SupplyNode } from "./rails.ts";
import { type Enter, pruned, type Stop, stepsOf, type WalkRules, walk } from "./walk.ts";

/** What a circuit is about. */
type CircuitOf =
  | { readonly kind: "supply"; readonly node: SupplyNode }
  | { readonly kind: "fuse"; readonly fuse: FuseNode }
  | { readonly kind: "earth" }
  | { readonly kind: "board"; readonly board: BoardItem }
  | { readonly kind: "other" };

/** A circuit as it is followed with a meter. */
export interface Circuit {
  readonly of: CircuitOf;
  /** From the supply's or the fuse's load side on; of a board the points of its connectors. */
  readonly feed: readonly Stop[];
  /** From the supply's return, or from the board of the fuse, out to what the feed comes to. */
  readonly returns: readonly Stop[];
}

/** Elements that take up no current and tell an owner nothing where a circuit is followed. */
const UNSAID: ReadonlySet<string> = new Set(["diode"]);

/** Elements whose current a driver at their other side switches. */
const DRIVEN: ReadonlySet<string> = new Set(["coil", "motor", "led", "resistor", "speaker"]);

/**
 * Whether a circuit goes on beyond an element: on a conductor of its own with what drives or reads it, never on a
 * rail, nor where many meet.
 */
function goesOn(graph: CircuitGraph, rails: Rails, element: PlacedElement, beyond: number): boolean {
  if (rails.fed.has(beyond) || rails.returns.has(beyond)) return false;
  const there = graph.elementsAt[beyond] ?? [];
  if (DRIVEN.has(element.row.kind) && there.some((e) => e.row.kind === "driver")) return true;
  const others = there.filter((e) => !isControl(e) && !UNSAID.has(e.row.kind));
  return others.length <= 2 || new Set(others.map((e) => e.itemId)).size === 1;
}

/** How many drivers and inputs meet at a conductor: a common has the most. */
const controlsAt = (graph: CircuitGraph, at: number): number =>
  (graph.elementsAt[at] ?? []).filter(isControl).length;

class Charting {
  readonly #graph: CircuitGraph;
  readonly #rails: Rails;
  readonly #line: LineResult;
  readonly #supplyOfNet: ReadonlyMap<string, string | null>;
  readonly #charted = new Set<string>();

  constructor(line: LineResult, graph: CircuitGraph, rails: Rails) {
    this.#line = line;
    this.#graph = graph;
    this.#rails = rails;
    this.#supplyOfNet = new Map([...line.machine.nets.values()].map((net) => [net.id, net.supply]));
  }

  /** Wires of a supply's own nets; of nets that name no supply all but those of the protective earth. */
  #ofSupply(supplyId: string): (laid: LaidWire) => boolean {
    return ({ wire }) => {
      const own = this.#supplyOfNet.get(wire.netId) ?? null;
      return own === null ? wire.netClass !== "earth" : own === supplyId;
    };
  }

  #at(pointId: string): number {
    return this.#graph.conductorOf.get(pointId) ?? -1;
  }

  /** Down a feed, through loads and back to what drives them. `fuse`: what to do at a fuse on the way. */
  #feedRules(supplyId: string, fuse: "pass" | "tell"): WalkRules {
    return {
      wire: this.#ofSupply(supplyId),
      element: (element, fromPointId) => {
        const at = this.#at(fromPointId);
        const to = otherSide(this.#graph, element, at);
        const { kind } = element.row;
        if (UNSAID.has(kind)) return "skip";
        if (this.#rails.fed.get(to)?.via === element && this.#rails.fed.get(to)?.before === at)
          return kind === "fuse" ? fuse : "pass";
        // Where this feed comes from is told in the circuit before.
        if (this.#rails.fed.get(at)?.via === element) return "skip";
        return this.#through(element, at, to);
      },
    };
  }

  #through(element: PlacedElement, at: number, to: number): Enter {
    const { kind } = element.row;
    // A driver or input is told where its own signal is, not at the common that it shares with others.
    if (isControl(element))
      return controlsAt(this.#graph, at) > controlsAt(this.#graph, to) ? "skip" : "tell";
    const ends = kind === "source" || kind === "capacitor";
    return !ends && goesOn(this.#graph, this.#rails, element, to) ? "pass" : "tell";
  }

  /** @param supplyId only over the nets of this supply; null: over those of all */
  #returnRules(supplyId: string | null): WalkRules {
    return {
      wire: supplyId === null ? ({ wire }) => wire.netClass !== "earth" : this.#ofSupply(supplyId),
      element: (element, fromPointId) => {
        const to = otherSide(this.#graph, element, this.#at(fromPointId));
        const leadsOn = isShunt(element) || element.row.kind === "contact";
        return leadsOn && this.#rails.returns.has(to) ? "pass" : "skip";
      },
    };
  }

  #note(stops: readonly Stop[]): void {
    for (const stop of stops)
      for (const { step } of stepsOf(stop)) if (step.kind === "wire") this.#charted.add(step.laid.wire.id);
  }

  /** Circuits of one supply: its own up to the first fuses, then one for each of these. */
  supply(node: SupplyNode): readonly Circuit[] {
    const { id, positive, negative } = node.supply;
    const back = negative === null ? null : walk(this.#graph, negative, this.#returnRules(id));
    const shared = negative === null ? null : walk(this.#graph, negative, this.#returnRules(null));
    const fuses = node.fuses.map((fuse): Circuit => {
      const feed = walk(this.#graph, fuse.toPointId, this.#feedRules(id, "pass"));
      const own = back === null ? [] : this.#returnsOf(fuse, feed, back);
      // A supply made on a board may return over the nets of the one that it is made from.
      const returns = own.length > 0 || shared === null ? own : this.#returnsOf(fuse, feed, shared);
      return { of: { kind: "fuse", fuse }, feed: [feed], returns };
    });
    for (const circuit of fuses) this.#note([...circuit.feed, ...circuit.returns]);
    const feed = positive === null ? [] : [walk(this.#graph, positive, this.#feedRules(id, "tell"))];
    this.#note(feed);
    const rest = back === null ? null : this.#unchartedOf(back);
    const returns = rest === null ? [] : [rest];
    this.#note(returns);
    return [{ of: { kind: "supply", node }, feed, returns }, ...fuses];
  }

  /** Returns from the board of a fuse out to the items that its feed comes to. */
  #returnsOf(fuse: FuseNode, feed: Stop, back: Stop): readonly Stop[] {
    const own = fuse.element.itemId;
    const items = new Set<string>();
    const add = (stop: Stop): void => {
      for (const pointId of stop.pointIds) items.add(this.#itemOf(pointId));
    };
    const isInline = (itemId: string): boolean => this.#line.machine.items.get(itemId)?.kind === "inline";
    add(feed);
    for (const { to } of stepsOf(feed)) add(to);
    items.delete(own);
    const isThere = (pointId: string): boolean => {
      const itemId = this.#itemOf(pointId);
      return items.has(itemId) && !isInline(itemId);
    };
    const tree = pruned(back, {
      stop: (stop) => stop.pointIds.some(isThere),
      branch: (branch) => branch.closes && branch.step.kind === "wire" && isThere(branch.to.pointId),
    });
    if (tree === null) return [];
    const starts: Stop[] = [];
    const look = (stop: Stop): void => {
      if (stop.pointIds.some((p) => this.#itemOf(p) === own)) starts.push(stop);
      else for (const branch of stop.branches) look(branch.to);
    };
    look(tree);
    return (starts.length > 0 ? starts : [tree]).filter((stop) => stop.branches.length > 0);
  }

  /** The part of a tree with the wires that no circuit has. */
  #unchartedOf(stop: Stop): Stop | null {
    return pruned(stop, {
      stop: () => false,
      branch: ({ step }) => step.kind === "wire" && !this.#charted.has(step.laid.wire.id),
    });
  }

  #itemOf(pointId: string): string {
    return this.#line.machine.points.get(pointId)?.itemId ?? "";
  }

  #has(pointId: string): boolean {
    return (this.#graph.joints.get(pointId) ?? []).some(
      (j) => j.kind === "wire" && !this.#charted.has(j.laid.wire.id),
    );
  }

  /** A tree of wires that no circuit has yet, from a point on. */
  #signal(pointId: string): readonly Stop[] {
    if (!this.#has(pointId)) return [];
    const stop = walk(this.#graph, pointId, {
      wire: ({ wire }) => !this.#charted.has(wire.id),
      element: (element, fromPointId) => {
        if (UNSAID.has(element.row.kind)) return "skip";
        const at = this.#at(fromPointId);
        return this.#through(element, at, otherSide(this.#graph, element, at));
      },
    });
    this.#note([stop]);
    return [stop];
  }

  earth(): readonly Circuit[] {
    const wires = [...this.#line.harnesses.values()].flatMap((h) =>
      h.wires.filter((w) => w.netClass === "earth"),
    );
    const inlets = new Set(
      this.#line.machine.book.tables.supplies.map(({ positive }) => this.#itemOf(positive ?? "")),
    );
    const ends = wires.flatMap((w) => [w.a, w.b]);
    const starts = [...ends.filter((p) => inlets.has(this.#itemOf(p))), ...ends];
    const feed = starts.flatMap((pointId) => {
      if (!this.#has(pointId)) return [];
      const stop = walk(this.#graph, pointId, {
        wire: ({ wire }) => wire.netClass === "earth" && !this.#charted.has(wire.id),
        element: () => "skip",
      });
      this.#note([stop]);
      return stop.branches.length === 0 ? [] : [stop];
    });
    return feed.length === 0 ? [] : [{ of: { kind: "earth" }, feed, returns: [] }];
  }

  board(board: BoardItem): readonly Circuit[] {
    const own = [...this.#line.machine.points.values()].filter((p) => p.itemId === board.id);
    const feed = own.flatMap((p) => this.#signal(p.id));
    return feed.length === 0 ? [] : [{ of: { kind: "board", board }, feed, returns: [] }];
  }

  others(): readonly Circuit[] {
    const wires = [...this.#line.harnesses.values()].flatMap((h) => h.wires);
    const feed = wires.flatMap((w) => this.#signal(w.a));
    return feed.length === 0 ? [] : [{ of: { kind: "other" }, feed, returns: [] }];
  }
}

/**
 * Every circuit of a machine: each supply up to its first fuses, each of these fuses with its loads and returns, the
 * protective earth, then by board what is switched, read and said between boards. Each wire is in one at least.
 */
export function circuitsOf(
  line: LineResult,
  graph: CircuitGraph,
  rails: Rails,
  supplies: readonly SupplyNode[],
): readonly Circuit[] {
  const charting = new Charting(line, graph, rails);
  const boards = [...line.machine.items.values()]
    .filter((item) => item.kind === "board")
    .sort((a, b) => (a.address ?? -1) - (b.address ?? -1) || (a.id < b.id ? -1 : 1));
  return [
    ...supplies.flatMap((node) => charting.supply(node)),
    ...charting.earth(),
    ...boards.flatMap((board) => charting.board(board)),
    ...charting.others(),
  ];
}
