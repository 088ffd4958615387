import { type BookRow, type DrawingForm, drawingForm } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import type { Machine } from "../model/index.ts";

/** What is known of a file that is at hand: pure code sees no bytes. */
export interface FileFact {
  readonly bytes: number;
  /** SHA-256 of its bytes, in hexadecimal. */
  readonly sha256: string;
}

/** Files of a book by name. */
export type FileFacts = ReadonlyMap<string, FileFact>;

/**
 * `good`: its bytes are those that were meant; `unhashed`: it is there, but nobody said which bytes are meant;
 * `differs`: it has other bytes; `missing`: it is not there; `unknown`: nobody said which files there are.
 */
export type DrawingState = "good" | "unhashed" | "differs" | "missing" | "unknown";

/** A file that a part is made from. */
export interface PartDrawing {
  readonly row: BookRow<"drawings">;
  /** Null when its name is none of a drawing. */
  readonly form: DrawingForm | null;
  readonly state: DrawingState;
  readonly fact: FileFact | null;
}

/** The drawings of a part, of its present revision and of others, in the order of revision and file. */
export interface PartDrawings {
  readonly present: readonly PartDrawing[];
  readonly others: readonly PartDrawing[];
}

function drawingState(
  row: BookRow<"drawings">,
  fact: FileFact | null,
  files: FileFacts | null,
): DrawingState {
  if (files === null) return "unknown";
  if (fact === null) return "missing";
  if (row.sha256 === "") return "unhashed";
  return fact.sha256 === row.sha256 ? "good" : "differs";
}

/** A drawing with what is known of its file. @param files files that are at hand; null: not known */
export function partDrawing(row: BookRow<"drawings">, files: FileFacts | null): PartDrawing {
  const fact = files?.get(row.file) ?? null;
  return { row, form: drawingForm(row.file), state: drawingState(row, fact, files), fact };
}

/** Drawings of a part by revision. @param files files that are at hand; null: not known */
export function drawingsOf(machine: Machine, partId: string, files: FileFacts | null): PartDrawings {
  const { parts, drawings } = machine.book.tables;
  const revision = parts.find((part) => part.id === partId)?.revision ?? "";
  const own = drawings
    .filter((row) => row.part === partId)
    .sort((a, b) => compareText(a.revision, b.revision) || compareText(a.file, b.file))
    .map((row) => partDrawing(row, files));
  return {
    present: own.filter(({ row }) => row.revision === revision),
    others: own.filter(({ row }) => row.revision !== revision),
  };
}
