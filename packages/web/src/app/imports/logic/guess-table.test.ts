import { ALL_TABLES } from "@pinwright/book";
import { describe, expect, it } from "vitest";
import { guessTable, looksLikeBook } from "./guess-table.ts";

describe("guessTable", () => {
  it("finds every table by its own headings", () => {
    const wrong = Object.values(ALL_TABLES).flatMap(({ name, columns }) => {
      const found = guessTable("Sheet1", Object.keys(columns), []);
      return found === name ? [] : [`${name}: ${found}`];
    });
    expect(wrong).toEqual([]);
  });

  it("goes by the name of the sheet, and by what was chosen before", () => {
    expect(guessTable("my Waypoints 2", ["ID", "Panel", "Side", "X (in)", "Y (in)"], [])).toBe("waypoints");
    const header = ["Ref", "What"];
    expect(guessTable("Sheet1", header, [{ table: "suppliers", header, columns: ["id", "label"] }])).toBe(
      "suppliers",
    );
  });
});

describe("looksLikeBook", () => {
  it("knows a workbook with a machine or with nothing but tables", () => {
    expect(looksLikeBook(["machine", "notes"])).toBe(true);
    expect(looksLikeBook(["devices", "nets"])).toBe(true);
    expect(looksLikeBook(["devices"])).toBe(false);
    expect(looksLikeBook(["devices", "notes"])).toBe(false);
  });
});
