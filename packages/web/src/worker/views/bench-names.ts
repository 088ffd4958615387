import type { BookRow } from "@pinwright/book";
import { continuityTest } from "@pinwright/engine";
import { type NamedId, namedType } from "../steps/named.ts";
import { view } from "./view.ts";

/** A test as records of it are read: with the limits of the design. */
export interface BenchTest extends NamedId {
  readonly kind: BookRow<"tests">["kind"];
  readonly purpose: BookRow<"tests">["purpose"];
  readonly unit: string;
  readonly min: number | null;
  readonly max: number | null;
  /** Harness that it tries every point of; null: a test of the book. */
  readonly harness: string | null;
}

/** Every test that a unit can take, by id. */
export const benchTests = view<null, BenchTest>({
  early: true,
  uses: ({ book: { tables } }) => [tables.tests, tables.harnesses],
  entries: ({ book: { tables } }) =>
    new Map([
      ...tables.tests.map((row): [string, BenchTest] => [
        row.id,
        {
          ...namedType(row),
          ...{ kind: row.kind, purpose: row.purpose, unit: row.unit, min: row.min, max: row.max },
          harness: null,
        },
      ]),
      ...tables.harnesses.map((row): [string, BenchTest] => [
        continuityTest(row.id),
        {
          ...namedType(row),
          ...{
            id: continuityTest(row.id),
            kind: "sequence",
            purpose: "other",
            unit: "",
            min: null,
            max: null,
          },
          harness: row.id,
        },
      ]),
    ]),
  restsInPreview: true,
});

/** What records name beside tests and steps: places of boards, parts, sites, stages, stations and runs, by `kind id`. */
export const benchNames = view<null, NamedId>({
  early: true,
  uses: ({ book: { tables }, shop }) => [
    tables.boards,
    tables.harnesses,
    tables.parts,
    shop.tables.sites,
    shop.tables.stages,
    tables.stations,
    shop.tables.runs,
  ],
  entries: ({ book: { tables }, shop }) => {
    const kinds = [
      ["place", [...tables.boards, ...tables.harnesses]],
      ["part", tables.parts],
      ["site", shop.tables.sites],
      ["stage", shop.tables.stages],
      ["station", tables.stations],
      ["run", shop.tables.runs],
    ] as const;
    return new Map(
      kinds.flatMap(([kind, rows]) =>
        rows.map((row): [string, NamedId] => [`${kind} ${row.id}`, namedType(row)]),
      ),
    );
  },
  restsInPreview: true,
});
