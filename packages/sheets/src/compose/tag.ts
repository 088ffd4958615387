import type { Block } from "./flow.ts";
import type { GroupMark, LinkTarget, Mark, Tag } from "./mark.ts";

const held = (marks: readonly Mark[]): GroupMark => ({
  kind: "group",
  marks,
  dxMm: 0,
  dyMm: 0,
  clip: null,
  part: "body",
});

/** Marks with a role. The body hash and the picture of a page stay what they were. */
export const tagged = (tag: Tag, marks: readonly Mark[]): GroupMark => ({ ...held(marks), tag });

/** A figure with what it shows in words. */
export const figure = (alt: string, marks: readonly Mark[]): GroupMark =>
  tagged({ role: "Figure", alt }, marks);

/** Marks that lead to a place of the document or of the web; stands inside whatever role they have. */
export const linked = (link: LinkTarget, marks: readonly Mark[]): GroupMark => ({ ...held(marks), link });

/** Marks that links may lead to; with a bookmark they stand in the outline. */
export const anchored = (
  anchor: string,
  marks: readonly Mark[],
  bookmark?: { readonly title: string; readonly level: number },
): GroupMark => ({ ...held(marks), anchor, ...(bookmark === undefined ? {} : { bookmark }) });

/** A block whose marks have a role. */
export const taggedBlock = (tag: Tag, block: Block): Block => ({
  ...block,
  marks: [tagged(tag, block.marks)],
});
