import type { BookRow } from "@pinwright/book";
import {
  distance,
  fromFrame,
  intersectionRings,
  type PointMm,
  segmentsMeet,
  signedArea,
} from "@pinwright/kernel";
import type { Pinboard } from "../../model/index.ts";
import { checkPinboard } from "../check.ts";
import type { PinboardInput } from "../input.ts";
import { layPinboard } from "../lay.ts";
import { settlePegs } from "../pegs.ts";

/** A choice of the kind `peg`. */
export const choice = (subject: string, value: string, held: "pinned" | "settled"): BookRow<"choices"> => ({
  kind: "peg",
  subject,
  value,
  held,
  by: "",
  reason: "",
  basis: "",
});

/** Every peg of a board, settled where it is. */
export const settled = (board: Pinboard): PinboardInput["pegs"] =>
  new Map(settlePegs(board).map(({ subject, value }) => [subject, choice(subject, value, "settled")]));

/** Rules that find something wrong with the board of an input. */
export const rules = (input: PinboardInput): string[] =>
  checkPinboard(input, layPinboard(input)).map((f) => f.rule);

/** Pairs of branches that meet anywhere but at a node of both, found without the chapter's own code. */
export function crossingsOf(board: Pinboard): number {
  const parts = board.branches.flatMap((branch) =>
    branch.line.slice(1).map((b, i) => ({ id: branch.id, a: branch.line[i] ?? b, b })),
  );
  const same = (p: PointMm, q: PointMm): boolean => distance(p, q) < 1e-3;
  let found = 0;
  parts.forEach((p, i) => {
    for (const q of parts.slice(0, i)) {
      if (same(p.a, q.a) || same(p.a, q.b) || same(p.b, q.a) || same(p.b, q.b)) continue;
      if (segmentsMeet(p, q)) found++;
    }
  });
  return found;
}

/** Pairs of holders whose rectangles share some area, by polygon clipping instead of separating axes. */
export function overlapsOf(board: Pinboard): number {
  const rings = board.holders.map((h) => {
    const frame = { ...h.at, rotationDeg: h.towardDeg + 90 };
    const half = h.widthMm / 2;
    return [
      fromFrame(frame, { xMm: -half, yMm: 0 }),
      fromFrame(frame, { xMm: half, yMm: 0 }),
      fromFrame(frame, { xMm: half, yMm: h.depthMm }),
      fromFrame(frame, { xMm: -half, yMm: h.depthMm }),
    ];
  });
  let found = 0;
  rings.forEach((p, i) => {
    for (const q of rings.slice(0, i)) {
      const shared = intersectionRings([p], [q]).reduce((sum, r) => sum + Math.abs(signedArea(r)), 0);
      if (shared > 0.1) found++;
    }
  });
  return found;
}
