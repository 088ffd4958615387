import type { BookRow } from "@pinwright/book";
import { type BoardRegisterRow, labelsOf } from "../model/index.ts";
import { jointsOf, type Placement } from "./joints.ts";

/** Ways of getting a board that somebody else puts the parts on. */
const FROM_OUTSIDE: ReadonlySet<BookRow<"parts">["source"]> = new Set(["buy", "have-made"]);

/**
 * A line of the register. A type comes stuffed when the book has its parts; bought when the book has a part for the
 * stuffed board that is bought or had made, and no parts.
 * @param boardIds boards of the type in the machine, in code-point order
 */
export function registerRow(
  type: BookRow<"board_types">,
  boardIds: readonly string[],
  rows: readonly Placement[],
  stuffed: BookRow<"parts"> | undefined,
): BoardRegisterRow {
  const isBought = stuffed !== undefined && FROM_OUTSIDE.has(stuffed.source);
  return {
    typeId: type.id,
    labels: labelsOf(type, type.id),
    revision: type.revision,
    purposes: labelsOf({ label: type.purpose, label_zh: type.purpose_zh }, ""),
    barePartId: type.part,
    stuffedPartId: type.stuffed_part,
    boardIds,
    placements: rows.length,
    joints: jointsOf(rows),
    comes: rows.length > 0 ? "stuffed" : isBought ? "bought" : "unknown",
  };
}
