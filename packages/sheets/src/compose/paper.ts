import { box } from "./draw.ts";
import type { Box } from "./mark.ts";

/** Extent of a page. */
export interface Paper {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** ISO 216 sizes that a shop's printer takes. */
export const PAPERS = {
  "a4-portrait": { widthMm: 210, heightMm: 297 },
  "a4-landscape": { widthMm: 297, heightMm: 210 },
  "a3-landscape": { widthMm: 420, heightMm: 297 },
  "a3-portrait": { widthMm: 297, heightMm: 420 },
} as const satisfies Readonly<Record<string, Paper>>;

export type PaperName = keyof typeof PAPERS;

/** ISO 5457: a filing margin of 20 mm at the left, 10 mm at the other edges. */
export const MARGIN_MM = { left: 20, other: 10 } as const;

/** The frame of a page. */
export function frameOf(paper: Paper): Box {
  const { left, other } = MARGIN_MM;
  return box(left, other, paper.widthMm - left - other, paper.heightMm - 2 * other);
}
