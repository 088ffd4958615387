import type { SheetDocument } from "../compose/document.ts";
import type { Bookmark } from "../compose/guide.ts";
import { type PdfFile, type Reference, textString } from "./pdf-file.ts";

/** What a bookmark or a link opens: a page, with this height at the top of the window. */
export type Destination = (place: { readonly page: number; readonly yMm: number }) => string;

interface Item {
  readonly bookmark: Bookmark;
  readonly items: Item[];
  readonly reference: Reference;
}

/** Items under those of the next higher level before them. */
function nested(file: PdfFile, outline: readonly Bookmark[]): Item[] {
  const top: Item[] = [];
  const open: Item[] = [];
  for (const bookmark of outline) {
    const item: Item = { bookmark, items: [], reference: file.reserve() };
    while ((open.at(-1)?.bookmark.level ?? 0) >= bookmark.level) open.pop();
    (open.at(-1)?.items ?? top).push(item);
    open.push(item);
  }
  return top;
}

/** Writes the outline (ISO 32000-1, 12.3.3); chapters are shut. Null: it has none. */
export function writeOutline(
  file: PdfFile,
  outline: readonly Bookmark[],
  destination: Destination,
): Reference | null {
  if (outline.length === 0) return null;
  const top = file.reserve();
  const write = (items: readonly Item[], parent: Reference): string => {
    items.forEach((item, i) => {
      const before = items[i - 1];
      const after = items[i + 1];
      const inner = item.items.length === 0 ? "" : `/Count -${item.items.length}`;
      file.writeSmall(
        item.reference,
        `<</Title${textString(item.bookmark.title)}/Parent ${parent}${before === undefined ? "" : `/Prev ${before.reference}`}${after === undefined ? "" : `/Next ${after.reference}`}${write(item.items, item.reference)}${inner}/Dest${destination(item.bookmark)}>>`,
      );
    });
    const first = items[0];
    const last = items.at(-1);
    return first === undefined || last === undefined
      ? ""
      : `/First ${first.reference}/Last ${last.reference}`;
  };
  const items = nested(file, outline);
  return file.writeSmall(top, `<</Type/Outlines${write(items, top)}/Count ${items.length}>>`);
}

/** What a text is in XML, where only these may not stand as they are. */
const xml = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

/** Language of a document for programs (BCP 47); of one in two languages that of its first. */
export const languageTag = ({ language }: Pick<SheetDocument, "language">): string =>
  language === "zh" ? "zh-CN" : "en";

/**
 * Writes what a document says of itself as XMP (ISO 16684-1), with the word that it is made to be read aloud
 * (ISO 14289-1, clause 5).
 */
export function writeMetadata(file: PdfFile, document: SheetDocument): Reference {
  const { identity, title, code } = document;
  const packet = `<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${xml(title)}</rdf:li></rdf:Alt></dc:title>
<dc:creator><rdf:Seq><rdf:li>${xml(identity.owner)}</rdf:li></rdf:Seq></dc:creator>
<dc:description><rdf:Alt><rdf:li xml:lang="x-default">${xml(identity.number)}</rdf:li></rdf:Alt></dc:description>
<dc:language><rdf:Bag><rdf:li>${languageTag(document)}</rdf:li></rdf:Bag></dc:language>
<dc:format>application/pdf</dc:format>
<pdf:Keywords>${xml(code)}</pdf:Keywords>
<pdf:Producer>Pinwright</pdf:Producer>
<xmp:CreatorTool>Pinwright</xmp:CreatorTool>
<xmp:CreateDate>${identity.date}T00:00:00Z</xmp:CreateDate>
<pdfuaid:part>1</pdfuaid:part>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>`;
  return file.addPlain(Buffer.from(packet, "utf8"), "/Type/Metadata/Subtype/XML");
}
