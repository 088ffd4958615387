import type { Book } from "../../packages/book/src/index.ts";
import type { LineResult } from "../../packages/engine/src/index.ts";
import { DECIDED_CHANGES } from "./decided-changes.ts";
import { ELECTRIC_CHANGES } from "./electric-changes.ts";
import { ITEM_CHANGES } from "./item-changes.ts";
import { MAKING_CHANGES } from "./making-changes.ts";
import type { ScriptedChange } from "./script.ts";
import { WHOLE_CHANGES } from "./whole-changes.ts";

/** All of them, a hundred or more. */
export const scriptedChanges = (book: Book, before: LineResult): readonly ScriptedChange[] =>
  [...ITEM_CHANGES, ...WHOLE_CHANGES, ...ELECTRIC_CHANGES, ...MAKING_CHANGES, ...DECIDED_CHANGES].flatMap(
    (of) => of(book, before),
  );
