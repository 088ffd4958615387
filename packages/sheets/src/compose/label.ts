import { at, LINE, line, stroke, write } from "./draw.ts";
import type { Ink, Layer, Mark, PagePoint, Weight } from "./mark.ts";
import { offset } from "./plane.ts";
import { leadingMm, textWidthMm } from "./text.ts";

/** White space that a label keeps round itself. */
export const PAD_MM = 0.5;

export interface LabelLine {
  readonly text: string;
  readonly heightMm: number;
  readonly weight?: Weight;
  readonly ink?: Ink;
}

/** A sign that stands at the left of a label's lines. */
export interface LabelSign {
  readonly sizeMm: number;
  /** Marks of the sign about its middle. */
  readonly marks: (middle: PagePoint) => readonly Mark[];
}

/** Between a sign and the lines beside it. */
const SIGN_GAP_MM = 0.7;

/** A place where a label would like to stand: the middle of its block and its turn. The lower cost wins. */
export interface LabelPlace {
  readonly middle: PagePoint;
  readonly turnDeg: number;
  readonly cost: number;
}

const signMm = (sign: LabelSign | undefined): number => (sign === undefined ? 0 : sign.sizeMm + SIGN_GAP_MM);

/** Size of a block of lines, with a sign at its left. */
export function blockSize(
  lines: readonly LabelLine[],
  sign?: LabelSign,
): { widthMm: number; heightMm: number } {
  const widthMm = Math.max(0, ...lines.map((l) => textWidthMm(l.text, l.heightMm, l.weight ?? "regular")));
  const heightMm = lines.reduce((sum, l) => sum + leadingMm(l.heightMm), 0);
  return { widthMm: widthMm + signMm(sign), heightMm: Math.max(heightMm, sign?.sizeMm ?? 0) };
}

/** Marks of a block of lines about its middle; a block with a sign is not turned. */
export function blockMarks(
  lines: readonly LabelLine[],
  size: { widthMm: number; heightMm: number },
  place: LabelPlace,
  layer: Layer,
  sign?: LabelSign,
): Mark[] {
  const linesMm = lines.reduce((sum, l) => sum + leadingMm(l.heightMm), 0);
  let down = -linesMm / 2;
  const aside = signMm(sign) / 2;
  const texts = lines.map((l) => {
    const leading = leadingMm(l.heightMm);
    // The capitals stand in the middle of their line.
    const baseline = down + (leading + l.heightMm) / 2;
    down += leading;
    return write(l.text, offset(place.middle, place.turnDeg, aside, -baseline), {
      heightMm: l.heightMm,
      weight: l.weight ?? "regular",
      ink: l.ink ?? "ink",
      anchor: "middle",
      turnDeg: place.turnDeg,
      layer,
    });
  });
  if (sign === undefined) return texts;
  const left = place.middle.xMm - size.widthMm / 2 + sign.sizeMm / 2;
  return [...sign.marks(at(left, place.middle.yMm)), ...texts];
}

/** Leader from the edge of a block to its target. */
export function leaderMark(
  size: { widthMm: number; heightMm: number },
  place: LabelPlace,
  target: PagePoint,
): Mark {
  const dx = target.xMm - place.middle.xMm;
  const dy = target.yMm - place.middle.yMm;
  const shrink = Math.min(
    dx === 0 ? Number.POSITIVE_INFINITY : (size.widthMm / 2 + PAD_MM) / Math.abs(dx),
    dy === 0 ? Number.POSITIVE_INFINITY : size.heightMm / 2 / Math.abs(dy),
    1,
  );
  return line(
    at(place.middle.xMm + dx * shrink, place.middle.yMm + dy * shrink),
    target,
    stroke("ink", LINE.hair),
    "TEXT",
  );
}
