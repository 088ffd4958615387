import type { BookRow, ShopNumbers } from "@pinwright/book";
import type { Finding, Machine } from "../../../model/index.ts";
import { createMachine, createShop, type SomeTables } from "../../../testing/book.ts";
import { FitSolver, type Fits } from "../fit-solver.ts";

type Rows<N extends keyof SomeTables> = NonNullable<SomeTables[N]>;

export interface TestFastening {
  readonly panel?: Partial<BookRow<"panels">>;
  readonly types?: Rows<"fastener_types">;
  readonly fasteners?: Rows<"fasteners">;
  readonly cutouts?: Rows<"cutouts">;
  readonly numbers?: Partial<ShopNumbers>;
  readonly more?: SomeTables;
}

/** Wood screw 4 × 12, machine screw M4 × 20, nut M4 and a washer for it. */
const TEST_TYPES: Rows<"fastener_types"> = [
  { id: "wood", kind: "wood-screw", diameter_mm: 4, length_mm: 12, head_diameter_mm: 8, head_height_mm: 3 },
  {
    id: "m4",
    kind: "machine-screw",
    thread: "M4",
    diameter_mm: 4,
    length_mm: 20,
    head_diameter_mm: 8,
    head_height_mm: 3,
  },
  {
    id: "nut",
    kind: "nut",
    thread: "M4",
    diameter_mm: 4,
    length_mm: 0,
    head_diameter_mm: 8,
    head_height_mm: 3.2,
  },
  { id: "washer", kind: "washer", diameter_mm: 4.3, length_mm: 0, head_diameter_mm: 9, head_height_mm: 0.8 },
];

/**
 * A machine of one panel `pf`, a playfield of hardwood, 400 × 300 × 13 mm unless told otherwise, with fasteners in it from
 * its underside. Distances to edges and between screws are not asked for unless `numbers` say so.
 */
export function createFastened(given: TestFastening): Machine {
  const { panel, types = [], fasteners = [], cutouts = [], numbers, more } = given;
  const named = new Set(types.map(({ id }) => id));
  return createMachine(
    {
      panels: [
        {
          id: "pf",
          purpose: "playfield",
          wood: "hardwood",
          width_mm: 400,
          height_mm: 300,
          thickness_mm: 13,
          ...panel,
        },
      ],
      fastener_types: [...types, ...TEST_TYPES.filter(({ id }) => !named.has(id))],
      fasteners: fasteners.map((row, i) => ({
        id: `fx.${i + 1}`,
        type: "wood",
        panel: "pf",
        side: "under" as const,
        x_mm: 100,
        y_mm: 100,
        ...row,
      })),
      cutouts: cutouts.map((row, i) => ({
        id: `cut.${i + 1}`,
        panel: "pf",
        side: "top" as const,
        shape: "circle" as const,
        x_mm: 100,
        y_mm: 100,
        width_mm: 16,
        ...row,
      })),
      ...more,
    },
    createShop({}, { screw_edge_diameters: 0, screw_spacing_diameters: 0, ...numbers }),
  );
}

/** What the solver makes of it, from scratch. */
export const fitted = (given: TestFastening): Fits => new FitSolver().solve(createFastened(given));

/** Rules that were broken, in the order in which they were found. */
export const rulesOf = (given: TestFastening): readonly string[] =>
  fitted(given).findings.map(({ rule }) => rule);

/** The only finding. */
export function onlyFinding(given: TestFastening): Finding {
  const { findings } = fitted(given);
  const [first] = findings;
  if (first === undefined || findings.length > 1)
    throw new Error(`expected one finding, found ${findings.map(({ rule }) => rule).join(" ")}`);
  return first;
}
