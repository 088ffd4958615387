import { type Book, type BookRow, type BookTableName, renameId, withRows } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { edit, edited } from "../testing/edits.ts";
import { Line } from "../testing/line.ts";
import type { Comparison, MachineChange } from "./change.ts";
import { compareFacts } from "./compare.ts";
import { effectsOn } from "./effects.ts";
import type { MachineFacts } from "./facts.ts";
import { machineFacts } from "./make-facts.ts";
import { readMachineFacts } from "./read-facts.ts";

let book: Book;
let line: Line;
let before: MachineFacts;
let facts: (of: Book) => MachineFacts;

beforeAll(async () => {
  const read = await readBook(new URL("../../../../examples/first-light", import.meta.url).pathname);
  if (read.shop === null) throw new Error("the example has a shop");
  const { shop } = read;
  ({ book } = read);
  line = new Line();
  facts = (of) => machineFacts(line.run(of, shop), []);
  before = facts(book);
}, 60_000);

/** The book with other values in the first row that a predicate picks. */
function put<N extends BookTableName>(
  table: N,
  pick: (row: BookRow<N>) => boolean,
  values: Partial<BookRow<N>>,
): Book {
  const rows: readonly BookRow<N>[] = book.tables[table];
  return edited(book, table, rows.findIndex(pick), (row) => ({ ...row, ...values }));
}

const compared = (to: Book): Comparison => compareFacts(before, facts(to));
const about = ({ groups }: Comparison, table: string, id: string): readonly MachineChange[] =>
  groups.find(({ subject }) => subject.table === table && subject.id === id)?.changes ?? [];
const told = ({ groups }: Comparison): readonly string[] =>
  groups.flatMap(({ subject, changes }) =>
    changes.map(({ what }) => `${subject.table} ${subject.id}: ${what}`),
  );

