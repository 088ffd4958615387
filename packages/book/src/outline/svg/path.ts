import { type SVGCommand, SVGPathData } from "svg-pathdata";
import { flattenCubic, flattenEllipse } from "../flatten.ts";
import type { OutlinePoint } from "../outline.ts";
import type { DrawnPath } from "../rings.ts";
import { type Affine, movePoint, moveVector } from "./affine.ts";

const RAD = Math.PI / 180;

/**
 * Flattens a path's data (SVG 2, section 9.3) in millimetres. Curves are moved to the outline's frame before
 * they are flattened, so that the tolerance holds there. Throws a `SyntaxError` when the data is malformed.
 */
export function flattenPath(data: string, toMm: Affine): DrawnPath[] {
  const commands = new SVGPathData(data)
    .toAbs()
    .normalizeHVZ(false)
    .normalizeST()
    .qtToC()
    .annotateArcs().commands;
  const paths: DrawnPath[] = [];
  let points: OutlinePoint[] = [];
  let here = { x: 0, y: 0 };
  let start = here;
  const move = (x: number, y: number) => movePoint(toMm, x, y);
  const finish = (closed: boolean) => {
    if (points.length > 1) paths.push({ points, closed });
    points = [];
  };
  for (const command of commands) {
    if (command.type === SVGPathData.CLOSE_PATH) {
      finish(true);
      here = start;
      continue;
    }
    if (command.type === SVGPathData.MOVE_TO) {
      finish(false);
      here = { x: command.x, y: command.y };
      start = here;
      continue;
    }
    if (points.length === 0) points.push(move(here.x, here.y));
    const end = draw(command, here, toMm, points);
    if (end !== null) here = end;
  }
  finish(false);
  return paths;
}

/** Adds what one command draws after the first point; returns where it ends. */
function draw(
  command: SVGCommand,
  here: { readonly x: number; readonly y: number },
  toMm: Affine,
  points: OutlinePoint[],
): { x: number; y: number } | null {
  const move = (x: number, y: number) => movePoint(toMm, x, y);
  switch (command.type) {
    case SVGPathData.LINE_TO:
      points.push(move(command.x, command.y));
      return { x: command.x, y: command.y };
    case SVGPathData.CURVE_TO: {
      const { x1, y1, x2, y2, x, y } = command;
      points.push(...flattenCubic(move(here.x, here.y), move(x1, y1), move(x2, y2), move(x, y)).slice(1));
      return { x, y };
    }
    case SVGPathData.ARC: {
      const { rX, rY, xRot, cX = here.x, cY = here.y, phi1 = 0, phi2 = 0, x, y } = command;
      if (rX === 0 || rY === 0) points.push(move(x, y));
      else {
        const [cos, sin] = [Math.cos(xRot * RAD), Math.sin(xRot * RAD)];
        const major = moveVector(toMm, rX * cos, rX * sin);
        const minor = moveVector(toMm, -rY * sin, rY * cos);
        points.push(...flattenEllipse(move(cX, cY), major, minor, phi1 * RAD, phi2 * RAD).slice(1));
      }
      return { x, y };
    }
    default:
      return null;
  }
}
