import type { Machine } from "@pinwright/engine";
import { boxesOverlap, boxOf, growBox, intersectionRings, type PointMm, signedArea } from "@pinwright/kernel";
import { type Body, bodiesAbove } from "./bodies.ts";

export const BALL_MM = 27;

/** Parts that are hung so that a ball pushes them aside. */
const SWINGING: ReadonlySet<string> = new Set(["dt.swing-plate", "dt.swing-wire"]);

/** What is this low, a ball rolls over: switch wires, screw heads. */
const ROLLED_OVER_MM = 5;

const typeOf = (body: Body): string => body.item.type.id;

/** What a ball on the playing surface runs against. */
export const obstacles = (machine: Machine): Body[] =>
  bodiesAbove(machine, "playfield").filter(
    (body) => body.fromMm < BALL_MM && body.toMm > ROLLED_OVER_MM && !SWINGING.has(typeOf(body)),
  );

const isHollow = (body: Body): boolean => body.id.startsWith("tp.rubber-");
const isWall = (body: Body): boolean => body.id.startsWith("tp.");
const fitsInHollow = (body: Body): boolean =>
  body.item.kind === "fastener" || /^dt\.(lamp|flasher|sling-leaf|rebound-leaf)/.test(typeOf(body));

/** Walls meet in joints of this area at most, mm². */
const JOINT_MM2 = 60;

export interface Clash {
  readonly a: string;
  readonly b: string;
  readonly areaMm2: number;
}

const sharedArea = (a: readonly PointMm[], b: readonly PointMm[]): number =>
  intersectionRings([a], [b]).reduce((sum, ring) => sum + signedArea(ring), 0);

/** Pairs of bodies that would fill the same space, with more than a touch in common. */
export function clashes(
  bodies: readonly Body[],
  allowed: (a: Body, b: Body, areaMm2: number) => boolean,
): Clash[] {
  const boxes = bodies.map((body) => boxOf(body.ring));
  const found: Clash[] = [];
  bodies.forEach((a, i) => {
    const boxA = boxes[i];
    if (boxA === null || boxA === undefined) return;
    bodies.slice(i + 1).forEach((b, j) => {
      const boxB = boxes[i + 1 + j];
      if (boxB === null || boxB === undefined) return;
      if (Math.min(a.toMm, b.toMm) - Math.max(a.fromMm, b.fromMm) < 0.01) return;
      if (!boxesOverlap(growBox(boxA, -0.1), growBox(boxB, -0.1))) return;
      const areaMm2 = sharedArea(a.ring, b.ring);
      if (areaMm2 > 0.5 && !allowed(a, b, areaMm2))
        found.push({ a: a.id, b: b.id, areaMm2: Math.round(areaMm2) });
    });
  });
  return found;
}

export const ownerOf = (body: Body): string =>
  body.item.parentId ?? (body.item.kind === "fastener" ? body.item.holds : null) ?? body.id;

/** What may share space above the playfield: joints of walls, what stands in a rubber ring, parts of one thing. */
export const allowedAbove = (a: Body, b: Body, areaMm2: number): boolean =>
  (isWall(a) && isWall(b) && areaMm2 <= JOINT_MM2) ||
  (isHollow(a) && fitsInHollow(b)) ||
  (isHollow(b) && fitsInHollow(a)) ||
  ownerOf(a) === ownerOf(b);
