import { UnionFind } from "@pinwright/kernel";
import type { JoinedPoints } from "./answer.ts";

/** Which points of a tester are joined; a point in no group stands alone. */
export interface TesterScan {
  /** Points of the tester, numbered from 1. */
  readonly points: number;
  /** Groups of two and more, ascending, in the order of their first points. */
  readonly groups: readonly JoinedPoints[];
}

/** A scan put together of points that were tried one by one. */
export interface TriedScan {
  readonly scan: TesterScan;
  /** Points that were not tried. */
  readonly untried: readonly number[];
  /**
   * Pairs `[a, b]` where the try of a named b, and that of b not a: a contact that comes and goes. They are taken as joined.
   */
  readonly oneSided: readonly (readonly [number, number])[];
}

/** The scan that the answers to `try` of each point make together. */
export function scanOfTries(points: number, tries: ReadonlyMap<number, readonly number[]>): TriedScan {
  const sets = new UnionFind(points + 1);
  const untried: number[] = [];
  const oneSided: [number, number][] = [];
  for (let point = 1; point <= points; point++) {
    const joined = tries.get(point);
    if (joined === undefined) untried.push(point);
    for (const other of joined ?? []) {
      sets.join(point, other);
      if (tries.get(other)?.includes(point) === false) oneSided.push([point, other]);
    }
  }
  const members = new Map<number, number[]>();
  for (let point = 1; point <= points; point++) {
    const root = sets.find(point);
    members.set(root, [...(members.get(root) ?? []), point]);
  }
  return {
    scan: { points, groups: [...members.values()].filter((group) => group.length > 1) },
    untried,
    oneSided,
  };
}
