import { join } from "node:path";
import { type Book, emptyShop, multiplyBook, withRows } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import type { LineResult } from "../model/index.ts";
import { edit, edited } from "../testing/edits.ts";
import { Line } from "./line.ts";
import { settle } from "./settle.ts";

const shop = emptyShop();
let book: Book;

beforeAll(async () => {
  const read = await readBook(join(import.meta.dirname, "../../../../examples/first-light"));
  expect(read.faults).toEqual([]);
  book = read.book;
});

const scratch = (b: Book): LineResult => new Line().run(b, shop);

/** What people build from, without the machine that it was made from. */
const built = ({ machine: _machine, swaps: _swaps, ratings: _ratings, ...made }: LineResult) => made;

describe("Line", () => {
  it("remembers nothing but what from scratch gives, over random edits (seed 11)", () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 5 }), (edits) => {
        const line = new Line();
        line.run(book, shop);
        let now = book;
        for (const change of edits) {
          now = change(now);
          expect(built(line.run(now, shop))).toEqual(built(scratch(now)));
        }
      }),
      { seed: 11, numRuns: 14 },
    );
  });

  it("gives the same whatever the order of the rows (seed 5)", () => {
    const expected = built(scratch(book));
    fc.assert(
      fc.property(fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })), (random) => {
        const tables = Object.fromEntries(
          Object.entries(book.tables).map(([name, rows]) => [
            name,
            // Terminals keep their order: it is the order in which a device's points are told.
            name === "terminals" ? rows : shuffled<unknown>(rows, random),
          ]),
        );
        const other: Book = { ...book, tables: { ...book.tables, ...tables } };
        expect(built(scratch(other))).toEqual(expected);
      }),
      { seed: 5, numRuns: 4 },
    );
  });

  it("computes anew only the harness that an edit touches", () => {
    const line = new Line();
    const before = line.run(book, shop);
    const count = line.computed;
    const lamp = book.tables.devices.findIndex((row) => row.id === "lp.d");
    const after = line.run(
      edited(book, "devices", lamp, (row) => ({ ...row, y_mm: row.y_mm + 3 })),
      shop,
    );
    // All stages of hs.lamps but its colours, which have nothing to do with places; and the wires of hs.power: net
    // p5 runs in both, they come out equal and stop there.
    expect(line.computed - count).toBe(6);
    for (const id of ["hs.power", "hs.deck", "hs.field"])
      expect(after.harnesses.get(id)).toBe(before.harnesses.get(id));
    expect(after.harnesses.get("hs.lamps")).not.toBe(before.harnesses.get("hs.lamps"));
  });
});

type Parts = Line["computedParts"];

/** How much was computed between two counts. */
const since = (before: Parts, after: Parts): Parts => ({
  items: after.items - before.items,
  nets: after.nets - before.nets,
  drops: after.drops - before.drops,
  places: after.places - before.places,
  keyings: after.keyings - before.keyings,
  courses: after.courses - before.courses,
  networks: after.networks - before.networks,
  islands: after.islands - before.islands,
  protections: after.protections - before.protections,
});

describe("one moved lamp, in counted parts", () => {
  it("looks anew only at what has to do with its place", () => {
    const line = new Line();
    const { machine } = line.run(book, shop);
    const before = line.computedParts;
    const lamp = book.tables.devices.findIndex((row) => row.id === "lp.d");
    const moved = line.run(
      edited(book, "devices", lamp, (row) => ({ ...row, y_mm: row.y_mm + 3 })),
      shop,
    ).machine;
    const parts = since(before, line.computedParts);
    // One item of all; its two nets in hs.lamps, and p5, which is one of them, in hs.power as well.
    expect(machine.items.size).toBeGreaterThanOrEqual(30);
    expect(machine.nets.size).toBe(20);
    expect(parts).toEqual({
      items: 1,
      nets: 3,
      drops: 3,
      places: 0,
      keyings: 0,
      courses: 0,
      networks: 0,
      islands: 0,
      protections: 0,
    });
    expect(moved.elements).toBe(machine.elements);
    expect(moved.nets).toBe(machine.nets);
  });
});

