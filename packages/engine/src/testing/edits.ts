import { type Book, type BookRow, type BookTableName, withRows } from "@pinwright/book";
import fc from "fast-check";

/** A book in which one row of a table is another; the index counts round. */
export function edited<N extends BookTableName>(
  b: Book,
  table: N,
  index: number,
  change: (row: BookRow<N>) => BookRow<N>,
): Book {
  const rows: readonly BookRow<N>[] = b.tables[table];
  const at = index % rows.length;
  return withRows(
    b,
    table,
    rows.map((row, i) => (i === at ? change(row) : row)),
  );
}

function without<N extends BookTableName>(b: Book, table: N, index: number): Book {
  const rows: readonly BookRow<N>[] = b.tables[table];
  return withRows(
    b,
    table,
    rows.filter((_, i) => i !== index % rows.length),
  );
}

type Edit = (b: Book) => Book;

/** Tables of which the line is made, with the kinds of rows that most of its memories depend on. */
const LOSING: readonly BookTableName[] = [
  "board_types",
  "boards",
  "bodies",
  "bom",
  "cable_cores",
  "cables",
  "choices",
  "connectors",
  "crossings",
  "cutouts",
  "devices",
  "elements",
  "fasteners",
  "harnesses",
  "inlines",
  "mechanism_devices",
  "mechanism_fasteners",
  "mechanisms",
  "nets",
  "panel_sizes",
  "panels",
  "parts",
  "pins",
  "placements",
  "pose_places",
  "poses",
  "activity",
  "groups",
  "stations",
  "steps",
  "supplies",
  "terminals",
  "tests",
  "waypoints",
];

/** One edit of a book: something is moved, lost, or of another kind or size. */
export const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({ i: fc.nat(), dx: fc.integer({ min: -20, max: 20 }) }).map(
    ({ i, dx }): Edit =>
      (b) =>
        edited(b, "devices", i, (row) => ({ ...row, x_mm: row.x_mm + dx })),
  ),
  fc.record({ i: fc.nat(), dy: fc.integer({ min: -10, max: 10 }) }).map(
    ({ i, dy }): Edit =>
      (b) =>
        edited(b, "waypoints", i, (row) => ({ ...row, y_mm: row.y_mm + dy })),
  ),
  fc.record({ i: fc.nat(), dx: fc.integer({ min: -5, max: 5 }) }).map(
    ({ i, dx }): Edit =>
      (b) =>
        edited(b, "mechanisms", i, (row) => ({ ...row, x_mm: row.x_mm + dx })),
  ),
  fc.record({ i: fc.nat(), colour: fc.constantFrom("BK", "BN", "YE", null) }).map(
    ({ i, colour }): Edit =>
      (b) =>
        edited(b, "nets", i, (row) => ({ ...row, colour })),
  ),
  fc.nat().map(
    (i): Edit =>
      (b) =>
        edited(b, "nets", i, (row) => ({
          ...row,
          shape: row.shape === "auto" ? ("chain" as const) : ("auto" as const),
        })),
  ),
  fc.nat().map(
    (i): Edit =>
      (b) =>
        without(b, "ends", i),
  ),
  fc.record({ table: fc.constantFrom(...LOSING), i: fc.nat() }).map(
    ({ table, i }): Edit =>
      (b) =>
        without(b, table, i),
  ),
  fc.record({ i: fc.nat(), j: fc.nat() }).map(
    ({ i, j }): Edit =>
      (b) =>
        edited(b, "devices", i, (row) => {
          const types = b.tables.device_types;
          return { ...row, type: types[j % types.length]?.id ?? row.type };
        }),
  ),
  fc.record({ i: fc.nat(), dx: fc.integer({ min: -30, max: 30 }) }).map(
    ({ i, dx }): Edit =>
      (b) =>
        edited(b, i % 2 === 0 ? "boards" : "inlines", i, (row) => ({ ...row, x_mm: row.x_mm + dx })),
  ),
  fc.nat().map(
    (i): Edit =>
      (b) =>
        edited(b, "wire_types", i, (row) => ({ ...row, od_mm: row.od_mm + 0.1 })),
  ),
  fc.record({ i: fc.nat(), area: fc.constantFrom(0.22, 0.34, 0.82) }).map(
    ({ i, area }): Edit =>
      (b) =>
        edited(b, "wire_types", i, (row) => ({ ...row, area_mm2: area })),
  ),
  fc.record({ i: fc.nat(), ohm: fc.constantFrom(2, 8, null) }).map(
    ({ i, ohm }): Edit =>
      (b) =>
        edited(b, "elements", i, (row) => ({ ...row, ohm })),
  ),
  fc.record({ i: fc.nat(), mohm: fc.integer({ min: 1, max: 50 }) }).map(
    ({ i, mohm }): Edit =>
      (b) =>
        edited(b, "connector_families", i, (row) => ({ ...row, contact_mohm: mohm })),
  ),
  fc.record({ i: fc.nat(), volts: fc.integer({ min: 5, max: 60 }) }).map(
    ({ i, volts }): Edit =>
      (b) =>
        edited(b, "supplies", i, (row) => ({ ...row, volts })),
  ),
  fc.record({ i: fc.nat(), duty: fc.integer({ min: 0, max: 100 }) }).map(
    ({ i, duty }): Edit =>
      (b) =>
        edited(b, "activity", i, (row) => ({ ...row, duty_pct: duty })),
  ),
  fc.nat().map(
    (i): Edit =>
      (b) =>
        edited(b, "device_types", i, (row) => ({ ...row, width_mm: row.width_mm + 1 })),
  ),
  fc.nat().map(
    (i): Edit =>
      (b) =>
        without(b, "lanes", i),
  ),
  fc.record({ i: fc.nat(), dy: fc.integer({ min: -9, max: 9 }) }).map(
    ({ i, dy }): Edit =>
      (b) =>
        edited(b, "fasteners", i, (row) => ({ ...row, y_mm: row.y_mm + dy })),
  ),
  fc.record({ i: fc.nat(), length: fc.integer({ min: 4, max: 30 }) }).map(
    ({ i, length }): Edit =>
      (b) =>
        edited(b, "fastener_types", i, (row) => ({ ...row, length_mm: length })),
  ),
  fc.record({ i: fc.nat(), high: fc.integer({ min: 3, max: 90 }) }).map(
    ({ i, high }): Edit =>
      (b) =>
        edited(b, "bodies", i, (row) => ({ ...row, to_mm: Math.max(row.from_mm + 1, high) })),
  ),
  fc.record({ i: fc.nat(), dx: fc.integer({ min: -30, max: 30 }) }).map(
    ({ i, dx }): Edit =>
      (b) =>
        edited(b, "cutouts", i, (row) => ({ ...row, x_mm: row.x_mm + dx })),
  ),
);
