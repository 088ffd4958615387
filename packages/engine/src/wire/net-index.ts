import type { BookRow } from "@pinwright/book";
import { compareText, SharedMemory } from "@pinwright/kernel";
import type { Machine } from "../model/index.ts";

type End = BookRow<"ends">;

/** What wiring asks of a machine again and again, gathered once. */
export interface NetIndex {
  readonly endsByNet: ReadonlyMap<string, readonly End[]>;
  readonly endsByHarness: ReadonlyMap<string, readonly End[]>;
  readonly endsByPoint: ReadonlyMap<string, readonly End[]>;
  /** For each point that a link element touches, every point that links join to it, in code-point order. */
  readonly links: ReadonlyMap<string, readonly string[]>;
  /**
   * How near a point, or one that links join to it, is to where a net is fed from: 0 a supply, 1 a driver, 2 an
   * input; absent: none of them.
   */
  readonly feedRank: ReadonlyMap<string, number>;
  /** Ends of a net, nearest to its feed first; filled when a net is first asked for. */
  readonly ranked: Map<string, readonly RankedEnd[]>;
}

/** An end with how near it is to where its net is fed from. */
export interface RankedEnd {
  readonly point: string;
  readonly harness: string;
  readonly rank: number;
}

const indexes = new SharedMemory<Machine["elements"], NetIndex>();

/**
 * The index of a machine. It has nothing to do with where things are, so that machines which differ in places alone
 * share it: `elements` stays the same list for as long as there are the same items of the same types.
 */
export function netIndex(machine: Machine): NetIndex {
  const { elements, ends, nets, book } = machine;
  return indexes.ask(elements, [ends, nets, book.tables.supplies], () => makeIndex(machine));
}

function grouped(ends: readonly End[], by: (end: End) => string): ReadonlyMap<string, readonly End[]> {
  const map = new Map<string, End[]>();
  for (const end of ends) {
    const group = map.get(by(end));
    if (group === undefined) map.set(by(end), [end]);
    else group.push(end);
  }
  return map;
}

function makeIndex(machine: Machine): NetIndex {
  const direct = new Map<string, string[]>();
  const feedRank = new Map<string, number>();
  const rank = (pointId: string | null, value: number): void => {
    if (pointId !== null) feedRank.set(pointId, Math.min(value, feedRank.get(pointId) ?? value));
  };
  const link = (a: string, b: string): void => {
    const mates = direct.get(a);
    if (mates === undefined) direct.set(a, [b]);
    else mates.push(b);
  };
  const ranks: Partial<Record<BookRow<"elements">["kind"], number>> = { source: 0, driver: 1, input: 2 };
  for (const element of machine.elements) {
    if (element.row.kind === "link") {
      link(element.fromPointId, element.toPointId);
      link(element.toPointId, element.fromPointId);
    }
    const value = ranks[element.row.kind];
    if (value === undefined) continue;
    rank(element.fromPointId, value);
    rank(element.toPointId, value);
  }
  for (const supply of machine.book.tables.supplies) {
    rank(supply.positive, 0);
    rank(supply.negative, 0);
  }
  const ends = machine.ends.filter((end) => machine.points.has(end.point) && machine.nets.has(end.net));
  const links = closed(direct);
  for (const group of new Set(links.values())) {
    const ranked = group.flatMap((point) => feedRank.get(point) ?? []);
    if (ranked.length > 0) for (const point of group) feedRank.set(point, Math.min(...ranked));
  }
  return {
    endsByNet: grouped(ends, (end) => end.net),
    endsByHarness: grouped(ends, (end) => end.harness),
    endsByPoint: grouped(ends, (end) => end.point),
    links,
    feedRank,
    ranked: new Map(),
  };
}

/** Every point that links join to this one, itself included, in code-point order. */
export function linkedPoints(index: NetIndex, pointId: string): readonly string[] {
  return index.links.get(pointId) ?? [pointId];
}

/** Whether links join two points inside their item. */
export function areLinked(index: NetIndex, a: string, b: string): boolean {
  return a === b || (index.links.has(a) && index.links.get(a) === index.links.get(b));
}

/** Groups of joined points, each under every one of its points: one list a group, so that `===` means joined. */
function closed(direct: ReadonlyMap<string, readonly string[]>): ReadonlyMap<string, readonly string[]> {
  const groups = new Map<string, readonly string[]>();
  for (const start of direct.keys()) {
    if (groups.has(start)) continue;
    const seen = new Set([start]);
    const todo = [start];
    for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
      for (const mate of direct.get(at) ?? []) {
        if (seen.has(mate)) continue;
        seen.add(mate);
        todo.push(mate);
      }
    }
    const group = [...seen].sort(compareText);
    for (const point of group) groups.set(point, group);
  }
  return groups;
}

/** The point of the other half that mates with a point of an in-line connector; null for any other point. */
export function mateOf(machine: Machine, pointId: string): string | null {
  const point = machine.points.get(pointId);
  const half = point === undefined ? null : (machine.landings.get(point.landingId)?.half ?? null);
  if (point === undefined || half === null) return null;
  return `${point.itemId}:${half === "a" ? "b" : "a"}.${point.pin}`;
}
