import { emptyBook, emptyShop } from "@pinwright/book";
import { Line } from "@pinwright/engine";
import { describe, expect, it } from "vitest";
import type { Model } from "./model.ts";
import type { FromWorker } from "./protocol.ts";
import { view } from "./views/view.ts";
import { Watching } from "./watching.ts";

const line = new Line();
const modelOf = (more: Partial<Model>): Model => {
  const [book, shop] = [more.book ?? emptyBook(), emptyShop()];
  const result = line.run(book, shop);
  return {
    tables: new Map(),
    shopTables: new Map(),
    book,
    shop,
    line: result,
    base: result,
    faults: () => [],
    early: false,
    preview: false,
    ...more,
  };
};

/** Letters of the machine's name, each with the place where it stands first. */
const letters = (more: { readonly early?: boolean; readonly restsInPreview?: boolean } = {}) =>
  view<unknown, number>({
    ...more,
    uses: ({ book }) => [book.machine.label],
    entries: ({ book }) => new Map([...book.machine.label].map((letter, i) => [letter, i])),
  });

const named = (label: string): Partial<Model> => {
  const book = emptyBook();
  return { book: { ...book, machine: { ...book.machine, label } } };
};

describe("Watching", () => {
  it("tells all entries first, then only those that differ, and nothing when nothing does", () => {
    const told: FromWorker[] = [];
    const watching = new Watching((message) => told.push(message));
    watching.watch("k", letters(), null, modelOf(named("abc")));
    watching.tell(modelOf(named("abc")), null);
    watching.tell(modelOf(named("axc")), 7);
    expect(told).toEqual([
      {
        type: "view",
        key: "k",
        set: [
          ["a", 0],
          ["b", 1],
          ["c", 2],
        ],
        gone: [],
        order: ["a", "b", "c"],
        at: null,
      },
      { type: "view", key: "k", set: [["x", 1]], gone: ["b"], order: ["a", "x", "c"], at: 7 },
    ]);
  });

  it("makes only early views while nothing is derived yet", () => {
    const told: FromWorker[] = [];
    const watching = new Watching((message) => told.push(message));
    const early = modelOf({ ...named("a"), early: true });
    watching.watch("late", letters(), null, early);
    watching.watch("soon", letters({ early: true }), null, early);
    expect(told.map((message) => message.type === "view" && message.key)).toEqual(["soon"]);
    watching.tell(modelOf(named("a")), null);
    expect(told.map((message) => message.type === "view" && message.key)).toEqual(["soon", "late"]);
  });

  it("lets views rest during a drag once they were told", () => {
    const told: FromWorker[] = [];
    const watching = new Watching((message) => told.push(message));
    watching.watch("k", letters({ restsInPreview: true }), null, modelOf({ ...named("a"), preview: true }));
    watching.tell(modelOf({ ...named("b"), preview: true }), 1);
    expect(told).toHaveLength(1);
    watching.tell(modelOf(named("b")), null);
    expect(told).toHaveLength(2);
  });
});
