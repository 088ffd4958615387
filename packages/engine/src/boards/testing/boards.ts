import type { BookRow } from "@pinwright/book";
import fc from "fast-check";
import type { SomeTables } from "../../testing/book.ts";

export type SomePlacement = Partial<BookRow<"placements">>;

/** A part on the board `bt` of these tests. */
export const part = (reference: string, cells: SomePlacement = {}): SomePlacement => ({
  board_type: "bt",
  reference,
  part: "p.res",
  x_mm: 10,
  y_mm: 10,
  width_mm: 6,
  depth_mm: 2,
  height_mm: 2,
  joints: 2,
  ...cells,
});

/** A machine with boards of one type. */
export const boardTables = (
  placements: readonly SomePlacement[],
  more: SomeTables = {},
  boards = 1,
): SomeTables => ({
  panels: [{ id: "pl" }],
  board_types: [{ id: "bt", label: "Board", revision: "A", width_mm: 200, depth_mm: 150, height_mm: 30 }],
  boards: Array.from({ length: boards }, (_, i) => ({ id: `bd.${i}`, type: "bt", panel: "pl" })),
  placements,
  ...more,
});

/** Parts of a board in any order, of few kinds, heights and places. */
export const arbitraryParts: fc.Arbitrary<readonly SomePlacement[]> = fc
  .array(
    fc.record({
      kind: fc.integer({ min: 0, max: 4 }),
      x: fc.integer({ min: 0, max: 190 }),
      y: fc.integer({ min: 0, max: 140 }),
      rotation: fc.constantFrom(0, 90, 180, 270),
      joints: fc.integer({ min: 1, max: 12 }),
      afterWash: fc.boolean(),
      hidden: fc.boolean(),
      masks: fc.integer({ min: 0, max: 3 }),
    }),
    { maxLength: 24 },
  )
  .map((list) =>
    list.map(({ kind, x, y, rotation, joints, afterWash, hidden, masks }, i) =>
      part(`X${i}`, {
        part: `p.${kind}`,
        height_mm: [2, 5, 9, 14, 30][kind] ?? 2,
        x_mm: x,
        y_mm: y,
        rotation_deg: rotation,
        joints,
        polarity: kind % 2 === 0 ? "" : "ring",
        after_wash: afterWash,
        hidden,
        masks,
      }),
    ),
  );

/** So many resistors of two joints: an ordinary board of twice as many joints. */
export const resistors = (count: number): readonly SomePlacement[] =>
  Array.from({ length: count }, (_, i) =>
    part(`R${i + 1}`, { x_mm: 8 + 10 * (i % 18), y_mm: 5 + 6 * Math.floor(i / 18) }),
  );
