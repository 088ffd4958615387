/// <reference types="vite/client" />
import { type CellTables, cellTablesOf, cellTablesOfRaw, FaultLog, LiveBook } from "@pinwright/book";
import { filesOf, rawFiles } from "@pinwright/book/csv";
import { Line } from "@pinwright/engine";
import type { Model } from "../model.ts";

const FILES = import.meta.glob<string>(
  ["../../../../../examples/first-light/**/*.csv", "../../../../../examples/first-light/machine.json"],
  { query: "?raw", import: "default", eager: true },
);

/** A model of cells that can be edited again and again, as the worker does it. */
export class ExampleModel {
  readonly #live = new LiveBook();
  readonly #line = new Line();
  tables: CellTables;
  readonly shopTables: CellTables;

  /** Begins with the small example. */
  constructor() {
    const texts = Object.entries(FILES).map(
      ([path, text]) => [path.slice(path.indexOf("first-light/") + "first-light/".length), text] as const,
    );
    const { raw, shop } = rawFiles(filesOf(new Map(texts)), new FaultLog());
    this.tables = cellTablesOf(raw);
    this.shopTables = shop === null ? new Map() : cellTablesOfRaw(shop);
  }

  get now(): Model {
    const { tables, shopTables } = this;
    const { book, shop, faults } = this.#live.update(tables, shopTables);
    const line = this.#line.run(book, shop);
    return { tables, shopTables, book, shop, line, base: line, faults, early: false, preview: false };
  }
}
