import { ALL_TABLES } from "@pinwright/book";
import { useLocation } from "wouter";
import { useDesk, useView } from "../book/desk.tsx";
import { useWords } from "../words.tsx";
import { GROUPS } from "./table-list.tsx";

/** The same tables as a field to choose from, where there is no room for a list. */
export function TableChoice({ open }: { readonly open: string }) {
  const words = useWords();
  const desk = useDesk();
  const counts = useView("tableList", null);
  const [, go] = useLocation();
  const names: Readonly<Record<string, string>> = words.tableNames.tables;
  const text = (table: string): string => {
    const count = counts?.get(table);
    const faults = count !== undefined && count.faults > 0 ? ` ⚠ ${count.faults}` : "";
    return `${names[table] ?? table}${count === undefined ? "" : ` (${count.rows})`}${faults}`;
  };
  return (
    <select
      className="table-choice"
      aria-label={words.tables.title}
      value={open}
      onChange={(event) => go(`/b/${desk.bookId}/tables/${event.currentTarget.value}`)}
    >
      <option value="machine">{words.tables.machine}</option>
      <option value="import">{words.tables.bring}</option>
      {GROUPS.map((group) => (
        <optgroup key={group} label={words.tables.groups[group]}>
          {Object.values(ALL_TABLES)
            .filter((table) => table.group === group)
            .map(({ name }) => (
              <option key={name} value={name}>
                {text(name)}
              </option>
            ))}
        </optgroup>
      ))}
    </select>
  );
}
