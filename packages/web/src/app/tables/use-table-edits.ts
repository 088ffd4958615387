import type { CellChange } from "@pinwright/book";
import { CHANGES_PER_SET } from "@pinwright/contract";
import { newRowId } from "../../worker/edits/rows.ts";
import { useTrouble } from "../trouble.ts";
import { useWords } from "../words.tsx";
import type { TableRow } from "./logic/arrange.ts";
import {
  deleteChanges,
  type GridEdit,
  gridChanges,
  insertChanges,
  moveChanges,
  orderChanges,
} from "./logic/changes.ts";

interface TableEditOptions {
  readonly table: string;
  /** Name of the table in the language of the page. */
  readonly name: string;
  /** Rows in the order of the file. */
  readonly rows: readonly TableRow[];
  readonly change: (note: string, changes: readonly CellChange[]) => Promise<void>;
  readonly say: (text: string) => void;
}

/** Everything that a person can do to the rows of a table, each as one change set that undoes as one. */
export function useTableEdits({ table, name, rows, change, say }: TableEditOptions) {
  const { notes, said } = useWords().tables;
  const trouble = useTrouble();
  const source = { table, rows };

  const make = (note: string, changes: readonly CellChange[]): void => {
    if (changes.length > CHANGES_PER_SET) {
      say(said.tooMany(changes.length, CHANGES_PER_SET));
      return;
    }
    void change(note, changes).catch((error: unknown) => say(trouble(error)));
  };

  const noteOf = (edit: GridEdit): string => {
    const n = edit.cells.length + edit.added.reduce((sum, cells) => sum + Object.keys(cells).length, 0);
    const [cell] = edit.cells;
    if (edit.what !== "type" || n > 1) return notes[edit.what === "type" ? "fill" : edit.what](n, name);
    if (cell === undefined) return notes.add(name);
    const id = rows.find((row) => row.id === cell.row)?.cells.id ?? "";
    return notes.type(`${id === "" ? name : id} ${cell.column}`);
  };

  return {
    make,
    edit: (edit: GridEdit): void => make(noteOf(edit), gridChanges(source, edit, newRowId)),
    /** Blank rows before the one at `index`. */
    insertAt: (index: number, count: number): void => {
      const blank = Array.from({ length: count }, () => ({}));
      make(notes.insert(count, name), insertChanges(source, index, blank, newRowId));
    },
    remove: (ids: readonly string[]): void =>
      make(notes.remove(ids.length, name), deleteChanges(source, ids)),
    /** The rows from `top` to `bottom` go one place up or down. */
    move: (top: number, bottom: number, by: -1 | 1): void =>
      make(notes.move(bottom - top + 1, name), moveChanges(source, top, bottom, by)),
    putInOrder: (order: readonly string[]): void => make(notes.sort(name), orderChanges(source, order)),
  };
}
