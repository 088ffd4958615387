import { Button } from "@mantine/core";
import type { ChangeHead, ChangeSet } from "@pinwright/contract";
import { useEffect, useState } from "react";
import { Link } from "wouter";
import { call } from "../../api/call.ts";
import { useDesk } from "../book/desk.tsx";
import { unitOf } from "../findings/numbers.ts";
import { useTrouble } from "../trouble.ts";
import { useWords } from "../words.tsx";
import { type ChangedRow, changedRows, isDrawing, nameIn } from "./changed-rows.ts";
import { noteText } from "./note-text.ts";

/** Cells up to which a set is shown whole at once, and rows that are shown then. */
const CELLS_AT_ONCE = 5_000;
const FIRST_ROWS = 100;

/** One change set: who, when and what; opened, every cell before and after. */
export function ChangeItem({
  of,
  head,
  time,
}: {
  readonly of: string;
  readonly head: ChangeHead;
  readonly time: string;
}) {
  const words = useWords().history;
  const [open, setOpen] = useState(false);
  const relation =
    head.undoneBy !== null
      ? words.undoneBy(head.undoneBy)
      : head.reverses === null
        ? ""
        : head.kind === "redo"
          ? words.redoes(head.reverses)
          : words.reverses(head.reverses);
  return (
    <details
      className="change"
      data-undone={head.undoneBy !== null}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        <span className="dim">{time}</span>
        <span>
          <span className="what">{noteText(words, head.note) || words.noNote}</span>{" "}
          {head.kind !== "edit" && <span className="dim">({words.kinds[head.kind]}) </span>}
          <span className="dim">{relation}</span>
          <br />
          <span className="dim">
            {head.personName} · {words.number(head.no)}
          </span>
        </span>
        <span className="dim">{words.cells(head.cells)}</span>
      </summary>
      {open && <ChangedCells of={of} head={head} />}
    </details>
  );
}

function ChangedCells({ of, head }: { readonly of: string; readonly head: ChangeHead }) {
  const { history: words, common } = useWords();
  const [wanted, setWanted] = useState(head.cells <= CELLS_AT_ONCE);
  const [set, setSet] = useState<ChangeSet | null>(null);
  const [failed, setFailed] = useState<string | null>(null);
  const trouble = useTrouble();
  useEffect(() => {
    if (!wanted) return;
    call("changeSet", { parts: { book: of, no: String(head.no) } }).then(setSet, (error: unknown) =>
      setFailed(trouble(error)),
    );
  }, [of, head.no, wanted, trouble]);
  if (!wanted)
    return (
      <Button variant="subtle" size="compact-sm" onClick={() => setWanted(true)}>
        {words.manyCells(head.cells)}
      </Button>
    );
  if (failed !== null) return <p className="error-text">{words.failed(failed)}</p>;
  if (set === null) return <p className="dim">{common.loading}</p>;
  return <Rows rows={changedRows(set.changes)} />;
}

function Rows({ rows }: { readonly rows: readonly ChangedRow[] }) {
  const { history: words, tableNames } = useWords();
  const tables: Readonly<Record<string, string>> = tableNames.tables;
  const desk = useDesk();
  const [keys, setKeys] = useState<readonly string[]>([]);
  const [most, setMost] = useState(FIRST_ROWS);
  const shown = rows.slice(0, most);
  useEffect(() => {
    const places = rows.slice(0, most).map(({ table, row }) => ({ table, row }));
    void desk.ask("rowKeys", places).then(setKeys, () => undefined);
  }, [desk, rows, most]);
  return (
    <div className="changed-rows">
      {shown.map((row, i) => (
        <section key={`${row.table} ${row.row}`}>
          <h4>
            {tables[row.table] ?? row.table} · {keys[i] || nameIn(row)}{" "}
            <span className="dim">{row.what === "changed" ? "" : words.row[row.what]}</span>{" "}
            {keys[i] ? (
              <Link href={`/b/${desk.bookId}/tables/${row.table}?id=${encodeURIComponent(row.row)}`}>
                {words.openRow}
              </Link>
            ) : null}
          </h4>
          <Cells row={row} />
        </section>
      ))}
      {rows.length > most && (
        <Button variant="subtle" size="compact-sm" onClick={() => setMost(most + 500)}>
          {words.row.more(rows.length - most)}
        </Button>
      )}
    </div>
  );
}

function Cells({ row }: { readonly row: ChangedRow }) {
  const { history: words, tableNames } = useWords();
  const columns: Readonly<Record<string, string>> = tableNames.columns;
  const text = (column: string, cell: string) => {
    if (cell === "") return <span className="dim">{words.blank}</span>;
    return isDrawing(row.table, column) ? words.drawing(cell.length) : cell;
  };
  return (
    <table>
      <tbody>
        {row.cells.map(({ column, from, to }) => (
          <tr key={column}>
            <th scope="row" title={column}>
              {columns[column] ?? column}
              {unitOf(column)}
            </th>
            <td>
              {row.what === "added" ? (
                text(column, to)
              ) : row.what === "removed" ? (
                <del>{text(column, from)}</del>
              ) : (
                <>
                  {text(column, from)} → <b>{text(column, to)}</b>
                </>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
