import type { BookRow } from "@pinwright/book";
import type { ElectricSolution, LineResult, PlacedElement } from "@pinwright/engine";
import { type CircuitGraph, isShunt } from "./graph.ts";

type Supply = BookRow<"supplies">;

/** How a conductor comes to be fed. */
interface Fed {
  readonly supplyId: string;
  /** What leads here from the conductor before: a fuse, a closed contact, a shunt; null at the supply itself. */
  readonly via: PlacedElement | null;
  readonly before: number | null;
}

/** Conductors that supplies hold at a voltage. */
export interface Rails {
  /** By conductor; the nearest supply. */
  readonly fed: ReadonlyMap<number, Fed>;
  /** Conductors that lead back to a supply, by conductor. */
  readonly returns: ReadonlySet<number>;
}

/** A contact feeds on unless what it leads to is read by a board: then it is a switch. */
function feedsOn(graph: CircuitGraph, element: PlacedElement, beyond: number): boolean {
  if (element.row.kind === "fuse" || isShunt(element)) return true;
  return (
    element.row.kind === "contact" &&
    (graph.elementsAt[beyond] ?? []).every((other) => other.row.kind !== "input")
  );
}

/** Conductors fed from the supplies' positive points and those that lead to their returns, over what always conducts. */
export function railsOf(graph: CircuitGraph, supplies: readonly Supply[]): Rails {
  const returns = new Set<number>();
  const back = supplies.flatMap(({ negative }) => graph.conductorOf.get(negative ?? "") ?? []);
  spread(graph, back, (from, to, element) => {
    if (returns.has(to) || (from !== null && element?.row.kind === "fuse")) return false;
    returns.add(to);
    return true;
  });
  const fed = new Map<number, Fed>();
  for (const { id, positive } of supplies) {
    const start = graph.conductorOf.get(positive ?? "");
    if (start === undefined || returns.has(start)) continue;
    spread(graph, [start], (from, to, via) => {
      if (fed.has(to) || returns.has(to)) return false;
      fed.set(to, { supplyId: id, via, before: from });
      return true;
    });
  }
  return { fed, returns };
}

/** Breadth first over fuses, shunts and contacts; `take` says whether a conductor is new. */
function spread(
  graph: CircuitGraph,
  starts: readonly number[],
  take: (from: number | null, to: number, via: PlacedElement | null) => boolean,
): void {
  const queue = starts.filter((start) => take(null, start, null));
  for (const at of queue)
    for (const element of graph.elementsAt[at] ?? []) {
      const to = otherSide(graph, element, at);
      if (to !== at && feedsOn(graph, element, to) && take(at, to, element)) queue.push(to);
    }
}

/** Conductor at the other end of an element. */
export function otherSide(
  graph: CircuitGraph,
  { fromPointId, toPointId }: PlacedElement,
  at: number,
): number {
  const from = graph.conductorOf.get(fromPointId) ?? -1;
  return from === at ? (graph.conductorOf.get(toPointId) ?? -1) : from;
}

/** A fuse with what hangs on it. */
export interface FuseNode {
  readonly element: PlacedElement;
  /** Its row in `fuses`; null for a resettable one of a board. */
  readonly row: BookRow<"fuses"> | null;
  readonly supplyId: string;
  /** Point on its load side. */
  readonly toPointId: string;
  readonly fuses: readonly FuseNode[];
  /** Loads with no other fuse between, in code-point order. */
  readonly loadIds: readonly string[];
  /** Supplies that loads behind it make. */
  readonly supplyIds: readonly string[];
}

export interface SupplyNode {
  readonly supply: Supply;
  /** The supply that it is made from; null for the first. */
  readonly fromSupplyId: string | null;
  readonly fuses: readonly FuseNode[];
  /** Loads and further supplies before any fuse. */
  readonly loadIds: readonly string[];
  readonly supplyIds: readonly string[];
}

