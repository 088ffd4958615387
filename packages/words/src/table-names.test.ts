import { ALL_TABLES } from "@pinwright/book";
import { describe, expect, it } from "vitest";
import { tableNames as en } from "./en/app/table-names.ts";
import { tableNames as zh } from "./zh/app/table-names.ts";

describe("names of tables and columns", () => {
  it("are there for every table and column, in both languages, and for nothing else", () => {
    const tables = Object.keys(ALL_TABLES).sort();
    const columns = [
      ...new Set(Object.values(ALL_TABLES).flatMap((table) => Object.keys(table.columns))),
    ].sort();
    for (const names of [en, zh]) {
      expect(Object.keys(names.tables).sort()).toEqual(tables);
      expect(Object.keys(names.columns).sort()).toEqual(columns);
    }
  });
});
