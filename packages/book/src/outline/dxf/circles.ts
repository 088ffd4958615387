import { LIMITS } from "../../limits.ts";
import { type DxfEntity, numberOf, numbersOf } from "./groups.ts";
import { type DrawingProblem, type Placed, walkDxf } from "./walk.ts";

/** A circle of a drawing, in mm. */
export interface DrawnCircle {
  readonly xMm: number;
  readonly yMm: number;
  readonly diameterMm: number;
  readonly layer: string;
}

/** The circles of a drawing, and what in it could not be used. */
export interface DrawnCircles {
  readonly circles: readonly DrawnCircle[];
  readonly problems: readonly DrawingProblem[];
}

interface Round {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Centre and radius of an entity in its own units, or null when it is no circle. */
function roundOf(entity: DxfEntity): Round | null {
  if (entity.type === "CIRCLE") {
    return { x: numberOf(entity, 10, 0), y: numberOf(entity, 20, 0), radius: numberOf(entity, 40, 0) };
  }
  if (entity.type !== "LWPOLYLINE" || (numberOf(entity, 70, 0) & 1) !== 1) return null;
  // Two corners joined by two half circles, which some programs draw instead of a circle.
  const [xs, ys, bulges] = [numbersOf(entity, 10), numbersOf(entity, 20), numbersOf(entity, 42)];
  const [x1 = 0, x2 = 0] = xs;
  const [y1 = 0, y2 = 0] = ys;
  const isRound =
    xs.length === 2 && bulges.length === 2 && bulges[0] === bulges[1] && Math.abs(bulges[0] ?? 0) === 1;
  return isRound ? { x: (x1 + x2) / 2, y: (y1 + y2) / 2, radius: Math.hypot(x2 - x1, y2 - y1) / 2 } : null;
}

/** Micrometres are finer than anything that is drilled from such a drawing. */
const rounded = (mm: number): number => Math.round(mm * 1000) / 1000 + 0;

function placedCircle({ entity, layer, mmPerUnit, move }: Placed): DrawnCircle | string | null {
  const round = roundOf(entity);
  if (round === null) return null;
  if (!(round.radius > 0)) return "has no radius";
  const place = move();
  if (place === null) return null;
  const [xMm, yMm] = [round.x * mmPerUnit, round.y * mmPerUnit];
  const center = place({ xMm, yMm });
  // Blocks are scaled alike in x and y, so that any point of the rim tells the radius.
  const rim = place({ xMm: xMm + round.radius * mmPerUnit, yMm });
  const diameterMm = 2 * Math.hypot(rim.xMm - center.xMm, rim.yMm - center.yMm);
  if (![center.xMm, center.yMm, diameterMm].every(Number.isFinite)) return "has no finite coordinates";
  return {
    xMm: rounded(center.xMm),
    yMm: rounded(center.yMm),
    diameterMm: rounded(diameterMm),
    layer: layer.slice(0, LIMITS.idChars),
  };
}

/**
 * The circles of a DXF drawing, those of inserted blocks included, in the order of the file; to become places of
 * fasteners or waypoints. A circle that is drawn twice in the same place and layer counts once.
 */
export function circlesOf(text: string): DrawnCircles {
  const circles = new Map<string, DrawnCircle>();
  const problems: DrawingProblem[] = [];
  let tooMany = false;
  const walked = walkDxf(text, (placed) => {
    const circle = placedCircle(placed);
    if (typeof circle === "string") {
      problems.push({
        text: `a circle; this ${placed.entity.type} ${circle} and is not read`,
        line: placed.entity.line,
      });
    } else if (circle !== null) {
      if (circles.size < LIMITS.outlinePoints) circles.set(JSON.stringify(circle), circle);
      else tooMany = true;
    }
  });
  if (tooMany) problems.push({ text: `at most ${LIMITS.outlinePoints} circles`, line: null });
  return { circles: [...circles.values()], problems: [...walked, ...problems] };
}
