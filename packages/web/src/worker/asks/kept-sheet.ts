import { pageSvg, pageTexts } from "@pinwright/sheets";
import type { Model } from "../model.ts";
import { keptPages } from "./overlay.ts";

/** A page of a sheet that a release keeps. */
export interface KeptPage {
  readonly svg: string;
  /** All that is written on it, for searching. */
  readonly text: string;
}

/** Draws the pages of a sheet as a release keeps them. @param kept the sheet as the server sends it */
export function keptSheetPages(
  _model: Model,
  { kept, title }: { readonly kept: string; readonly title: string },
): readonly KeptPage[] {
  return keptPages(kept).map((page) => ({
    svg: pageSvg(page, title),
    text: pageTexts(page)
      .map(({ text }) => text)
      .join(" "),
  }));
}
