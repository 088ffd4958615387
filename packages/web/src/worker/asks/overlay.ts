import {
  composeSheets,
  type Difference,
  overlaySvg,
  type Page,
  pageDifference,
  SHEET_KINDS,
  USUAL_OPTIONS,
} from "@pinwright/sheets";
import type { Language } from "@pinwright/words";
import type { Model } from "../model.ts";

/** A sheet of one of the sides: its pages as a release keeps them, or the draft's own. */
export type OverlaySide = { readonly kept: string } | "draft" | "none";

/** Old and new of one page laid over each other, as insides of an SVG in millimetres. */
export interface Overlay {
  readonly widthMm: number;
  readonly heightMm: number;
  /** What both have, what only the old one has, what only the new one has. */
  readonly same: string;
  readonly old: string;
  readonly fresh: string;
  /** How many marks differ on each side. */
  readonly oldMarks: number;
  readonly freshMarks: number;
  readonly pages: number;
}

/**
 * Pens of the two sides: vermillion and blue of Okabe and Ito's palette (Color Universal Design, 2008), the old one
 * dashed, so that they stay apart in black and white; what both have is grey.
 */
const PENS = {
  same: { colour: "#8b9297", dashMm: null, leastMm: 0 },
  old: { colour: "#d55e00", dashMm: [1.6, 0.8], leastMm: 0.35 },
  fresh: { colour: "#0072b2", dashMm: null, leastMm: 0.5 },
} as const;

const isPage = (value: unknown): value is Page =>
  typeof value === "object" &&
  value !== null &&
  "marks" in value &&
  Array.isArray(value.marks) &&
  "widthMm" in value &&
  typeof value.widthMm === "number";

/** Pages of a sheet as the server sends it. */
export function keptPages(json: string): readonly Page[] {
  const value: unknown = JSON.parse(json);
  const pages = typeof value === "object" && value !== null && "pages" in value ? value.pages : null;
  if (!Array.isArray(pages)) throw new Error("This is no sheet.");
  return pages.filter(isPage);
}

/** Pages of a sheet of the draft, as it would print now; none when it has no such sheet. */
function draftPages({ line }: Model, sheetId: string, language: Language, date: string): readonly Page[] {
  const kind = SHEET_KINDS.toSorted((a, b) => b.length - a.length).find((one) => sheetId.includes(`.${one}`));
  if (kind === undefined) return [];
  const of = sheetId.slice(0, sheetId.indexOf(`.${kind}`));
  const choice = { kinds: [kind], harnessIds: line.harnesses.has(of) ? [of] : [] };
  const options = { ...USUAL_OPTIONS, language, date };
  for (const { document } of composeSheets(line, options, choice))
    if (document.id === sheetId) return document.pages;
  return [];
}

/** Lays a page of a sheet over the same page of another revision. */
export function overlay(
  model: Model,
  {
    sheetId,
    page,
    before,
    after,
    language,
    date,
  }: {
    readonly sheetId: string;
    /** From 0. */
    readonly page: number;
    readonly before: OverlaySide;
    readonly after: OverlaySide;
    readonly language: Language;
    readonly date: string;
  },
): Overlay {
  const pagesOf = (side: OverlaySide): readonly Page[] =>
    side === "none"
      ? []
      : side === "draft"
        ? draftPages(model, sheetId, language, date)
        : keptPages(side.kept);
  const [was, is] = [pagesOf(before), pagesOf(after)];
  const difference: Difference = pageDifference(was[page] ?? null, is[page] ?? null);
  return {
    widthMm: difference.widthMm,
    heightMm: difference.heightMm,
    same: overlaySvg(difference.same, PENS.same, "s"),
    old: overlaySvg(difference.old, PENS.old, "o"),
    fresh: overlaySvg(difference.fresh, PENS.fresh, "n"),
    oldMarks: difference.old.length,
    freshMarks: difference.fresh.length,
    pages: Math.max(was.length, is.length),
  };
}