/** Every supply with its fuses and loads: mains first, each supply after what it is made from. */
export function powerTree(
  line: LineResult,
  graph: CircuitGraph,
  rails: Rails,
  electric: ElectricSolution,
): readonly SupplyNode[] {
  const { machine } = line;
  const supplies = machine.book.tables.supplies;
  const hung = new Map<string, string[]>();
  const key = (supplyId: string, fuse: PlacedElement | null): string => `${supplyId} ${fuse?.id ?? ""}`;
  const elements = new Map(machine.elements.map((e) => [e.id, e]));
  const feedOf = new Map<string, string>();
  for (const { loadId, supplyId, itemId } of electric.loads.values()) {
    const element = elements.get(loadId);
    const at = element === undefined ? null : feedingConductor(graph, rails, element, supplyId);
    const own = key(supplyId, at === null ? null : nearestFuse(rails, at));
    hung.set(own, [...(hung.get(own) ?? []), loadId]);
    for (const made of supplies)
      if (
        machine.points.get(made.positive ?? "")?.itemId === itemId &&
        made.id !== supplyId &&
        !feedOf.has(made.id)
      )
        feedOf.set(made.id, own);
  }
  const rows = new Map(
    machine.book.tables.fuses.flatMap((row) => [
      [`${row.from} ${row.to}`, row] as const,
      [`${row.to} ${row.from}`, row] as const,
    ]),
  );
  const fusesBehind = new Map<string, { element: PlacedElement; conductor: number }[]>();
  for (const [conductor, { via, before, supplyId }] of rails.fed)
    if (via?.row.kind === "fuse" && before !== null) {
      const own = key(supplyId, nearestFuse(rails, before));
      fusesBehind.set(own, [...(fusesBehind.get(own) ?? []), { element: via, conductor }]);
    }
  const order = new Map(machine.elements.map((e, i) => [e.id, i]));
  const inside = (own: string): Pick<SupplyNode, "fuses" | "loadIds" | "supplyIds"> => ({
    fuses: (fusesBehind.get(own) ?? [])
      .sort((a, b) => (order.get(a.element.id) ?? 0) - (order.get(b.element.id) ?? 0))
      .map(({ element, conductor }): FuseNode => {
        const supplyId = own.slice(0, own.indexOf(" "));
        const { fromPointId, toPointId } = element;
        return {
          element,
          row: rows.get(`${fromPointId} ${toPointId}`) ?? null,
          supplyId,
          toPointId: graph.conductorOf.get(toPointId) === conductor ? toPointId : fromPointId,
          ...inside(key(supplyId, element)),
        };
      }),
    loadIds: hung.get(own) ?? [],
    supplyIds: [...feedOf].flatMap(([id, from]) => (from === own ? [id] : [])),
  });
  const nodes = supplies.map((supply): SupplyNode => {
    const from = feedOf.get(supply.id);
    return {
      supply,
      fromSupplyId: from === undefined ? null : from.slice(0, from.indexOf(" ")),
      ...inside(key(supply.id, null)),
    };
  });
  return inOrder(nodes);
}

/** Each supply after the one that it is made from. */
function inOrder(nodes: readonly SupplyNode[]): readonly SupplyNode[] {
  const done: SupplyNode[] = [];
  const add = (node: SupplyNode): void => {
    if (done.includes(node)) return;
    done.push(node);
    for (const next of nodes) if (next.fromSupplyId === node.supply.id) add(next);
  };
  for (const node of nodes) if (node.fromSupplyId === null) add(node);
  for (const node of nodes) add(node);
  return done;
}

/** The last fuse on the way to a conductor. */
function nearestFuse(rails: Rails, at: number): PlacedElement | null {
  for (let own = rails.fed.get(at); own !== undefined; ) {
    if (own.via?.row.kind === "fuse") return own.via;
    own = own.before === null ? undefined : rails.fed.get(own.before);
  }
  return null;
}

/** Through what else a load may be fed from a rail. */
const BETWEEN: ReadonlySet<string> = new Set(["resistor", "driver", "contact", "led", "diode", "coil"]);

/** The fed conductor of its supply that is nearest to a load, over what lies between; null when there is none. */
function feedingConductor(
  graph: CircuitGraph,
  rails: Rails,
  load: PlacedElement,
  supplyId: string,
): number | null {
  const starts = [load.fromPointId, load.toPointId].flatMap((p) => graph.conductorOf.get(p) ?? []);
  const seen = new Set(starts);
  const queue = [...starts];
  for (const at of queue) {
    if (rails.fed.get(at)?.supplyId === supplyId) return at;
    if (rails.fed.has(at) || rails.returns.has(at)) continue;
    for (const element of graph.elementsAt[at] ?? []) {
      if (element === load || !BETWEEN.has(element.row.kind)) continue;
      const to = otherSide(graph, element, at);
      if (seen.has(to)) continue;
      seen.add(to);
      queue.push(to);
    }
  }
  return null;
}
