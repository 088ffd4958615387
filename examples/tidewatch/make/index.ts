/** Writes the book of Tidewatch beside this folder: `npx tsx examples/tidewatch/make/index.ts`. */
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { BOOK_TABLES, type Table } from "@pinwright/book";
import { assemble } from "./assemble.ts";

const cell = (value: unknown): string => {
  const text =
    value === null
      ? ""
      : typeof value === "boolean"
        ? value
          ? "yes"
          : ""
        : Array.isArray(value)
          ? value.join(" ")
          : String(value);
  return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

const folder = join(dirname(fileURLToPath(import.meta.url)), "..");
const { tables, outlines } = assemble();
for (const [name, table] of Object.entries<Table>(BOOK_TABLES)) {
  const columns = Object.keys(table.columns);
  const list: readonly object[] = Object.entries(tables).find(([n]) => n === name)?.[1] ?? [];
  const lines = list.map((row) => {
    const cells = new Map<string, unknown>(Object.entries(row));
    return columns.map((column) => cell(cells.get(column))).join(",");
  });
  writeFileSync(join(folder, `${name}.csv`), [columns.join(","), ...lines, ""].join("\n"));
}
mkdirSync(join(folder, "outlines"), { recursive: true });
for (const [file, svg] of outlines) writeFileSync(join(folder, "outlines", file), svg);
writeFileSync(
  join(folder, "machine.json"),
  `${JSON.stringify(
    {
      format: 1,
      id: "tidewatch",
      label: "Tidewatch",
      label_zh: "守潮人",
      revision: "A",
      date: "2026-11-25",
      owner: "",
      approved: "",
      languages: ["en", "zh"],
      slope_deg: 6.5,
      ball_mm: 27,
    },
    null,
    2,
  )}\n`,
);
