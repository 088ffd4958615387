import type { TreeBranch, TreeHolder } from "./tree.ts";

/**
 * An area that no board of these holders and branches can do without, mm². With w and h the extents of all that
 * stands on the board and m the margin, the board is (w + 2m)(h + 2m). Three things hold:
 *
 * - Holders keep r = `roomMm` apart, so each grown by half of it (its corners rounded) is apart from the others
 *   and within the extents grown as much: (w + r)(h + r) ≥ G = Σ(ab + (a + b) r + πr²/4). For a given product a
 *   sum is least when both are equal, so with r ≤ 2m the board is at least (√G − r + 2m)².
 * - A holder fits within the extents at whatever angle: w and h are at least its shorter side.
 * - A branch that must be straight is no longer than the diagonal: w + h ≥ √(w² + h²) ≥ l.
 */
export function leastAreaMm2(
  holders: readonly TreeHolder[],
  branches: readonly TreeBranch[],
  roomMm: number,
  marginMm: number,
): number {
  const room = Math.min(roomMm, 2 * marginMm);
  const grown = holders.reduce(
    (sum, { widthMm: a, depthMm: b }) => sum + a * b + (a + b) * room + (Math.PI * room * room) / 4,
    0,
  );
  const square = Math.max(0, Math.sqrt(grown) - room);
  const shortest = holders.reduce((most, h) => Math.max(most, Math.min(h.widthMm, h.depthMm)), 0);
  const straight = branches.reduce((most, b) => (b.straight ? Math.max(most, b.lengthMm) : most), 0);
  const side = Math.max(square, shortest);
  const bySquare = (side + 2 * marginMm) ** 2;
  const byStraight = shortest * shortest + 2 * marginMm * straight + 4 * marginMm * marginMm;
  return Math.max(bySquare, byStraight);
}
