import { ALL_TABLES } from "@pinwright/book";
import { loadAppWords } from "@pinwright/words/app";
import { describe, expect, it } from "vitest";

describe("names of tables and columns", () => {
  it("are there for every table and column, in both languages, and for nothing else", async () => {
    const tables = Object.keys(ALL_TABLES).sort();
    const columns = [
      ...new Set(Object.values(ALL_TABLES).flatMap((table) => Object.keys(table.columns))),
    ].sort();
    for (const language of ["en", "zh"] as const) {
      const { tableNames: names } = await loadAppWords(language);
      expect(Object.keys(names.tables).sort()).toEqual(tables);
      expect(Object.keys(names.columns).sort()).toEqual(columns);
    }
  });

  it("say in Chinese what belongs in each column", async () => {
    const { tables: words } = await loadAppWords("zh");
    const english = Object.values(ALL_TABLES).flatMap((table) =>
      Object.keys(table.columns).filter((column) => words.about(table.name, column, "?") === "?"),
    );
    expect(english).toEqual([]);
  });
});
