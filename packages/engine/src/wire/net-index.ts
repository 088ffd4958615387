import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import type { Machine } from "../model/index.ts";

type End = BookRow<"ends">;

/** What wiring asks of a machine again and again, gathered once. */
export interface NetIndex {
  readonly endsByNet: ReadonlyMap<string, readonly End[]>;
  readonly endsByHarness: ReadonlyMap<string, readonly End[]>;
  readonly endsByPoint: ReadonlyMap<string, readonly End[]>;
  /** Points that a link element joins directly to a point. */
  readonly links: ReadonlyMap<string, readonly string[]>;
  /** How near a point is to where a net is fed from: 0 a supply, 1 a driver, 2 an input; absent: none of them. */
  readonly feedRank: ReadonlyMap<string, number>;
}

const indexes = new WeakMap<Machine, NetIndex>();

/** The index of a machine. A machine is never changed, so its index is kept as long as the machine itself. */
export function netIndex(machine: Machine): NetIndex {
  const known = indexes.get(machine);
  if (known !== undefined) return known;
  const made = makeIndex(machine);
  indexes.set(machine, made);
  return made;
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
  const links = new Map<string, string[]>();
  const feedRank = new Map<string, number>();
  const rank = (pointId: string | null, value: number): void => {
    if (pointId !== null) feedRank.set(pointId, Math.min(value, feedRank.get(pointId) ?? value));
  };
  const link = (a: string, b: string): void => {
    const mates = links.get(a);
    if (mates === undefined) links.set(a, [b]);
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
  return {
    endsByNet: grouped(ends, (end) => end.net),
    endsByHarness: grouped(ends, (end) => end.harness),
    endsByPoint: grouped(ends, (end) => end.point),
    links,
    feedRank,
  };
}

/** Every point that links join to this one, itself included, in code-point order. */
export function linkedPoints(index: NetIndex, pointId: string): readonly string[] {
  const seen = new Set([pointId]);
  const todo = [pointId];
  for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
    for (const mate of index.links.get(at) ?? []) {
      if (seen.has(mate)) continue;
      seen.add(mate);
      todo.push(mate);
    }
  }
  return [...seen].sort(compareText);
}

/** The point of the other half that mates with a point of an in-line connector; null for any other point. */
export function mateOf(machine: Machine, pointId: string): string | null {
  const point = machine.points.get(pointId);
  const half = point === undefined ? null : (machine.landings.get(point.landingId)?.half ?? null);
  if (point === undefined || half === null) return null;
  return `${point.itemId}:${half === "a" ? "b" : "a"}.${point.pin}`;
}
