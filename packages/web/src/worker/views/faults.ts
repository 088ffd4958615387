import type { LiveFault } from "@pinwright/book";
import { view } from "./view.ts";

/** What is wrong with the texts of the book, each with the cell that it stands in. */
export const faults = view<null, LiveFault>({
  uses: ({ tables, shopTables }) => [tables, shopTables],
  entries: (model) => new Map(model.faults().map((fault, i) => [String(i), fault])),
  restsInPreview: true,
});
