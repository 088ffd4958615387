import { Button, Modal } from "@mantine/core";
import type { CellChange } from "@pinwright/book";
import { useState } from "react";
import { useDesk } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import type { TableRow } from "./logic/arrange.ts";
import type { GridEdit } from "./logic/changes.ts";

interface RenameOptions {
  readonly table: string;
  readonly rows: readonly TableRow[];
  readonly edits: {
    readonly edit: (edit: GridEdit) => void;
    readonly make: (note: string, changes: readonly CellChange[]) => void;
  };
  /** The question is answered: the keyboard goes back to the grid. */
  readonly done: () => void;
}

interface Question {
  readonly edit: GridEdit;
  readonly from: string;
  readonly to: string;
  readonly changes: readonly CellChange[];
  readonly followers: number;
}

/** Edits of a table, with the question whether everything that names a row follows when its id is changed. */
export function useRename({ table, rows, edits, done }: RenameOptions) {
  const desk = useDesk();
  const words = useWords();
  const { rename, notes } = words.tables;
  const [question, setQuestion] = useState<Question | null>(null);

  const edit = async (made: GridEdit): Promise<void> => {
    const [cell] = made.cells;
    const from = rows.find((row) => row.id === cell?.row)?.cells.id ?? "";
    const alone = made.what === "type" && made.cells.length === 1 && made.added.length === 0;
    if (cell === undefined || !alone || cell.column !== "id" || from === "" || cell.to === "") {
      edits.edit(made);
      return;
    }
    const found = await desk.ask("renaming", { table, from, to: cell.to }).catch(() => null);
    if (found === null || found.followers === 0) edits.edit(made);
    else setQuestion({ edit: made, from, to: cell.to, ...found });
  };

  const close = (): void => {
    setQuestion(null);
    done();
  };
  return {
    edit: (made: GridEdit): void => void edit(made),
    question: question !== null && (
      <Modal
        opened
        onClose={close}
        title={rename.title}
        closeButtonProps={{ "aria-label": words.common.close }}
      >
        <p>{rename.text(question.from, question.to, question.followers)}</p>
        <div className="table-choices">
          <Button variant="default" onClick={close}>
            {words.common.cancel}
          </Button>
          <Button
            variant="default"
            onClick={() => {
              edits.edit(question.edit);
              close();
            }}
          >
            {rename.here}
          </Button>
          <Button
            data-autofocus
            onClick={() => {
              edits.make(notes.rename(question.from, question.to), question.changes);
              close();
            }}
          >
            {rename.everywhere}
          </Button>
        </div>
      </Modal>
    ),
  };
}
