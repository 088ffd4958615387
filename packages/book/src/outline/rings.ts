import { anticlockwise, clockwise, distance, pointInRing, signedArea } from "@pinwright/kernel";
import type { OutlinePoint, Ring } from "./outline.ts";

/** A run of straight pieces as it was drawn. */
export interface DrawnPath {
  readonly points: readonly OutlinePoint[];
  readonly closed: boolean;
}

/** Ends that are this near to each other, in mm, meet. Finer than any tool that cuts from such a drawing. */
export const JOIN_MM = 0.02;

/** Rings of a drawing, and what kept the rest from being rings. */
export interface JoinedRings {
  readonly rings: readonly Ring[];
  readonly problems: readonly string[];
}

const show = (p: OutlinePoint): string =>
  `(${Math.round(p.xMm * 100) / 100}, ${Math.round(p.yMm * 100) / 100})`;

const near = (a: OutlinePoint, b: OutlinePoint): boolean => distance(a, b) <= JOIN_MM;

interface PathEnd {
  readonly path: number;
  readonly atStart: boolean;
  readonly point: OutlinePoint;
}

/** Finds ends near a point: a grid whose cells are as large as the tolerance. */
class EndGrid {
  readonly #cells = new Map<string, PathEnd[]>();

  add(end: PathEnd): void {
    const key = this.#key(end.point, 0, 0);
    this.#cells.set(key, [...(this.#cells.get(key) ?? []), end]);
  }

  near(p: OutlinePoint): PathEnd[] {
    const found: PathEnd[] = [];
    for (const dx of [-1, 0, 1]) {
      for (const dy of [-1, 0, 1]) {
        for (const end of this.#cells.get(this.#key(p, dx, dy)) ?? [])
          if (near(end.point, p)) found.push(end);
      }
    }
    return found;
  }

  #key(p: OutlinePoint, dx: number, dy: number): string {
    return `${Math.floor(p.xMm / JOIN_MM) + dx} ${Math.floor(p.yMm / JOIN_MM) + dy}`;
  }
}

/** Joins open paths end to end. Where more than two ends meet, nothing tells which belong together. */
function joinOpen(paths: readonly DrawnPath[]): { closed: OutlinePoint[][]; problems: string[] } {
  const grid = new EndGrid();
  for (const [path, { points }] of paths.entries()) {
    const [first, last] = [points[0], points[points.length - 1]];
    if (first !== undefined) grid.add({ path, atStart: true, point: first });
    if (last !== undefined) grid.add({ path, atStart: false, point: last });
  }
  const used = new Set<number>();
  const closed: OutlinePoint[][] = [];
  const problems: string[] = [];
  for (const [start, first] of paths.entries()) {
    if (used.has(start)) continue;
    used.add(start);
    const chain = [...first.points];
    const grow = (): boolean => {
      const end = chain[chain.length - 1];
      if (end === undefined) return false;
      const meeting = grid.near(end);
      if (meeting.length > 2)
        problems.push(`${meeting.length} lines meet at ${show(end)}; a ring has two at each corner`);
      const next = meeting.find(({ path }) => !used.has(path));
      if (next === undefined) return false;
      used.add(next.path);
      const points = paths[next.path]?.points ?? [];
      chain.push(...(next.atStart ? points : [...points].reverse()).slice(1));
      return true;
    };
    while (grow());
    const [head, tail] = [chain[0], chain[chain.length - 1]];
    if (head === undefined || tail === undefined) continue;
    if (!near(head, tail)) {
      chain.reverse();
      while (grow());
    }
    const [a, b] = [chain[0], chain[chain.length - 1]];
    if (a !== undefined && b !== undefined && chain.length > 2 && near(a, b)) closed.push(chain);
    else if (a !== undefined && b !== undefined) {
      problems.push(`a line from ${show(a)} to ${show(b)} is not part of a closed ring; close the gap`);
    }
  }
  return { closed, problems: [...new Set(problems)] };
}

/** Nanometres: the noise of converting units goes, and nothing else does. */
const toNanometre = (mm: number): number => Math.round(mm * 1e6) / 1e6 + 0;

/** A closed run without repeated corners. */
function cleanRing(points: readonly OutlinePoint[]): OutlinePoint[] {
  const ring: OutlinePoint[] = [];
  for (const { xMm, yMm } of points) {
    const p = { xMm: toNanometre(xMm), yMm: toNanometre(yMm) };
    const last = ring[ring.length - 1];
    if (last === undefined || distance(p, last) > 1e-6) ring.push(p);
  }
  for (let last = ring[ring.length - 1], first = ring[0]; ring.length > 1; last = ring[ring.length - 1]) {
    if (first === undefined || last === undefined || !near(first, last)) break;
    ring.pop();
  }
  return ring;
}

/**
 * Joins what was drawn into rings, outer ones anticlockwise and holes clockwise. A ring that lies inside an
 * odd number of others is a hole.
 */
export function joinRings(paths: readonly DrawnPath[]): JoinedRings {
  const open = paths.filter((path) => !path.closed && path.points.length > 1);
  const { closed, problems } = joinOpen(open);
  const drawn = [...paths.filter((path) => path.closed).map((path) => path.points), ...closed];
  const rings = drawn.map(cleanRing).filter((ring) => ring.length >= 3 && Math.abs(signedArea(ring)) > 1e-6);
  return { rings: orient(rings), problems };
}

/** Turns every ring the right way; outer rings come first, larger ones before smaller ones. */
function orient(rings: readonly OutlinePoint[][]): Ring[] {
  const turned = rings.map((ring, i) => {
    const [corner] = ring;
    const around = rings.filter(
      (other, k) => k !== i && corner !== undefined && pointInRing(corner, other) === "inside",
    ).length;
    const isHole = around % 2 === 1;
    return isHole ? clockwise(ring) : anticlockwise(ring);
  });
  return turned.sort((a, b) => signedArea(b) - signedArea(a));
}
