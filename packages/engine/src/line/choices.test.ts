import { fileURLToPath } from "node:url";
import { type Book, emptyShop, withRows } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LineResult } from "../model/index.ts";
import { Line } from "./line.ts";
import { settle } from "./settle.ts";

const folder = fileURLToPath(new URL("../../../../examples/first-light", import.meta.url));
const read = await readBook(folder);
const shop = read.shop ?? emptyShop();
const free = new Line().run(read.book, shop);
/** Everything of the small example kept, so that there is a choice of every kind that settling makes. */
const book = withRows(read.book, "choices", settle(free, [...free.harnesses.keys()]).choices);

const built = ({ harnesses, findings, keys }: LineResult) => ({ harnesses, findings, keys });

type Edit = (b: Book) => Book;

const choiceEdit: fc.Arbitrary<Edit> = fc
  .record({ at: fc.nat(), other: fc.nat(), what: fc.constantFrom("lose", "pin", "value", "add") })
  .map(
    ({ at, other, what }): Edit =>
      (b) => {
        const rows = b.tables.choices;
        const row = rows[at % rows.length];
        if (row === undefined) return b;
        const alike = rows.filter((one) => one.kind === row.kind);
        const value = alike[other % alike.length]?.value ?? row.value;
        switch (what) {
          case "lose":
            return withRows(
              b,
              "choices",
              rows.filter((one) => one !== row),
            );
          case "pin":
            return withRows(
              b,
              "choices",
              rows.map((one) => (one === row ? { ...one, held: "pinned" as const } : one)),
            );
          case "value":
            return withRows(
              b,
              "choices",
              rows.map((one) => (one === row ? { ...one, value } : one)),
            );
          case "add":
            return withRows(b, "choices", [
              ...rows,
              { ...row, kind: "spare" as const, subject: "bd.switch:j1.4" },
            ]);
        }
      },
  );

describe("Line with choices", () => {
  it("remembers nothing but what from scratch gives, over random edits of choices (seed 12)", () => {
    fc.assert(
      fc.property(fc.array(choiceEdit, { minLength: 1, maxLength: 6 }), (edits) => {
        const line = new Line();
        line.run(book, shop);
        let now = book;
        for (const change of edits) {
          now = change(now);
          expect(built(line.run(now, shop))).toEqual(built(new Line().run(now, shop)));
        }
      }),
      { seed: 12, numRuns: 12 },
    );
  });

  it("lays only the pinboard anew whose peg is another", () => {
    const line = new Line();
    line.run(book, shop);
    const before = line.computed;
    const peg = book.tables.choices.find((row) => row.kind === "peg");
    const pinned = withRows(
      book,
      "choices",
      book.tables.choices.map((row) => (row === peg ? { ...row, held: "pinned" as const } : row)),
    );
    line.run(pinned, shop);
    expect(line.computed - before).toBe(1);
    line.run(withRows(pinned, "choices", [...pinned.tables.choices]), shop);
    expect(line.computed - before).toBe(1);
  });
});
