import type { SheetDocument } from "../compose/document.ts";
import { pageSvg } from "../svg/svg.ts";
import { renderCsv } from "./csv.ts";
import { renderDxf } from "./dxf.ts";
import { LONGEST_PDF_MM, renderPdf } from "./pdf.ts";
import { renderXlsx } from "./xlsx.ts";

/** Formats that a sheet can be written in. */
export const SHEET_FORMATS = ["pdf", "svg", "dxf", "xlsx", "csv"] as const;
export type SheetFormat = (typeof SHEET_FORMATS)[number];

/**
 * Formats that a sheet has: PDF unless a page is longer than PDF allows, SVG and DXF of a drawing, XLSX and CSV of
 * a list.
 */
export function formatsOf(document: SheetDocument): readonly SheetFormat[] {
  const fits = document.pages.every((p) => Math.max(p.widthMm, p.heightMm) <= LONGEST_PDF_MM);
  return [
    ...(fits ? (["pdf"] as const) : []),
    ...(document.drawing === null ? [] : (["svg", "dxf"] as const)),
    ...(document.grids.length === 0 ? [] : (["xlsx", "csv"] as const)),
  ];
}

/**
 * A sheet as the bytes of a file. SVG is its first page.
 * @throws Error when the sheet has no such format; `formatsOf` tells which it has
 */
export async function renderDocument(document: SheetDocument, format: SheetFormat): Promise<Uint8Array> {
  switch (format) {
    case "pdf":
      return renderPdf(document);
    case "svg": {
      const page = document.pages[0];
      if (page === undefined) throw new Error(`Sheet ${document.id} has no page.`);
      return new TextEncoder().encode(pageSvg(page, document.title));
    }
    case "dxf":
      return renderDxf(document);
    case "xlsx":
      return renderXlsx(document);
    case "csv":
      return renderCsv(document);
  }
}
