import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import { type Languages, labelsOf, type Machine } from "../model/index.ts";
import { drawingsOf, type FileFacts, type PartDrawings } from "./drawings.ts";
import { type LotBlock, lotBlock, type SampleState, sampleState } from "./samples.ts";

/** A part that is made from drawings, with how far its drawings and samples are. */
export interface OutsidePart {
  readonly partId: string;
  readonly labels: Languages;
  readonly row: BookRow<"parts">;
  readonly drawings: PartDrawings;
  /** How many dimensions are marked. */
  readonly dimensions: number;
  readonly sample: SampleState;
  readonly blocked: LotBlock | null;
}

/** Kinds of part that somebody makes to a drawing. */
const DRAWN_KINDS: ReadonlySet<BookRow<"parts">["kind"]> = new Set([
  "turned",
  "laser-cut",
  "moulded",
  "wood",
]);

/** Whether a part is made by somebody else from a drawing of the book: a board or a mechanism is not. */
export const isDrawnOutside = (part: BookRow<"parts">): boolean =>
  part.source === "have-made" && DRAWN_KINDS.has(part.kind);

/** Ids of the parts that are made outside, and of whatever else has a drawing, a dimension or a sample. */
export function outsidePartIds(machine: Machine): readonly string[] {
  const { parts, drawings, dimensions } = machine.book.tables;
  const named = new Set([
    ...drawings.map((row) => row.part),
    ...dimensions.map((row) => row.part),
    ...machine.shop.tables.samples.map((row) => row.part),
  ]);
  return parts
    .filter((part) => isDrawnOutside(part) || named.has(part.id))
    .map((part) => part.id)
    .sort(compareText);
}

/** One part with its drawings and samples; null when the book has no such part. */
export function outsidePart(machine: Machine, partId: string, files: FileFacts | null): OutsidePart | null {
  const row = machine.book.tables.parts.find((part) => part.id === partId);
  if (row === undefined) return null;
  return {
    partId,
    labels: labelsOf(row, partId),
    row,
    drawings: drawingsOf(machine, partId, files),
    dimensions: machine.book.tables.dimensions.filter((dimension) => dimension.part === partId).length,
    sample: sampleState(machine, partId),
    blocked: lotBlock(machine, partId),
  };
}

/** Every part that is made outside, by id. @param files files that are at hand; null: not known */
export const outsideParts = (machine: Machine, files: FileFacts | null): readonly OutsidePart[] =>
  outsidePartIds(machine).flatMap((id) => outsidePart(machine, id, files) ?? []);
