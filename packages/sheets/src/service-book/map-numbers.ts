import { at, box } from "../compose/draw.ts";
import type { LabelPlace } from "../compose/label.ts";
import type { Box, PagePoint } from "../compose/mark.ts";

/** Radius of the dot of something that is too small for its outline. */
export const DOT_MM = 0.6;

/** Box of an outline on paper. */
export function outlineOf(ring: readonly PagePoint[]): Box {
  const [xs, ys] = [ring.map((p) => p.xMm), ring.map((p) => p.yMm)];
  const [xMm, yMm] = [Math.min(...xs), Math.min(...ys)];
  return box(xMm, yMm, Math.max(...xs) - xMm, Math.max(...ys) - yMm);
}

/** Box of a dot. */
export const dotBox = (target: PagePoint): Box =>
  box(target.xMm - DOT_MM, target.yMm - DOT_MM, 2 * DOT_MM, 2 * DOT_MM);

/** Places of a number close round its dot: right and left first. */
export const roundDot =
  (target: PagePoint) =>
  ({ widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number }): readonly LabelPlace[] => {
    const x = DOT_MM + 0.7 + widthMm / 2;
    const y = DOT_MM + 0.3 + heightMm / 2;
    return (
      [
        [x, 0],
        [-x, 0],
        [0, -y],
        [0, y],
        [x * 0.8, -y * 0.8],
        [-x * 0.8, -y * 0.8],
        [x * 0.8, y * 0.8],
        [-x * 0.8, y * 0.8],
      ] as const
    ).map(([dx, dy], i) => ({ middle: at(target.xMm + dx, target.yMm + dy), turnDeg: 0, cost: i / 10 }));
  };

/** Places of a number in the middle of its outline, where it fits, else close round it. */
export const inOutline =
  ({ xMm, yMm, widthMm: ownX, heightMm: ownY }: Box) =>
  ({ widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number }): readonly LabelPlace[] => {
    const x = ownX / 2 + 0.7 + widthMm / 2;
    const y = ownY / 2 + 0.3 + heightMm / 2;
    const isRoomy = ownX >= widthMm + 1 && ownY >= heightMm + 0.6;
    return [
      ...(isRoomy ? ([[0, 0]] as const) : []),
      ...([
        [x, 0],
        [-x, 0],
        [0, -y],
        [0, y],
        [x, -y],
        [-x, -y],
        [x, y],
        [-x, y],
      ] as const),
    ].map(([dx, dy], i) => ({
      middle: at(xMm + ownX / 2 + dx, yMm + ownY / 2 + dy),
      turnDeg: 0,
      cost: i / 10,
    }));
  };
