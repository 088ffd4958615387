import { intersectionRings, offsetRings, ringDistance, signedArea } from "@pinwright/kernel";
import type { Machine, Solid } from "../../model/index.ts";
import { type ClashSettings, offSide, oneThing } from "./settings.ts";

/** Two solids that stand badly beside or over each other. */
export interface Contact {
  readonly rule: "solids-clash" | "board-over";
  /** The board, for `board-over`. */
  readonly a: Solid;
  readonly b: Solid;
  /** Area that they share in plan, over heights that they share; 0 when they do not. */
  readonly overlapMm2: number;
  /** Room between them; less than 0: so much less than none. */
  readonly gapMm: number;
  readonly wantedMm: number;
}

/** What a pair is judged by. */
export interface ContactContext {
  readonly items: Machine["items"];
  readonly panels: Machine["panels"];
  readonly settings: ClashSettings;
  /** Items that carry current: they must not even touch. */
  readonly electric: ReadonlySet<string>;
}

/** Things that lie on each other may share this much height by rounding, mm. */
const STACK_MM = 0.05;
/** A drawn touch is never exact: nearer than this is a touch, mm. */
const TOUCH_MM = 0.05;

/**
 * How two solids on one panel get in each other's way; null when they do not. What stands still may touch, as walls
 * do in their joints, and a drawing may overlap by less than the clearance in doing so; two things that carry current
 * may not. What moves needs its clearance on all sides.
 */
export function contactOf(a: Solid, b: Solid, context: ContactContext): Contact | null {
  const { settings } = context;
  const apartMm = Math.max(a.lowMm, b.lowMm) - Math.min(a.highMm, b.highMm);
  if (apartMm >= Math.max(settings.boardMm, settings.movingMm)) return null;
  const moves = a.moves || b.moves;
  const boards = a.kind === "board" || b.kind === "board";
  if (!boards && apartMm >= (moves ? settings.movingMm : -STACK_MM)) return null;
  if (bothInWood(a, b) || oneThing(context.items, a, b)) return null;
  const distanceMm = ringDistance(a.ring, b.ring, moves ? settings.movingMm : settings.solidsMm);
  if (boards && distanceMm === 0) {
    const over = boardOver(a, b, context) ?? boardOver(b, a, context);
    if (over !== null) return over;
  }
  return besideEachOther(a, b, { distanceMm, apartMm, moves }, context);
}

/** Two screws in the wood are the matter of how screws fit. */
const bothInWood = (a: Solid, b: Solid): boolean =>
  a.kind === "fastener" && b.kind === "fastener" && (a.id.endsWith("#shank") || b.id.endsWith("#shank"));

interface Apart {
  readonly distanceMm: number;
  readonly apartMm: number;
  readonly moves: boolean;
}

function besideEachOther(
  a: Solid,
  b: Solid,
  { distanceMm, apartMm, moves }: Apart,
  { settings, electric }: ContactContext,
): Contact | null {
  const wantedMm = moves ? settings.movingMm : settings.solidsMm;
  if (distanceMm >= wantedMm - TOUCH_MM / 10 || apartMm >= (moves ? wantedMm : -STACK_MM)) return null;
  const contact = { rule: "solids-clash", a, b, wantedMm } as const;
  if (distanceMm === 0 && apartMm < 0) {
    const overlapMm2 = overlapOf(a, b, moves ? 0 : settings.solidsMm);
    if (overlapMm2 > 0) return { ...contact, overlapMm2, gapMm: 0 };
  }
  const mayTouch = !moves && !(electric.has(a.itemId) && electric.has(b.itemId));
  if (mayTouch && distanceMm <= TOUCH_MM) return null;
  return { ...contact, overlapMm2: 0, gapMm: Math.max(distanceMm, apartMm, 0) };
}

/** Area in plan that two solids share, mm²; 0 when it is nowhere wider than `jointMm`. */
function overlapOf(a: Solid, b: Solid, jointMm: number): number {
  const shared = intersectionRings([a.ring], [b.ring]);
  if (jointMm > 0 && offsetRings(shared, -jointMm / 2, "miter").length === 0) return 0;
  return shared.reduce((sum, ring) => sum + signedArea(ring), 0);
}

/** A board over something that stands on or comes through its side of the panel and is too tall for it. */
function boardOver(board: Solid, thing: Solid, { panels, settings }: ContactContext): Contact | null {
  if (board.kind !== "board") return null;
  const thicknessMm = panels.get(board.panelId)?.thickness_mm ?? 0;
  const own = offSide(board, board.side, thicknessMm);
  const other = offSide(thing, board.side, thicknessMm);
  const wantedMm = thing.moves ? Math.max(settings.boardMm, settings.movingMm) : settings.boardMm;
  const gapMm = own.fromMm - other.toMm;
  if (other.toMm <= 0 || other.fromMm >= own.fromMm || gapMm >= wantedMm - STACK_MM) return null;
  const overlapMm2 = overlapOf(board, thing, settings.solidsMm);
  return overlapMm2 > 0 ? { rule: "board-over", a: board, b: thing, overlapMm2, gapMm, wantedMm } : null;
}
