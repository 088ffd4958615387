import {
  compareText,
  convexOverlap,
  intersectionRings,
  isConvex,
  type RingMm,
  SharedMemory,
  signedArea,
} from "@pinwright/kernel";
import type { Machine, Solid } from "../../model/index.ts";
import type { Solids } from "../solids/solids-solver.ts";
import { solidIndexOf } from "../solids/solids-solver.ts";
import { heightsOver } from "./heads.ts";
import { unitOf } from "./units.ts";

/** By item: the items that lie over it on the side that both are fixed to, in code-point order. */
export type LiesOver = ReadonlyMap<string, readonly string[]>;

/** Lapping over by less than this hinders nobody: common practice, no source. */
const LEAST_MM2 = 4;
/** What begins this little below another's top still lies on it: common practice, no source. */
const SUNK_MM = 0.5;

/** Items that lie over one that is put in by itself, in code-point order of their ids. */
export function overItem(machine: Machine, itemId: string, solids: Solids): readonly string[] {
  if (unitOf(machine, itemId) !== itemId) return [];
  const index = solidIndexOf(solids);
  const found = new Set<string>();
  for (const lower of solids.get(itemId) ?? [])
    for (const upper of index.near(lower.panelId, lower.box)) {
      if (
        upper.kind === "fastener" ||
        upper.kind === "inline" ||
        upper.itemId === itemId ||
        found.has(upper.itemId)
      )
        continue;
      if (isOver(machine, upper, lower)) found.add(upper.itemId);
    }
  return [...found].sort(compareText);
}

function isOver({ panels }: Machine, upper: Solid, lower: Solid): boolean {
  const { side, panelId } = lower;
  if (lower.kind === "inline") return false;
  if (upper.side !== side || upper.panelId !== panelId) return false;
  const thicknessMm = panels.get(panelId)?.thickness_mm ?? 0;
  const [, topMm] = heightsOver(lower, side, thicknessMm);
  const [lowMm] = heightsOver(upper, side, thicknessMm);
  if (topMm <= 0 || lowMm < topMm - SUNK_MM) return false;
  return laps(upper, lower);
}

const lapping = new SharedMemory<Solid, WeakMap<Solid, boolean>>();

/** Whether two solids share more than a corner of their areas; known for as long as both are the same. */
function laps(upper: Solid, lower: Solid): boolean {
  const [a, b] = [upper.box, lower.box];
  const widthMm = Math.min(a.maxXMm, b.maxXMm) - Math.max(a.minXMm, b.minXMm);
  const depthMm = Math.min(a.maxYMm, b.maxYMm) - Math.max(a.minYMm, b.minYMm);
  if (widthMm <= 0 || depthMm <= 0 || widthMm * depthMm < LEAST_MM2) return false;
  const own = lapping.ask(lower, [], () => new WeakMap());
  const found = own.get(upper);
  if (found !== undefined) return found;
  const isLapping = sharedMm2(upper.ring, lower.ring) >= LEAST_MM2;
  own.set(upper, isLapping);
  return isLapping;
}

/** Area that two rings share, both running anticlockwise as those of solids do. Most things are boxes and discs. */
const sharedMm2 = (a: RingMm, b: RingMm): number =>
  isConvex(a) && isConvex(b)
    ? signedArea(convexOverlap(a, b))
    : intersectionRings([a], [b]).reduce((sum, ring) => sum + signedArea(ring), 0);

const known = new SharedMemory<Solids, LiesOver>();

/** What lies over what, from nothing but the solids; at hand where an `AccessSolver` has seen the same solids. */
export const liesOver = (machine: Machine, solids: Solids): LiesOver =>
  shareLiesOver(machine, solids, () => {
    const over = new Map<string, readonly string[]>();
    for (const id of solids.keys()) {
      const uppers = overItem(machine, id, solids);
      if (uppers.length > 0) over.set(id, uppers);
    }
    return over;
  });

/** Keeps what lies over what beside the solids themselves. */
export const shareLiesOver = (machine: Machine, solids: Solids, find: () => LiesOver): LiesOver =>
  known.ask(solids, [machine.panels, machine.items], find);
