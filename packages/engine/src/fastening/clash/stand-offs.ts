import { distance, type PointMm, roundTo } from "@pinwright/kernel";
import {
  type BoardItem,
  type FastenerItem,
  type Finding,
  faceX,
  makeFinding,
  placed,
} from "../../model/index.ts";

/** A stand-off whose middle is nearer to its hole than this goes through it: common practice, no source. */
const HOLE_MM = 0.5;
/** Heights of stand-offs that are taken for equal, mm. */
const HEIGHT_MM = 0.1;

/** Fixing holes of a board type in its own frame, in their order; what is not `x,y` in mm is passed over. */
export function boardHoles(text: string): readonly PointMm[] {
  return text.split(" ").flatMap((pair) => {
    const [x, y, ...more] = pair.split(",").map((part) => (part === "" ? Number.NaN : Number(part)));
    if (x === undefined || y === undefined || more.length > 0) return [];
    return Number.isFinite(x) && Number.isFinite(y) ? [{ xMm: x, yMm: y }] : [];
  });
}

/** Stand-offs of a board against its fixing holes and its height. */
export function checkStandOffs(board: BoardItem, standOffs: readonly FastenerItem[]): readonly Finding[] {
  const { place, type } = board;
  const findings: Finding[] = [];
  boardHoles(type.holes).forEach((hole, i) => {
    const at = placed(place, faceX(place.side, hole.xMm, type.width_mm / 2), hole.yMm);
    if (standOffs.some((s) => distance(s.place, at) <= HOLE_MM)) return;
    const numbers = { hole: i + 1, x_mm: roundTo(at.xMm, 0.1), y_mm: roundTo(at.yMm, 0.1) };
    findings.push(makeFinding("standoff-missing", "error", [board.id], numbers));
  });
  for (const standOff of standOffs) {
    const heightMm = standOff.type.head_height_mm;
    if (heightMm === null || Math.abs(heightMm - type.standoff_mm) <= HEIGHT_MM) continue;
    const numbers = { height_mm: heightMm, wanted_mm: type.standoff_mm };
    findings.push(makeFinding("standoff-height", "error", [standOff.id, board.id], numbers));
  }
  return findings;
}
