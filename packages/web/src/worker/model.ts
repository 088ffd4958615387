import type { Book, CellTables, LiveFault, Shop } from "@pinwright/book";
import type { LineResult } from "@pinwright/engine";

/** Everything that views are made from, at one moment. Whatever did not change is the same object as before. */
export interface Model {
  readonly tables: CellTables;
  readonly shopTables: CellTables;
  readonly book: Book;
  readonly shop: Shop;
  /** Derived from the book and from the shop without its records: for these, `shop` is the one that is true. */
  readonly line: LineResult;
  /** The line as it was before the last change, or before the drag that is going on. */
  readonly base: LineResult;
  /** All faults of book and shop; found when first asked for. */
  readonly faults: () => readonly LiveFault[];
  /** True at first, while places are known and nothing is derived yet: only views that need no more are made. */
  readonly early: boolean;
  /** True while something is dragged: views that only matter at rest may keep what they had. */
  readonly preview: boolean;
}
