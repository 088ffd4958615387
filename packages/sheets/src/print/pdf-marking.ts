import { groupExtent, type PageLink, type Place, targetOf } from "../compose/guide.ts";
import { eachLeaf } from "../compose/leaves.ts";
import type { GroupMark, Leaf, Mark, Page, Tag } from "../compose/mark.ts";
import type { Structure, StructureElement } from "./pdf-structure.ts";

/** A link of a page, to become an annotation. */
export interface FoundLink extends PageLink {
  readonly page: number;
  readonly element: StructureElement;
}

/**
 * What the marks that are drawn now belong to: an element, with all that is drawn in it (a figure) or with its texts
 * alone; nothing that is read; or nothing yet.
 */
export type Owner =
  | { readonly kind: "element"; readonly element: StructureElement; readonly isFigure: boolean }
  | { readonly kind: "artifact" }
  | { readonly kind: "loose" };

const ARTIFACT: Owner = { kind: "artifact" };
const LOOSE: Owner = { kind: "loose" };

const speaks = new WeakMap<GroupMark, boolean>();

/** True when a group or one in it says what it is or where it leads. */
function isSpoken(mark: Mark): boolean {
  if (mark.kind !== "group") return false;
  const known = speaks.get(mark);
  if (known !== undefined) return known;
  const own = mark.tag !== undefined || mark.link !== undefined || mark.marks.some(isSpoken);
  speaks.set(mark, own);
  return own;
}

interface Count {
  readonly texts: readonly string[];
  readonly drawn: number;
}

function countOf(marks: readonly Mark[]): Count {
  const texts: string[] = [];
  let drawn = 0;
  eachLeaf(marks, (leaf) => {
    if (leaf.kind === "text") texts.push(leaf.text.trim());
    else drawn++;
  });
  return { texts, drawn };
}

/** A figure that nobody described is described by the first of what is written in it. */
const ALT_LENGTH = 300;

const HOLDS_TEXT: ReadonlySet<string> = new Set([
  "H1",
  "H2",
  "H3",
  "P",
  "TH",
  "TD",
  "LBody",
  "TOCI",
  "Caption",
  "Note",
  "Link",
]);

/** Columns that the cells of a row take. */
const columnsOf = (group: GroupMark): number =>
  group.marks.reduce((sum, mark) => {
    const role = mark.kind === "group" ? mark.tag?.role : undefined;
    return role === "TD" || role === "TH" ? sum + (mark.kind === "group" ? (mark.tag?.span ?? 1) : 0) : sum;
  }, 0);

/** Finds what the marks of a document belong to, page by page in drawing order, which is the order of reading. */
export class Marking {
  readonly structure: Structure;
  readonly links: FoundLink[] = [];
  readonly #title: string;
  readonly #anchors: ReadonlyMap<string, Place>;

  constructor(structure: Structure, title: string, anchors: ReadonlyMap<string, Place>) {
    this.structure = structure;
    this.#title = title;
    this.#anchors = anchors;
  }

  /**
   * Owners of the marks of a page. The frame of the first page is read after all that it holds; the strips of later
   * pages say it again and are passed over.
   */
  ofPage(page: Page, index: number): readonly Owner[] {
    const bodyMarks = page.bodyMarks ?? page.marks.length;
    const body = page.marks.slice(0, bodyMarks);
    const frame = page.marks.slice(bodyMarks);
    return [...this.#ofBody(body), ...(index === 0 ? this.#loose(frame) : frame.map(() => ARTIFACT))];
  }

  #ofBody(body: readonly Mark[]): readonly Owner[] {
    if (body.some(isSpoken)) return this.#loose(body);
    const count = countOf(body);
    if (count.drawn <= 2 * count.texts.length) return this.#loose(body);
    const figure = this.#piece(count);
    return body.map(() => figure);
  }

  /** Owners of marks in a group. */
  within(marks: readonly Mark[], owner: Owner): readonly Owner[] {
    return owner.kind === "loose" ? this.#loose(marks) : marks.map(() => owner);
  }

  /** Marks that nobody spoke of, in pieces: each group by itself, and what stands between groups. */
  #loose(marks: readonly Mark[]): readonly Owner[] {
    const owners: Owner[] = [];
    let leaves: Mark[] = [];
    const close = (): void => {
      const owner = this.#piece(countOf(leaves));
      for (const _ of leaves) owners.push(owner);
      leaves = [];
    };
    for (const mark of marks) {
      if (mark.kind !== "group") {
        leaves.push(mark);
        continue;
      }
      if (leaves.length > 0) close();
      owners.push(isSpoken(mark) ? LOOSE : this.#piece(countOf([mark])));
    }
    if (leaves.length > 0) close();
    return owners;
  }

  #piece({ texts, drawn }: Count): Owner {
    const said = texts.filter((t) => t !== "");
    const { structure } = this;
    if (said.length === 0) return ARTIFACT;
    if (drawn <= Math.max(6, 2 * texts.length))
      return {
        kind: "element",
        element: structure.element({ role: "P" }, structure.root, 0),
        isFigure: false,
      };
    const all = `${this.#title}: ${said.join("; ")}`;
    const alt = all.length > ALT_LENGTH ? `${all.slice(0, ALT_LENGTH)}…` : all;
    return {
      kind: "element",
      element: structure.element({ role: "Figure", alt }, structure.root, 0),
      isFigure: true,
    };
  }

  /**
   * Owner of what is in a group that stands in `owner`.
   * @param dx,dy where the origin of its marks lies on the page
   */
  enter(group: GroupMark, owner: Owner, page: number, dx: number, dy: number): Owner {
    if (owner.kind === "artifact" || (group.tag === undefined && group.link === undefined)) return owner;
    const own = group.tag === undefined ? owner : this.#tagged(group.tag, group, owner);
    if (group.link === undefined || own.kind === "artifact") return own;
    const to = targetOf(group.link, this.#anchors);
    const extent = groupExtent(group, dx, dy);
    if (to === undefined || extent === null) return own;
    const { structure } = this;
    const holder = own.kind === "element" ? own.element : structure.element({ role: "P" }, structure.root, 0);
    const element = structure.link(holder);
    this.links.push({ ...extent, to, page, element });
    return { kind: "element", element, isFigure: own.kind === "element" && own.isFigure };
  }

  #tagged(tag: Tag, group: GroupMark, owner: Owner): Owner {
    if (tag.role === "Artifact") return ARTIFACT;
    if (owner.kind === "element" && owner.isFigure) return owner;
    const parent = owner.kind === "element" ? owner.element : this.structure.root;
    // A paragraph in a heading, a cell or another paragraph is its text.
    if (tag.role === "P" && HOLDS_TEXT.has(parent.type)) return owner;
    const element = this.structure.element(tag, parent, tag.role === "TR" ? columnsOf(group) : 0);
    return { kind: "element", element, isFigure: tag.role === "Figure" };
  }

  /** The element that a mark is content of; null: none. Rules and grounds of a text are not read; a code is a figure. */
  elementOf(leaf: Leaf, owner: Owner): StructureElement | null {
    if (owner.kind === "artifact") return null;
    const parent = owner.kind === "element" ? owner.element : this.structure.root;
    if (owner.kind === "element" && owner.isFigure) return parent;
    if (leaf.kind === "code") return this.structure.element({ role: "Figure", alt: leaf.text }, parent, 0);
    if (leaf.kind !== "text" || leaf.text.trim() === "" || parent.type === "Table") return null;
    if (parent.type === "TR") return this.structure.element({ role: "TD" }, parent, 0);
    return parent === this.structure.root ? this.structure.element({ role: "P" }, parent, 0) : parent;
  }
}
