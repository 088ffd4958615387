import { TextInput } from "@mantine/core";
import { ALL_TABLES, type Group } from "@pinwright/book";
import { IconSearch } from "@tabler/icons-react";
import { useState } from "react";
import { Link } from "wouter";
import { useDesk, useView } from "../book/desk.tsx";
import { useWords } from "../words.tsx";

/** Groups in the order of the book's format. */
export const GROUPS: readonly Group[] = [
  "places",
  "items",
  "insides",
  "wiring",
  "activity",
  "fastening",
  "boards",
  "parts",
  "options",
  "choices",
  "shop",
];

/** Every table by group, with how many rows and faults it has. */
export function TableList({ open }: { readonly open: string }) {
  const words = useWords();
  const desk = useDesk();
  const counts = useView("tableList", null);
  const [sought, setSought] = useState("");
  const names: Readonly<Record<string, string>> = words.tableNames.tables;
  const wanted = sought.trim().toLowerCase();
  const matches = (table: string): boolean => `${table} ${names[table] ?? ""}`.toLowerCase().includes(wanted);
  const line = (table: string, name: string) => {
    const count = counts?.get(table);
    return (
      <li key={table}>
        <Link href={`/b/${desk.bookId}/tables/${table}`} aria-current={open === table ? "page" : undefined}>
          <span className="table-list-name">{name}</span>
          {count !== undefined && count.faults > 0 && (
            <span className="error-text" title={words.tables.faults(count.faults)}>
              ⚠ {count.faults}
              <span className="visually-hidden"> {words.tables.faults(count.faults)}</span>
            </span>
          )}
          {count !== undefined && table !== "machine" && (
            <span className="dim" title={words.tables.rows(count.rows)}>
              {count.rows}
              <span className="visually-hidden"> {words.tables.rows(count.rows)}</span>
            </span>
          )}
        </Link>
      </li>
    );
  };
  const groups = GROUPS.map((group) => ({
    group,
    tables: Object.values(ALL_TABLES).filter((table) => table.group === group && matches(table.name)),
  })).filter(({ tables }) => tables.length > 0);
  return (
    <nav className="table-list" aria-label={words.tables.title}>
      <TextInput
        size="xs"
        leftSection={<IconSearch size={14} />}
        aria-label={words.tables.find}
        placeholder={words.tables.find}
        value={sought}
        onChange={(event) => setSought(event.currentTarget.value)}
      />
      {wanted === "" && (
        <ul>
          {line("machine", words.tables.machine)}
          <li>
            <Link
              href={`/b/${desk.bookId}/tables/import`}
              aria-current={open === "import" ? "page" : undefined}
            >
              {words.tables.bring}
            </Link>
          </li>
        </ul>
      )}
      {groups.map(({ group, tables }) => (
        <section key={group}>
          <h2 title={group === "shop" ? words.tables.shopHint : undefined}>{words.tables.groups[group]}</h2>
          <ul>{tables.map(({ name }) => line(name, names[name] ?? name))}</ul>
        </section>
      ))}
      {groups.length === 0 && <p className="dim">{words.tables.noneFound}</p>}
    </nav>
  );
}
