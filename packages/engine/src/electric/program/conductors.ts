import type { BookRow } from "@pinwright/book";
import { SharedMemory, UnionFind } from "@pinwright/kernel";
import type { Machine, PlacedElement } from "../../model/index.ts";

/** One end of an element at a conductor. */
export interface Terminal {
  readonly element: PlacedElement;
  readonly end: "from" | "to";
  readonly pointId: string;
  /** Conductor at the element's other end. */
  readonly other: number;
}

/**
 * The machine as conductors with elements between them. A conductor is all that wires, links and mated contacts make
 * one, whatever its resistance. A point that belongs to no net and touches no link is a conductor by itself.
 */
export interface Conductors {
  /** Conductor of each point that an element, an end or a mated contact touches. */
  readonly of: ReadonlyMap<string, number>;
  /** Elements at each conductor, links left out. */
  readonly terminals: readonly (readonly Terminal[])[];
  /** Nets of each conductor, in code-point order. */
  readonly nets: readonly (readonly BookRow<"nets">[])[];
  /** Whether a conductor is held at a fixed voltage by a supply: it carries power, never a signal. */
  readonly isRail: readonly boolean[];
  /** Whether a conductor is a rail, or a small resistor joins it to one: what returns to it shares it with others. */
  readonly isCommon: readonly boolean[];
}

/** Up to this resistance a resistor between a rail and something else is a shunt: the other side is a rail too. */
const SHUNT_MOST_OHM = 1;

/** Up to this resistance what a resistor joins to a rail is a common, not a signal (common practice, no source). */
const COMMON_MOST_OHM = 100;

const known = new SharedMemory<Machine["elements"], Conductors>();

/** The conductors of a machine; machines that differ in places alone share them. Another in-line connector makes other `elements`. */
export function conductors(machine: Machine): Conductors {
  const { elements, ends, nets, book } = machine;
  return known.ask(elements, [ends, nets, book.tables.supplies], () => make(machine));
}

/** Numbers points as they are named, and joins them. */
class Joining {
  readonly index = new Map<string, number>();
  /** Numbers of joined points, two by two. */
  readonly #pairs: number[] = [];

  at(pointId: string): number {
    const known = this.index.get(pointId);
    if (known !== undefined) return known;
    this.index.set(pointId, this.index.size);
    return this.index.size - 1;
  }

  join(a: string, b: string): void {
    this.#pairs.push(this.at(a), this.at(b));
  }

  /** Conductor of every point, numbered from 0. */
  conductors(): { readonly of: ReadonlyMap<string, number>; readonly count: number } {
    const sets = new UnionFind(this.index.size);
    for (let i = 0; i < this.#pairs.length; i += 2) sets.join(this.#pairs[i] ?? 0, this.#pairs[i + 1] ?? 0);
    const numbers = new Int32Array(this.index.size).fill(-1);
    let count = 0;
    const of = new Map<string, number>();
    for (const [pointId, i] of this.index) {
      const root = sets.find(i);
      if ((numbers[root] ?? -1) < 0) numbers[root] = count++;
      of.set(pointId, numbers[root] ?? 0);
    }
    return { of, count };
  }
}

function make(machine: Machine): Conductors {
  const joining = new Joining();
  const firstOfNet = new Map<string, string>();
  for (const { point, net } of machine.ends) {
    if (!machine.points.has(point) || !machine.nets.has(net)) continue;
    const first = firstOfNet.get(net);
    if (first === undefined) {
      firstOfNet.set(net, point);
      joining.at(point);
    } else joining.join(first, point);
  }
  for (const landing of machine.landings.values())
    if (landing.half === "a")
      for (const pointId of landing.pointIds) {
        const mate = `${landing.itemId}:b.${pointId.slice(landing.id.length + 1)}`;
        if (joining.index.has(pointId) || joining.index.has(mate)) joining.join(pointId, mate);
      }
  for (const { row, fromPointId, toPointId } of machine.elements)
    if (row.kind === "link") joining.join(fromPointId, toPointId);
    else {
      joining.at(fromPointId);
      joining.at(toPointId);
    }
  const { of, count } = joining.conductors();
  const terminals = terminalsOf(machine, of, count);
  const isRail = railsOf(machine, of, terminals);
  return { of, terminals, nets: netsOf(machine, of, count), isRail, isCommon: commonsOf(terminals, isRail) };
}

function terminalsOf(machine: Machine, of: Conductors["of"], count: number): Terminal[][] {
  const terminals: Terminal[][] = Array.from({ length: count }, () => []);
  for (const element of machine.elements) {
    if (element.row.kind === "link") continue;
    const from = of.get(element.fromPointId) ?? 0;
    const to = of.get(element.toPointId) ?? 0;
    terminals[from]?.push({ element, end: "from", pointId: element.fromPointId, other: to });
    terminals[to]?.push({ element, end: "to", pointId: element.toPointId, other: from });
  }
  return terminals;
}

/** Nets of each conductor; the ends of a machine are sorted by net. */
function netsOf(machine: Machine, of: Conductors["of"], count: number): BookRow<"nets">[][] {
  const nets: BookRow<"nets">[][] = Array.from({ length: count }, () => []);
  for (const { point, net } of machine.ends) {
    const own = nets[of.get(point) ?? -1];
    const row = machine.nets.get(net);
    if (own !== undefined && row !== undefined && own.at(-1) !== row) own.push(row);
  }
  return nets;
}

/**
 * Rails: both sides of every source and supply, what a board itself is fed by, and on from there through fuses and
 * shunts. A load of a board counts, a load that is a device does not: a driver may switch it.
 */
function railsOf(
  machine: Machine,
  of: Conductors["of"],
  terminals: readonly (readonly Terminal[])[],
): boolean[] {
  const isRail = new Array<boolean>(terminals.length).fill(false);
  const queue: number[] = [];
  const mark = (at: number | undefined): void => {
    if (at === undefined || isRail[at] !== false) return;
    isRail[at] = true;
    queue.push(at);
  };
  for (const { row, fromPointId, toPointId } of machine.elements)
    if (row.kind === "source" || (row.kind === "load" && row.board_type !== null)) {
      mark(of.get(fromPointId));
      mark(of.get(toPointId));
    }
  for (const { positive, negative } of machine.book.tables.supplies) {
    mark(of.get(positive ?? ""));
    mark(of.get(negative ?? ""));
  }
  for (let at = queue.pop(); at !== undefined; at = queue.pop())
    for (const { element, other } of terminals[at] ?? []) {
      const { kind, ohm } = element.row;
      if (kind === "fuse" || (kind === "resistor" && ohm !== null && ohm <= SHUNT_MOST_OHM)) mark(other);
    }
  return isRail;
}

const commonsOf = (
  terminals: readonly (readonly Terminal[])[],
  isRail: readonly boolean[],
): readonly boolean[] =>
  terminals.map(
    (list, at) =>
      isRail[at] === true ||
      list.some(
        ({ element: { row }, other }) =>
          row.kind === "resistor" && row.ohm !== null && row.ohm <= COMMON_MOST_OHM && isRail[other] === true,
      ),
  );
