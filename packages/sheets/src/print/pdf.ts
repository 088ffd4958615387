import type { SheetDocument } from "../compose/document.ts";
import { n, PdfResources, POINTS_A_MM, pageContent } from "./pdf-content.ts";
import { PdfFile, type Reference, textString } from "./pdf-file.ts";

/** Longest side of a page without user units: 14 400 points (PDF 1.7, annex C). */
export const LONGEST_PDF_MM = 5080;

/**
 * A sheet as PDF in true size. The date of issue is the only time in it, so the same sheet gives the same bytes.
 * @throws Error when a page is longer than PDF allows
 */
export function renderPdf(document: SheetDocument): Uint8Array {
  for (const { widthMm, heightMm } of document.pages) {
    if (Math.max(widthMm, heightMm) > LONGEST_PDF_MM)
      throw new Error(
        `Sheet ${document.id}: a page of ${widthMm} × ${heightMm} mm does not fit PDF, whose longest side is ${LONGEST_PDF_MM} mm. Print its tiles, or take the SVG or DXF.`,
      );
  }
  const file = new PdfFile();
  const shared = new PdfResources();
  const tree = file.reserve();
  const resources = file.reserve();
  const pages = document.pages.map((page) => {
    const content = file.addStream(Buffer.from(pageContent(page.heightMm, page.marks, shared), "latin1"));
    const size = `${n(page.widthMm * POINTS_A_MM)} ${n(page.heightMm * POINTS_A_MM)}`;
    return file.add(
      `<</Type/Page/Parent ${tree}/MediaBox[0 0 ${size}]/Resources ${resources}/Contents ${content}>>`,
    );
  });
  const fonts = [...shared.fonts].map(([name, font]) => `/${name} ${font.writeTo(file)}`);
  const codes = [...shared.codes.values()].map(({ name, content }) => {
    const form = file.addStream(Buffer.from(content, "latin1"), "/Type/XObject/Subtype/Form/BBox[0 0 1 1]");
    return `/${name} ${form}`;
  });
  file.write(resources, `<</Font<<${fonts.join("")}>>/XObject<<${codes.join("")}>>>>`);
  file.write(tree, `<</Type/Pages/Count ${pages.length}/Kids[${pages.join(" ")}]>>`);
  return file.finish(file.add(`<</Type/Catalog/Pages ${tree}>>`), infoOf(document, file));
}

function infoOf(document: SheetDocument, file: PdfFile): Reference {
  const { identity } = document;
  const entries: readonly (readonly [string, string])[] = [
    ["Title", textString(document.title)],
    ["Author", textString(identity.owner)],
    ["Subject", textString(identity.number)],
    ["Keywords", textString(document.code)],
    ["Creator", textString("Pinwright")],
    ["Producer", textString("Pinwright")],
    ["CreationDate", `(D:${identity.date.replaceAll("-", "")}000000Z)`],
  ];
  return file.add(`<<${entries.map(([key, value]) => `/${key}${value}`).join("")}>>`);
}
