import { COLOUR_CODES } from "@pinwright/kernel";
import fc from "fast-check";
import type { CellKind, Column } from "../schema/column.ts";
import type { Table } from "../schema/table.ts";

const id = fc
  .array(fc.stringMatching(/^[a-z0-9]{1,4}$/), { minLength: 1, maxLength: 3 })
  .map((words) => words.join("."));

const point = fc.tuple(id, id).map(([a, b]) => `${a}:${b}`);

/** Text of every kind of trouble: separators, quotes, line breaks, formulas, apostrophes, other scripts. */
const text = fc.oneof(
  fc.string({
    unit: fc.constantFrom(
      ",",
      ";",
      "\t",
      '"',
      "'",
      "\n",
      "=",
      "+",
      "-",
      "@",
      " ",
      "a",
      "1",
      ".",
      "é",
      "面",
      "😀",
      "\u00a0",
      "\ufeff",
      "_x0041_",
      "&",
      "<",
    ),
    maxLength: 8,
  }),
  fc
    .string({ unit: "grapheme", maxLength: 12 })
    .filter((s) => !/[^\P{Cc}\n\t]|\p{Cs}|[\ufffe\uffff]/u.test(s)),
  fc.constantFrom("2026-03-31", "1e5", "007", "=SUM(A1)", "'=1", "''", "TRUE", "-5", "3,5", "#REF!"),
);

const colour = fc
  .uniqueArray(fc.constantFrom(...COLOUR_CODES.map(({ code }) => code).filter((code) => code !== "GNYE")), {
    minLength: 1,
    maxLength: 2,
  })
  .map((codes) => codes.join(""));

const list = (word: fc.Arbitrary<string>): fc.Arbitrary<unknown> => fc.uniqueArray(word, { maxLength: 4 });

const number = (column: Column<unknown>): fc.Arbitrary<unknown> =>
  fc.double({ min: column.min ?? -1e9, max: column.max ?? 1e9, noNaN: true }).map((n) => (n === 0 ? 0 : n));

const integer = (column: Column<unknown>): fc.Arbitrary<unknown> =>
  fc.integer({ min: Math.max(column.min ?? -1e9, -1e9), max: Math.min(column.max ?? 1e9, 1e9) });

const VALUES: Readonly<Record<CellKind, (column: Column<unknown>) => fc.Arbitrary<unknown>>> = {
  id: () => id,
  ref: () => id,
  refs: () => list(id),
  item: () => id,
  items: () => list(id),
  point: () => point,
  "local-point": () => point,
  number,
  integer,
  choice: (column) => fc.constantFrom(...(column.oneOf ?? [])),
  text: () => text,
  label: () => text,
  flag: () => fc.boolean(),
  colour: () => colour,
  colours: () => list(colour),
  names: () => list(id),
  outline: () => id.map((name) => `${name}.dxf`),
};

function cell(column: Column<unknown>): fc.Arbitrary<unknown> {
  const value = VALUES[column.kind](column);
  if (!column.required) return fc.oneof(fc.constant(column.blank), value);
  return column.kind === "text" ? value.filter((v) => typeof v === "string" && v.trim() !== "") : value;
}

/** A row of a table whose cells are good one by one; its references lead nowhere in particular. */
export const arbitraryRow = (table: Table): fc.Arbitrary<Record<string, unknown>> =>
  fc.record(Object.fromEntries(Object.entries(table.columns).map(([name, column]) => [name, cell(column)])), {
    noNullPrototype: true,
  });
