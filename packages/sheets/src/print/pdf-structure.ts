import type { Role, Tag } from "../compose/mark.ts";
import { type PdfFile, type Reference, textString } from "./pdf-file.ts";

/** Standard structure types (ISO 32000-1, 14.8.4), with those that only hold others. */
type Type = Exclude<Role, "Artifact"> | "Document" | "TOC" | "L" | "LBody" | "Link";

/** What an element holds, in reading order: others, content of a page, or a link annotation. */
type Kid =
  | StructureElement
  | { readonly page: number; readonly mcid: number }
  | { readonly page: number; readonly annotation: Reference };

/** Characters that are read as Chinese, whatever else a text holds. */
const CHINESE = /[\u2e80-\u9fff\uf900-\ufaff\uff00-\uffef]/u;

const isChinese = (text: string): boolean => CHINESE.test(text);

/** One element of the tree that tells how a document is to be read. */
export class StructureElement {
  readonly type: Type;
  readonly kids: Kid[] = [];
  readonly tag: Partial<Tag>;
  readonly parent: StructureElement | null;
  /** Cells of the rows of a table. */
  readonly columns: number;

  constructor(type: Type, parent: StructureElement | null, tag: Partial<Tag> = {}, columns = 0) {
    this.type = type;
    this.tag = tag;
    this.parent = parent;
    this.columns = columns;
    parent?.kids.push(this);
  }

  /** The page that most of it stands on, as far as the first content tells. */
  get firstPage(): number | null {
    for (const kid of this.kids) {
      const page = kid instanceof StructureElement ? kid.firstPage : kid.page;
      if (page !== null) return page;
    }
    return null;
  }
}

/** Lists that are made when an item of theirs comes. */
const HOLDERS = { TR: "Table", LI: "L", TOCI: "TOC" } as const;

const isHeading = (type: Type): boolean => type === "H1" || type === "H2" || type === "H3";
const HEADINGS = ["H1", "H2", "H3"] as const;

/** The tree of a document, and which element each piece of content of each page belongs to. */
export class Structure {
  readonly root = new StructureElement("Document", null);
  /** Elements of the marked content of each page, by its number. */
  readonly pages: StructureElement[][] = [];
  readonly #isChinese: boolean;
  #level = 0;

  constructor(isChineseDocument: boolean) {
    this.#isChinese = isChineseDocument;
  }

  /** True when a text is in another language than the document. */
  isForeign(text: string): boolean {
    return !this.#isChinese && isChinese(text);
  }

  /** The next number of marked content on a page. */
  content(page: number, element: StructureElement): number {
    const own = this.pages[page] ?? [];
    this.pages[page] = own;
    element.kids.push({ page, mcid: own.length });
    own.push(element);
    return own.length - 1;
  }

  /** An element for what leads somewhere. */
  link(parent: StructureElement): StructureElement {
    return new StructureElement("Link", parent);
  }

  /** An element for a tag; a heading whose level skips one gets the next lower level (ISO 14289-1, 7.4.2). */
  element(tag: Tag, parent: StructureElement, columns: number): StructureElement {
    const { role } = tag;
    if (role === "Artifact") throw new Error("What is not read has no place in the structure of a document.");
    if (role === "TR" || role === "LI" || role === "TOCI") {
      const holder = this.#holder(HOLDERS[role], parent, tag.starts === true, columns);
      const item = new StructureElement(role, holder, tag);
      return role === "LI" ? new StructureElement("LBody", item) : item;
    }
    if (!isHeading(role)) return new StructureElement(role, parent, tag);
    this.#level = Math.min(Number(role.slice(1)), this.#level + 1);
    return new StructureElement(HEADINGS[this.#level - 1] ?? "H3", parent, tag);
  }

  #holder(type: "Table" | "L" | "TOC", parent: StructureElement, starts: boolean, columns: number) {
    if (parent.type === type) return parent;
    const last = parent.kids.at(-1);
    const goesOn = last instanceof StructureElement && last.type === type && last.columns === columns;
    return goesOn && !starts ? last : new StructureElement(type, parent, {}, columns);
  }

  /** Writes the tree. @param annotations elements of the link annotations, which come after the pages in the parent tree */
  writeTo(file: PdfFile, pages: readonly Reference[], annotations: readonly StructureElement[]): Reference {
    const references = new Map<StructureElement, Reference>();
    const reserve = (element: StructureElement): void => {
      references.set(element, file.reserve());
      for (const kid of element.kids) if (kid instanceof StructureElement) reserve(kid);
    };
    reserve(this.root);
    const top = file.reserve();
    const refer = (element: StructureElement): Reference => references.get(element) ?? top;
    for (const element of references.keys())
      file.writeSmall(refer(element), this.#body(element, refer, pages, top));
    const nums = pages.map((_, i) => `${i}[${(this.pages[i] ?? []).map(refer).join(" ")}]`);
    nums.push(...annotations.map((element, i) => `${pages.length + i} ${refer(element)}`));
    const tree = file.writeSmall(file.reserve(), `<</Nums[${nums.join(" ")}]>>`);
    return file.writeSmall(
      top,
      `<</Type/StructTreeRoot/K ${refer(this.root)}/ParentTree ${tree}/ParentTreeNextKey ${nums.length}>>`,
    );
  }

  #body(
    element: StructureElement,
    refer: (element: StructureElement) => Reference,
    pages: readonly Reference[],
    top: Reference,
  ): string {
    const { type, tag, kids, parent } = element;
    const page = element.firstPage;
    const held = kids.map((kid): string => {
      if (kid instanceof StructureElement) return refer(kid);
      if ("annotation" in kid) return `<</Type/OBJR/Pg ${pages[kid.page]}/Obj ${kid.annotation}>>`;
      return kid.page === page ? String(kid.mcid) : `<</Type/MCR/Pg ${pages[kid.page]}/MCID ${kid.mcid}>>`;
    });
    const alt = tag.alt === undefined ? "" : `/Alt${textString(tag.alt)}`;
    const language = this.isForeign(tag.alt ?? "") ? "/Lang(zh-CN)" : "";
    const where = page === null ? "" : `/Pg ${pages[page]}`;
    const all = held.length === 0 ? "" : held.length === 1 ? `/K ${held[0]}` : `/K[${held.join(" ")}]`;
    return `<</S/${type}/P ${parent === null ? top : refer(parent)}${where}${all}${alt}${language}${attributesOf(tag)}>>`;
  }
}

/** Attributes of a cell of a table (ISO 32000-1, 14.8.5.7). */
function attributesOf({ role, scope, span = 1 }: Partial<Tag>): string {
  if (role !== "TH" && role !== "TD") return "";
  const own = role === "TH" ? `/Scope/${scope ?? "Column"}` : "";
  const wide = span > 1 ? `/ColSpan ${span}` : "";
  return own + wide === "" ? "" : `/A<</O/Table${own}${wide}>>`;
}
