import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { FAULT_CODES } from "../fault.ts";
import { SHOP_SETTINGS } from "../schema/shop-settings.ts";
import { ALL_TABLES } from "../schema/tables/index.ts";
import { bookDocs } from "./book-docs.ts";

const committed = readFileSync(fileURLToPath(new URL("../../../../docs/book.md", import.meta.url)), "utf8");

test("docs/book.md is what tools/book-docs.ts writes", () => {
  expect(committed).toBe(bookDocs());
});

test("every table, column, setting and fault code is documented", () => {
  for (const table of Object.values(ALL_TABLES)) {
    expect(committed).toContain(`### ${table.name}\n`);
    const section = committed.slice(committed.indexOf(`### ${table.name}\n`)).split("\n### ")[0] ?? "";
    for (const column of Object.keys(table.columns)) expect(section).toContain(`| \`${column}\` |`);
  }
  for (const name of [...Object.keys(SHOP_SETTINGS), ...FAULT_CODES])
    expect(committed).toContain(`| \`${name}\` |`);
});
