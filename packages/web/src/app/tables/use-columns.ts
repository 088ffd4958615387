import { ALL_TABLES, RANK } from "@pinwright/book";
import { useMemo } from "react";
import { useWords } from "../words.tsx";
import type { GridColumn } from "./grid/types.ts";
import type { TableRow } from "./logic/arrange.ts";
import { unitOf } from "./logic/units.ts";

/** Columns of a table, then whatever else its rows have: that can be mended only where it is seen. */
export function useColumns(table: string, rows: readonly TableRow[] | null): readonly GridColumn[] {
  const words = useWords();
  const others = useMemo(() => {
    const known = ALL_TABLES[table]?.columns ?? {};
    const found = new Set<string>();
    for (const { cells } of rows ?? [])
      for (const name of Object.keys(cells))
        if (name !== RANK && !Object.hasOwn(known, name)) found.add(name);
    return [...found].sort().join("\n");
  }, [table, rows]);
  return useMemo(() => {
    const schema = ALL_TABLES[table];
    if (schema === undefined) return [];
    const titles: Readonly<Record<string, string>> = words.tableNames.columns;
    const own = Object.entries(schema.columns).map(
      ([name, column]): GridColumn => ({
        name,
        title: titles[name] ?? name,
        unit: unitOf(name),
        about: words.tables.about(table, name, column.about),
        kind: column.kind,
        required: column.required,
        isKey: schema.key.includes(name),
        choices: column.oneOf ?? null,
      }),
    );
    const unknown = (others === "" ? [] : others.split("\n")).map(
      (name): GridColumn => ({
        name,
        title: name,
        unit: "",
        about: words.faults["column-unknown"],
        kind: "text",
        required: false,
        isKey: false,
        choices: null,
      }),
    );
    return [...own, ...unknown];
  }, [table, others, words]);
}
