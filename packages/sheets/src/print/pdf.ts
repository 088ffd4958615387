import type { SheetDocument } from "../compose/document.ts";
import { anchorsOf, guideOf } from "../compose/guide.ts";
import { n, PdfResources, POINTS_A_MM, pageContent } from "./pdf-content.ts";
import { PdfFile, type Reference, textString } from "./pdf-file.ts";
import { type FoundLink, Marking } from "./pdf-marking.ts";
import { type Destination, languageTag, writeMetadata, writeOutline } from "./pdf-reading.ts";
import { Structure } from "./pdf-structure.ts";

/** Longest side of a page without user units: 14 400 points (PDF 1.7, annex C). */
export const LONGEST_PDF_MM = 5080;

/**
 * A sheet as PDF in true size, tagged so that it can be read aloud and reflowed (ISO 14289-1), with its links and its
 * outline. The date of issue is the only time in it, so the same sheet gives the same bytes.
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
  const structure = new Structure(document.language === "zh");
  const marking = new Marking(structure, document.title, anchorsOf(document.pages));
  const tree = file.reserve();
  const resources = file.reserve();
  const contents = document.pages.map((page, i) =>
    file.addStream(Buffer.from(pageContent(page, i, shared, marking), "latin1")),
  );
  const pages = document.pages.map(() => file.reserve());
  const destination: Destination = ({ page, yMm }) => {
    const heightMm = document.pages[page]?.heightMm ?? 0;
    return `[${pages[page]} /XYZ 0 ${n((heightMm - Math.max(0, yMm - TOP_MM)) * POINTS_A_MM)} null]`;
  };
  const annotations = marking.links.map((link, i) => {
    const annotation = writeLink(file, document, link, pages.length + i, destination);
    link.element.kids.push({ page: link.page, annotation });
    return annotation;
  });
  document.pages.forEach((page, i) => {
    const size = `${n(page.widthMm * POINTS_A_MM)} ${n(page.heightMm * POINTS_A_MM)}`;
    const own = annotations.filter((_, a) => marking.links[a]?.page === i).join(" ");
    const annots = own === "" ? "" : `/Annots[${own}]`;
    file.write(
      pages[i] ?? tree,
      `<</Type/Page/Parent ${tree}/MediaBox[0 0 ${size}]/Resources ${resources}/Contents ${contents[i]}/StructParents ${i}/Tabs/S${annots}>>`,
    );
  });
  writeResources(file, resources, shared);
  file.write(tree, `<</Type/Pages/Count ${pages.length}/Kids[${pages.join(" ")}]>>`);
  const top = structure.writeTo(
    file,
    pages,
    marking.links.map(({ element }) => element),
  );
  const outline = writeOutline(file, guideOf(document.pages).outline, destination);
  const metadata = writeMetadata(file, document);
  const catalog = file.add(
    `<</Type/Catalog/Pages ${tree}/Lang(${languageTag(document)})/MarkInfo<</Marked true>>/StructTreeRoot ${top}/ViewerPreferences<</DisplayDocTitle true>>/Metadata ${metadata}${outline === null ? "" : `/Outlines ${outline}/PageMode/UseOutlines`}>>`,
  );
  return file.finish(catalog, infoOf(document, file));
}

/** White space that a window keeps above what a link leads to. */
const TOP_MM = 4;

function writeResources(file: PdfFile, resources: Reference, shared: PdfResources): void {
  const fonts = [...shared.fonts].map(([name, font]) => `/${name} ${font.writeTo(file)}`);
  const codes = [...shared.codes.values()].map(({ name, content }) => {
    const form = file.addStream(Buffer.from(content, "latin1"), "/Type/XObject/Subtype/Form/BBox[0 0 1 1]");
    return `/${name} ${form}`;
  });
  file.write(resources, `<</Font<<${fonts.join("")}>>/XObject<<${codes.join("")}>>>>`);
}

/** A link as an annotation (ISO 32000-1, 12.5.6.5), with what it says for who does not see it. */
function writeLink(
  file: PdfFile,
  document: SheetDocument,
  { box, to, text, page }: FoundLink,
  key: number,
  destination: Destination,
): Reference {
  const heightMm = document.pages[page]?.heightMm ?? 0;
  const sides = [box.xMm, heightMm - box.yMm - box.heightMm, box.xMm + box.widthMm, heightMm - box.yMm].map(
    (mm) => n(mm * POINTS_A_MM),
  );
  const goes = "url" in to ? `/A<</S/URI/URI${uri(to.url)}>>` : `/Dest${destination(to)}`;
  const says = text === "" ? ("url" in to ? to.url : document.title) : text;
  return file.writeSmall(
    file.reserve(),
    `<</Type/Annot/Subtype/Link/Rect[${sides.join(" ")}]/Border[0 0 0]/F 4/Contents${textString(says)}/StructParent ${key}${goes}>>`,
  );
}

/** An address in characters of ASCII, in hexadecimal: none has to be escaped. */
const uri = (url: string): string => `<${Buffer.from(encodeURI(decodeURI(url)), "latin1").toString("hex")}>`;

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
