import { revisionWith } from "@pinwright/engine";
import { useEffect, useState } from "react";
import { Link } from "wouter";
import { call } from "../../../api/call.ts";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useWhen } from "../../bench/names.tsx";
import { useAsked } from "../../bench/use-asked.ts";
import { useDesk } from "../../book/desk.tsx";
import { changedRows, isDrawing } from "../../history/changed-rows.ts";
import { noteText } from "../../history/note-text.ts";
import { useReleases } from "../../revisions/use-releases.ts";
import { useWords } from "../../words.tsx";

type Rows = ViewEntry<"thing">["rows"];

/** Sets that are shown before more are asked for. */
const FIRST = 10;
/** The change set that brought the book: everything was made in it. */
const BEGINNING = 1;

/** Every change of its rows: cells before and after, who, when, and the first revision that has it. */
export function ThingHistory({ rows }: { readonly rows: Rows }) {
  const { serviceThing: own, history, common } = useWords();
  const { bookId } = useDesk();
  const when = useWhen();
  const [all, setAll] = useState(false);
  const releases = useReleases().releases ?? [];
  const asked = rows.map(({ table, row }) => `${table}:${row}`).join(",");
  const no = useChangeNo();
  const { answer } = useAsked(
    `row-changes ${bookId} ${no} ${asked}`,
    asked === ""
      ? null
      : (signal) => call("rowChanges", { parts: { book: bookId }, query: { rows: asked }, signal }),
    "once",
  );
  const sets = (answer ?? []).filter((set) => set.no > BEGINNING);
  const shown = all ? sets : sets.slice(0, FIRST);
  return (
    <section aria-labelledby="thing-history">
      <h3 id="thing-history">{own.history}</h3>
      {releases[0] !== undefined && (
        <p>
          <Link href={`/b/${bookId}/revisions/compare?from=${encodeURIComponent(releases[0].name)}&to=draft`}>
            {own.compare(releases[0].name)}
          </Link>
        </p>
      )}
      {answer === undefined && asked !== "" ? (
        <p className="dim">{common.loading}</p>
      ) : (
        sets.length === 0 && <p className="dim">{own.historyNone}</p>
      )}
      <ol className="thing-history">
        {shown.map((set) => {
          const revision = revisionWith(set.no, releases);
          return (
            <li key={set.no}>
              <b>{noteText(history, set.note) || history.noNote}</b>{" "}
              <small className="dim">
                {own.historyOf(set.no, set.personName)}, {when(set.at)},{" "}
                {revision === null ? own.historyDraft : own.historyIn(revision)}
              </small>
              <Changed changes={set.changes} />
            </li>
          );
        })}
      </ol>
      {sets.length > shown.length && (
        <button type="button" className="link-button" onClick={() => setAll(true)}>
          {own.moreThings(sets.length - shown.length)}
        </button>
      )}
    </section>
  );
}

/** Number of the last change of the book that the worker knows. */
function useChangeNo(): number {
  const desk = useDesk();
  const [no, setNo] = useState(desk.changeNo);
  useEffect(() => desk.subscribe(() => setNo(desk.changeNo)), [desk]);
  return no;
}

function Changed({ changes }: { readonly changes: Parameters<typeof changedRows>[0] }) {
  const { serviceThing: own, history, tableNames } = useWords();
  const tables: Readonly<Record<string, string>> = tableNames.tables;
  const columns: Readonly<Record<string, string>> = tableNames.columns;
  return (
    <ul>
      {changedRows(changes).map((row) => (
        <li key={`${row.table} ${row.row}`}>
          {tables[row.table] ?? row.table}
          {row.what === "added" ? ` ${own.added}` : row.what === "removed" ? ` ${own.removed}` : ""}
          {row.what === "changed" &&
            row.cells.map(({ column, from, to }) => (
              <span key={column} className="quality-under">
                {isDrawing(row.table, column)
                  ? history.drawing(to.length)
                  : own.cell(columns[column] ?? column, from, to)}
              </span>
            ))}
        </li>
      ))}
    </ul>
  );
}