describe("comparing two revisions", () => {
  it("says nothing of the same", () => {
    const same = compared(book);
    expect(same.groups).toEqual([]);
    expect(same.harnesses).toEqual([]);
  });

  it("tells a move by its distance, and with it what becomes of the thing's own wires", () => {
    const row = book.tables.devices.find(({ id }) => id === "sw.top");
    const comparison = compared(
      put("devices", ({ id }) => id === "sw.top", {
        x_mm: (row?.x_mm ?? 0) + 36,
        y_mm: (row?.y_mm ?? 0) - 48,
      }),
    );
    const changes = about(comparison, "devices", "sw.top");
    expect(changes[0]).toEqual({ what: "moved", values: { mm: 60, dxMm: 36, dyMm: -48 } });
    expect(changes.some(({ what }) => what === "wire-length")).toBe(true);
    const [harness] = comparison.harnesses;
    expect(harness?.wires.longer).toBeGreaterThan(0);
    expect(harness?.does).toMatch(/longer-tails|scrap/u);
  });

  it("tells a new name, a turn, another side and another type each in its own sentence", () => {
    const row = book.tables.devices.find(({ id }) => id === "sw.top");
    const side = row?.side === "top" ? "under" : "top";
    const comparison = compared(
      put("devices", ({ id }) => id === "sw.top", { label: "Uppermost", rotation_deg: 90, side }),
    );
    expect(about(comparison, "devices", "sw.top").map(({ what }) => what)).toEqual(
      expect.arrayContaining(["put-on", "turned", "named"]),
    );
  });

  it("tells a device that uses another pin of a board once, and not again at the board", () => {
    const used = before.items["sw.top"]?.uses[0] ?? "";
    const taken = new Set(book.tables.ends.map(({ point }) => point));
    const [board = "", cavity = ""] = used.split(/\.(?=\d+$)/u);
    const free = Array.from({ length: 20 }, (_, i) => `${board}.${i + 1}`).find(
      (point) => !taken.has(point) && point !== used,
    );
    const other =
      free ?? book.tables.ends.find(({ point }) => point.startsWith(`${board}.`) && point !== used)?.point;
    expect(cavity).not.toBe("");
    const ends = book.tables.ends.map((end) =>
      end.point === used
        ? { ...end, point: other ?? "" }
        : end.point === other
          ? { ...end, point: used }
          : end,
    );
    const comparison = compared(withRows(book, "ends", ends));
    const uses = about(comparison, "devices", "sw.top").find(({ what }) => what === "uses");
    expect(uses?.values).toEqual({ from: [used], to: [other] });
    expect(
      told(comparison).filter((text) => text.includes("joined") && text.includes(board.split(":")[0] ?? "")),
    ).toEqual([]);
  });

  it("tells what is new and gone as a whole, not row by row", () => {
    const gone = withRows(
      withRows(
        book,
        "devices",
        book.tables.devices.filter(({ id }) => id !== "sw.top"),
      ),
      "ends",
      book.tables.ends.filter(({ point }) => !point.startsWith("sw.top:")),
    );
    const away = compared(gone);
    expect(about(away, "devices", "sw.top")[0]).toMatchObject({ what: "gone" });
    expect(told(away).filter((text) => text.startsWith("devices sw.top") && text.endsWith("joined"))).toEqual(
      [],
    );
    const back = compareFacts(facts(gone), before);
    expect(about(back, "devices", "sw.top")[0]).toMatchObject({ what: "new" });
  });

  it("knows a renamed thing again", () => {
    const renamed = renameId(book, "devices", "sw.top", "sw.uppermost");
    const comparison = compared(renamed.ok ? renamed.book : book);
    expect(about(comparison, "devices", "sw.uppermost")).toEqual([
      { what: "renamed", values: { from: "sw.top", to: "sw.uppermost" } },
    ]);
    expect(told(comparison).filter((text) => /gone|new$/u.test(text))).toEqual([]);
  });

  it("tells a value with what it was, and a part's count", () => {
    const fuse = compared(put("fuses", () => true, { rated_a: 1.25 }));
    const [field] = fuse.groups.flatMap(({ changes }) => changes.filter(({ what }) => what === "field"));
    expect(field?.values).toMatchObject({ table: "fuses", column: "rated_a", to: "1.25" });
  });

  it("leaves out no row that differs, and says something both ways round", () => {
    fc.assert(
      fc.property(edit, (change) => {
        const after = facts(change(book));
        const there = compareFacts(before, after);
        const back = compareFacts(after, before);
        const differs = JSON.stringify(before.rows) !== JSON.stringify(after.rows);
        if (differs) expect(there.groups.length).toBeGreaterThan(0);
        const subjects = (of: Comparison) =>
          new Set(of.groups.map(({ subject }) => `${subject.table} ${subject.id}`));
        expect(subjects(back)).toEqual(subjects(there));
      }),
      { seed: 8, numRuns: 40 },
    );
  }, 60_000);

  it("says which units keep the old, and which lie loose and can be reworked", () => {
    const comparison = compared(put("devices", ({ id }) => id === "sw.top", { x_mm: 250 }));
    const harness = comparison.harnesses[0]?.harness ?? "";
    const unit = (
      id: string,
      what: "machine" | "harness",
      type: string,
      within: string,
      revision: string,
    ) => ({
      ...{ unit: id, what, type, within, revision, isReleased: false },
    });
    const affected = effectsOn(comparison, "B", [
      unit("m-000001", "machine", "first-light", "", "A"),
      unit("m-000002", "machine", "first-light", "", "B"),
      unit("h-000001", "harness", harness, "m-000001", "A"),
      unit("h-000002", "harness", harness, "", "A"),
      unit("h-000003", "harness", "hs.none", "", "A"),
    ]);
    expect(affected).toEqual([
      { what: "harness", type: harness, loose: ["h-000002"], keep: ["h-000001"] },
      { what: "machine", type: "first-light", loose: [], keep: ["m-000001"] },
    ]);
  });

  it("reads facts that were kept, and refuses those of a later program", () => {
    const kept: unknown = JSON.parse(JSON.stringify(before));
    expect(compareFacts(readMachineFacts(kept), before).groups).toEqual([]);
    // Kept facts have their names in order, fresh ones have not.
    const turned: unknown = JSON.parse(JSON.stringify(before), (_, value: unknown) =>
      typeof value === "object" && value !== null && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(value).reverse())
        : value,
    );
    expect(compareFacts(readMachineFacts(turned), before).groups).toEqual([]);
    expect(() => readMachineFacts({ ...before, format: 2 })).toThrow(/form 2/u);
    expect(() => readMachineFacts({ format: 1 })).toThrow(/machine, rows/u);
  });
});
