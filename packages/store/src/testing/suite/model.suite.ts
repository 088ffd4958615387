import { cellOf, RANK } from "@pinwright/book";
import fc from "fast-check";
import { afterAll, beforeAll, expect, it } from "vitest";
import { openStore } from "../../open.ts";
import type { Outcome, Store } from "../../store.ts";
import { allSets, cell, done, plain, replay, tablesOf } from "../cells.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { ANN, BEN, CHO, testOptions } from "../options.ts";
import { ModelBook, type Step } from "./model.ts";

const START = tablesOf({
  devices: { r1: { [RANK]: "a", x_mm: "1" }, r2: { [RANK]: "b" } },
  nets: { r1: { [RANK]: "a", x_mm: "1" } },
});

/** An edit of a few cells; `stale` ones say what the cell may not say. */
const edits = fc.array(
  fc.record({
    table: fc.constantFrom("devices", "devices", "nets"),
    row: fc.constantFrom("r1", "r1", "r2", "r3"),
    column: fc.constantFrom(RANK, "x_mm", "x_mm", "x_mm", "y_mm"),
    to: fc.constantFrom("", "1", "2", "3"),
    stale: fc.constantFrom(null, null, null, null, null, null, null, "", "1"),
  }),
  { minLength: 1, maxLength: 3 },
);
const action = fc.oneof(
  { weight: 5, arbitrary: edits },
  { weight: 3, arbitrary: fc.constant("undo" as const) },
  { weight: 2, arbitrary: fc.constant("redo" as const) },
);
const story = fc.array(fc.tuple(fc.constantFrom(ANN, BEN, CHO), action), { maxLength: 30, size: "max" });

const SEED = 17;
const RUNS = 80;

const stepOf = (outcome: Outcome<unknown>): Step =>
  "done" in outcome ? "done" : outcome.refused === "conflict" ? "conflict" : "nothing";

/** Random work of three people against a model that keeps no log. */
export function modelSuite(fresh: FreshPlace): void {
  let store: Store;
  beforeAll(async () => {
    store = await openStore(await fresh(), testOptions());
  });
  afterAll(() => store.close());

  it(`equals a simple model and the replay of its log (seed ${SEED})`, async () => {
    let books = 0;
    let requests = 0;
    const seen = new Map<string, number>();
    await fc.assert(
      fc.asyncProperty(story, async (steps) => {
        books += 1;
        const book = `book-${books}`;
        done(await store.books.add({ id: book, kind: "machine", tables: START, note: "" }, ANN));
        const model = new ModelBook(START);
        for (const [actor, what] of steps) {
          requests += 1;
          const id = `request-${requests}`;
          if (typeof what === "string") {
            const expected = model[what](actor.personId);
            expect(stepOf(await store.books[what](book, id, actor))).toBe(expected);
            count(seen, `${what} ${expected}`);
            continue;
          }
          let planned = model.tables;
          const changes = what.map(({ table, row, column, to, stale }) => {
            const change = cell(table, row, column, stale ?? cellOf(planned, table, row, column), to);
            planned = withCell(planned, change.table, change.row, change.column, to);
            return change;
          });
          const edited = model.edit(actor.personId, changes);
          const outcome = await store.books.change(book, { id, kind: "edit", note: "", changes }, actor);
          expect(stepOf(outcome)).toBe(edited);
          count(seen, `edit ${edited}`);
        }
        const kept = plain(done(await store.books.rows(book)).tables);
        expect(kept).toEqual(plain(model.tables));
        const sets = await allSets(store, book);
        expect(sets.map(({ no }) => no)).toEqual(sets.map((_, index) => index + 1));
        expect(plain(replay(sets))).toEqual(kept);
      }),
      { seed: SEED, numRuns: RUNS },
    );
    // Every outcome came up, or the property would say less than it seems to.
    const outcomes = ["edit", "undo", "redo"].flatMap((what) => [`${what} done`, `${what} conflict`]);
    for (const outcome of [...outcomes, "undo nothing", "redo nothing"]) {
      expect(seen.get(outcome) ?? 0, outcome).toBeGreaterThan(3);
    }
  });
}

const count = (seen: Map<string, number>, what: string) => seen.set(what, (seen.get(what) ?? 0) + 1);

/** Tables with one cell set, without any check. */
function withCell(
  tables: ReturnType<typeof tablesOf>,
  table: string,
  row: string,
  column: string,
  to: string,
): ReturnType<typeof tablesOf> {
  const rows = new Map(tables.get(table));
  rows.set(row, new Map(rows.get(row)).set(column, to));
  return new Map(tables).set(table, rows);
}
