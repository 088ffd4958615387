import { expect, test } from "vitest";
import { FaultLog } from "../fault-log.ts";
import { FORMAT } from "../machine.ts";
import { readRawBook } from "../read/book.ts";
import type { RawBook } from "../read/raw.ts";
import { MIGRATIONS, type Migration, migrate } from "./migrate.ts";

const raw = (machine: unknown, header: readonly string[] = ["id", "old"]): RawBook => ({
  machine,
  tables: new Map([["things", { file: "things.csv", header, rows: [["a", "1"]] }]]),
  outlines: new Map(),
  unreadable: new Set(),
});

const renameColumn = (from: number, old: string, next: string): Migration => ({
  from,
  about: `\`${old}\` is called \`${next}\`.`,
  apply: (book) => ({
    ...book,
    tables: new Map(
      [...book.tables].map(([name, table]) => [
        name,
        { ...table, header: table.header.map((h) => (h === old ? next : h)) },
      ]),
    ),
  }),
});

const STEPS = [renameColumn(2, "new", "newer"), renameColumn(1, "old", "new")];

test("steps follow each other whatever their order in the list, and the format counts up", () => {
  const log = new FaultLog();
  const book = migrate(raw({ format: 1, id: "m" }), STEPS, 3, log);
  expect(book.tables.get("things")?.header).toEqual(["id", "newer"]);
  expect(book.machine).toEqual({ format: 3, id: "m" });
  expect(log.list()).toEqual([]);
});

test("a book of the present format is not touched", () => {
  const book = raw({ format: 3 });
  expect(migrate(book, STEPS, 3, new FaultLog())).toBe(book);
});

test("a newer format is a fault that says so", () => {
  const log = new FaultLog();
  const book = raw({ format: 4 });
  expect(migrate(book, STEPS, 3, log)).toBe(book);
  expect(log.list()).toMatchObject([
    {
      code: "format-unknown",
      file: "machine.json",
      column: "format",
      value: "4",
      expected: expect.stringContaining("newer program"),
      nearest: "3",
    },
  ]);
});

test("a gap in the steps is a fault", () => {
  const log = new FaultLog();
  migrate(raw({ format: 1 }), STEPS, 5, log);
  expect(log.list()).toMatchObject([
    { code: "format-unknown", expected: expect.stringContaining("from format 3 to 4") },
  ]);
});

test.each([undefined, null, [], {}, { format: "1" }, { format: 0 }, { format: 1.5 }])(
  "%j has no format and is left alone",
  (machine) => {
    const book = raw(machine);
    expect(migrate(book, STEPS, 3, new FaultLog())).toBe(book);
  },
);

test("there is one step for every older format", () => {
  expect(MIGRATIONS.map((step) => step.from).sort()).toEqual(
    Array.from({ length: FORMAT - 1 }, (_, i) => i + 1),
  );
});

test("reading a book of a newer format says so and opens it all the same", () => {
  const machine = { format: FORMAT + 1, id: "m", label: "M", revision: "1", date: "2026-01-01" };
  const { book, faults } = readRawBook({
    machine,
    tables: new Map(),
    outlines: new Map(),
    unreadable: new Set(),
  });
  expect(faults).toMatchObject([{ code: "format-unknown", value: String(FORMAT + 1) }]);
  expect(book.machine).toMatchObject({ id: "m", format: FORMAT });
});
