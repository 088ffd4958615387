import type {
  Anchor,
  Box,
  GroupMark,
  Ink,
  Layer,
  LineMark,
  Mark,
  PagePoint,
  PolylineMark,
  RectMark,
  Stroke,
  TextMark,
  Weight,
} from "./mark.ts";

/** Line widths of ISO 128-2 that the sheets use. */
export const LINE = { hair: 0.13, thin: 0.18, medium: 0.25, strong: 0.35, bold: 0.5, frame: 0.7 } as const;

/** Lettering heights of ISO 3098 that the sheets use; nothing is smaller than `small`. */
export const TEXT = { small: 1.8, normal: 2.5, large: 3.5, head: 5, huge: 7 } as const;

export const stroke = (ink: Ink, widthMm: number, dashMm?: readonly number[]): Stroke =>
  dashMm === undefined ? { ink, widthMm } : { ink, widthMm, dashMm };

export const at = (xMm: number, yMm: number): PagePoint => ({ xMm, yMm });

export const box = (xMm: number, yMm: number, widthMm: number, heightMm: number): Box => ({
  xMm,
  yMm,
  widthMm,
  heightMm,
});

export const line = (
  from: PagePoint,
  to: PagePoint,
  pen: Stroke = stroke("ink", LINE.thin),
  layer: Layer = "BORDER",
): LineMark => ({ kind: "line", from, to, stroke: pen, layer });

export const polyline = (
  points: readonly PagePoint[],
  pen: Stroke = stroke("ink", LINE.thin),
  layer: Layer = "BORDER",
): PolylineMark => ({ kind: "polyline", points, stroke: pen, layer });

export const rect = (
  b: Box,
  pen: Stroke | null = stroke("ink", LINE.thin),
  fill: Ink | null = null,
  layer: Layer = "BORDER",
): RectMark => ({ kind: "rect", box: b, stroke: pen, fill, layer });

export interface TextStyle {
  readonly heightMm?: number;
  readonly weight?: Weight;
  readonly ink?: Ink;
  readonly anchor?: Anchor;
  readonly turnDeg?: number;
  readonly layer?: Layer;
}

export const write = (text: string, where: PagePoint, style: TextStyle = {}): TextMark => ({
  kind: "text",
  text,
  at: where,
  heightMm: style.heightMm ?? TEXT.normal,
  weight: style.weight ?? "regular",
  ink: style.ink ?? "ink",
  anchor: style.anchor ?? "start",
  turnDeg: style.turnDeg ?? 0,
  layer: style.layer ?? "TEXT",
});

export const group = (marks: readonly Mark[], dxMm = 0, dyMm = 0, clip: Box | null = null): GroupMark => ({
  kind: "group",
  marks,
  dxMm,
  dyMm,
  clip,
  part: "body",
});

/** Marks that the body hash leaves out: date, sheet count, code. */
export const changing = (marks: readonly Mark[]): GroupMark => ({
  kind: "group",
  marks,
  dxMm: 0,
  dyMm: 0,
  clip: null,
  part: "frame",
});
