import { type Book, renameId } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { beforeAll, expect, test } from "vitest";

let book: Book;
beforeAll(async () => {
  ({ book } = await readBook(import.meta.dirname));
});

/** Cells of all tables but `renames` in which an id stands as a word of its own, perhaps with a point or child behind it. */
function naming(of: Book, id: string): readonly string[] {
  const plain = id.replace(/[.]/gu, "\\.");
  const word = new RegExp(`(?<![\\w.-])${plain}(?![\\w.-])`, "u");
  return Object.entries(of.tables).flatMap(([table, rows]) =>
    table === "renames"
      ? []
      : rows.flatMap((row) =>
          Object.entries(row).flatMap(([column, cell]) =>
            word.test(Array.isArray(cell) ? cell.join(" ") : String(cell ?? ""))
              ? [`${table}.${column}`]
              : [],
          ),
        ),
  );
}

test.each([
  ["devices", "lp.compass-1", "lp.north"],
  ["devices", "lp.bb-18", "lp.crown"],
  ["boards", "bd.coil-front", "bd.coil-near"],
  ["mechanisms", "mech.drops", "mech.bank"],
  ["inlines", "il.pf-bus-lower", "il.bus"],
  ["harnesses", "hs.switch-front", "hs.front"],
  ["nets", "mains.inlet-l", "mains.in"],
  ["waypoints", "wp.pf-row-122", "wp.row"],
  ["lanes", "ln.bo-rear-350.bo-434-214", "ln.crossbar"],
  ["supplies", "sup.48", "sup.coils"],
])("whatever people pinned and accepted of %s %s follows its new id", (table, from, to) => {
  const before = naming(book, from);
  expect(before.length).toBeGreaterThan(1);
  const renamed = renameId(book, table, from, to);
  if (!renamed.ok) throw new Error(renamed.reason);
  expect(naming(renamed.book, from)).toEqual([]);
  expect(naming(renamed.book, to)).toEqual(before);
});