describe("growth, in counted operations", () => {
  /** Operations of a first run on so many copies of the book, and of a second after one lamp has moved. */
  const counts = (times: number) => {
    const large = multiplyBook(book, times);
    const line = new Line();
    const { harnesses } = line.run(large, shop);
    const first = { stages: line.computed, packed: line.packed };
    const parts = line.computedParts;
    const lamp = large.tables.devices.findIndex((row) => row.id === "lp.d");
    line.run(
      edited(large, "devices", lamp, (row) => ({ ...row, y_mm: row.y_mm + 3 })),
      shop,
    );
    return {
      harnesses: harnesses.size,
      first,
      again: line.computed - first.stages,
      againParts: since(parts, line.computedParts),
    };
  };

  it("takes four times the stages for four copies, packs no bundle twice, and after an edit as many as for one", () => {
    const one = counts(1);
    const four = counts(4);
    expect(one.first.stages).toBe(6 * one.harnesses);
    expect(four.harnesses).toBe(4 * one.harnesses);
    expect(four.first.stages).toBe(4 * one.first.stages);
    expect(four.first.packed).toBe(one.first.packed);
    expect(four.again).toBe(one.again);
    expect(four.againParts).toEqual(one.againParts);
  });
});

describe("a settled book", () => {
  const ids = (result: LineResult): readonly string[] => [...result.harnesses.keys()];

  /** One more switch on the field, on the spare way of the in-line connector. */
  const withSwitch = (b: Book): Book => {
    const [model] = b.tables.devices.filter((row) => row.id === "sw.top");
    if (model === undefined) throw new Error("first-light has no sw.top");
    const devices = [...b.tables.devices, { ...model, id: "sw.new", x_mm: 160, y_mm: 245, number: 9 }];
    const [net] = b.tables.nets.filter((row) => row.id === "switch.3");
    if (net === undefined) throw new Error("first-light has no switch.3");
    const ends = [
      { point: "il.field:b.12", net: "switch.new", harness: "hs.field", options: [] },
      { point: "sw.new:no", net: "switch.new", harness: "hs.field", options: [] },
      { point: "sw.new:com", net: "switch.common", harness: "hs.field", options: [] },
    ];
    const added = withRows(withRows(b, "devices", devices), "nets", [
      ...b.tables.nets,
      { ...net, id: "switch.new" },
    ]);
    return withRows(added, "ends", [...b.tables.ends, ...ends]);
  };

  it("gives the same result, and settling it again changes nothing", () => {
    const free = scratch(book);
    const settled = withRows(book, "choices", settle(free, ids(free)).choices);
    const result = scratch(settled);
    expect([...result.harnesses.values()].map((h) => h.wires)).toEqual(
      [...free.harnesses.values()].map((h) => h.wires),
    );
    const again = settle(result, ids(result));
    expect({ added: again.added, changed: again.changed, removed: again.removed }).toEqual({
      added: 0,
      changed: 0,
      removed: 0,
    });
  });

  it("keeps every other id, number, colour and peg when a switch is added", () => {
    const free = scratch(book);
    const settled = withRows(book, "choices", settle(free, ids(free)).choices);
    const before = scratch(settled);
    const after = scratch(withSwitch(settled));
    const wires = (r: LineResult) =>
      new Map([...r.harnesses.values()].flatMap((h) => h.wires.map((w) => [w.id, w] as const)));
    const old = wires(before);
    const now = wires(after);
    const gone = [...old.keys()].filter((id) => !now.has(id));
    expect(gone.length).toBeLessThanOrEqual(1);
    expect(gone.every((id) => id.startsWith("switch.common|hs.field|"))).toBe(true);
    for (const [id, wire] of old) {
      const same = now.get(id);
      if (same !== undefined) expect([id, same.number, same.colour]).toEqual([id, wire.number, wire.colour]);
    }
    for (const id of ["hs.power", "hs.lamps", "hs.deck"])
      expect(after.harnesses.get(id)?.pinboard).toEqual(before.harnesses.get(id)?.pinboard);
    const fresh = [...now.keys()].filter((id) => !old.has(id));
    expect(fresh.some((id) => id.includes("sw.new:no"))).toBe(true);
    expect(fresh.some((id) => id.includes("sw.new:com"))).toBe(true);
  });
});

function shuffled<T>(rows: readonly T[], random: Iterator<number>): readonly T[] {
  const keyed = rows.map((row) => ({ row, at: Number(random.next().value) }));
  return keyed.sort((a, b) => a.at - b.at).map(({ row }) => row);
}

describe("places", () => {
  it("are those of a run, with nothing derived", () => {
    const line = new Line();
    const early = line.places(book, shop);
    expect(early.harnesses.size).toBe(0);
    expect([...early.machine.items]).toEqual([...line.run(book, shop).machine.items]);
  });
});
