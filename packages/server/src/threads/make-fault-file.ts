import { writeFileSync } from "node:fs";
import { rawBookOf, rawShopOf, readRawBook, readRawShop } from "@pinwright/book";
import { faultFileOf, Line } from "@pinwright/engine";
import { cellsOfJson } from "./cells-json.ts";
import type { Task } from "./messages.ts";

/** Writes what faults of a machine are found with into a file. */
export function makeFaultFile({ path, given }: Extract<Task, { kind: "fault-file" }>): void {
  const { tables, shop, options, revision, built } = given;
  const { book } = readRawBook(rawBookOf(cellsOfJson(tables)).raw);
  const read = readRawShop(rawShopOf(cellsOfJson(shop)).raw, new Set()).shop;
  const line = new Line().run(book, read, options.length === 0 ? undefined : new Set(options));
  const file = faultFileOf(line, { built, revision: revision === "" ? null : revision });
  writeFileSync(path, JSON.stringify(file), { mode: 0o600 });
}
