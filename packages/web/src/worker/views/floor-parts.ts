import { appliesTo } from "@pinwright/engine";
import type { NamedId } from "../steps/named.ts";
import { view } from "./view.ts";

/** A part as the bench names it, and what the book allows instead. */
export interface FloorPart extends NamedId {
  readonly instead: readonly { readonly id: string; readonly why: string; readonly whyZh: string }[];
}

/** Every part of the book, by its id. */
export const floorParts = view<null, FloorPart>({
  uses: ({ book, line }) => [book.tables.parts, book.tables.alternates, line.machine.options],
  entries: ({ book, line }) =>
    new Map(
      book.tables.parts.map(({ id, label, label_zh }) => [
        id,
        {
          ...{ id, label, labelZh: label_zh },
          instead: book.tables.alternates
            .filter((row) => row.part === id && appliesTo(row, line.machine.options))
            .map((row) => ({ id: row.instead, why: row.remark, whyZh: row.remark_zh })),
        },
      ]),
    ),
  restsInPreview: true,
});
