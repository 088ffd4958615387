import type { BookRow } from "@pinwright/book";
import type { FileElement } from "./fault-file.ts";

export type ElementKind = BookRow<"elements">["kind"];

/** The row of an element as far as a fault file keeps it; the rest is unknown. */
export function elementRow(one: FileElement): BookRow<"elements"> {
  return {
    id: one.id,
    device_type: one.of === "device" ? one.type : null,
    board_type: one.of === "board" ? one.type : null,
    mechanism_type: one.of === "mechanism" ? one.type : null,
    kind: one.kind,
    from: one.from,
    to: one.to,
    control: one.control,
    normally: one.normally,
    ohm: one.ohm,
    mh: null,
    uf: null,
    volt: one.volt,
    amp: one.amp,
    peak_a: null,
    block_v: null,
    rated_w: null,
  };
}

/** What a fault file keeps of the row of an element. */
export function fileElement(row: BookRow<"elements">): FileElement {
  const of = row.board_type !== null ? "board" : row.device_type !== null ? "device" : "mechanism";
  return {
    id: row.id,
    kind: row.kind,
    control: row.control,
    normally: row.normally,
    of,
    type: row.board_type ?? row.device_type ?? row.mechanism_type ?? "",
    from: row.from,
    to: row.to,
    ohm: row.ohm,
    volt: row.volt,
    amp: row.amp,
  };
}
