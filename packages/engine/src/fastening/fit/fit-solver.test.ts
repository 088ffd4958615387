import { type Book, withRows } from "@pinwright/book";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Machine, Resolver } from "../../model/index.ts";
import { FitSolver, type Fits } from "./fit-solver.ts";
import { createFastened } from "./testing/fastened.ts";

/** A line of machines that remembers, as the app has it. */
class Remembering {
  readonly solver = new FitSolver();
  readonly #resolver = new Resolver();

  run(book: Book, shop: Machine["shop"]): Fits {
    const fits = this.solver.solve(this.#resolver.resolve(book, shop));
    this.#resolver.sweep();
    this.solver.sweep();
    return fits;
  }
}

const fromScratch = (book: Book, shop: Machine["shop"]): Fits =>
  new FitSolver().solve(new Resolver().resolve(book, shop));

/** So many rows and columns of groups of a mechanism with two screws, a screw of its own and a cutout. */
function grid(columns: number, rows: number): Machine {
  const places = Array.from({ length: columns * rows }, (_, i) => ({
    id: `${i}`,
    x_mm: 60 + 60 * (i % columns),
    y_mm: 60 + 60 * Math.floor(i / columns),
  }));
  const at = { panel: "pf", side: "under" } as const;
  return createFastened({
    panel: { width_mm: 60 * (columns + 2), height_mm: 60 * (rows + 2) },
    numbers: { screw_edge_diameters: 4, screw_spacing_diameters: 5 },
    fasteners: places.map(({ id, x_mm, y_mm }) => ({ id: `fx.${id}`, x_mm: x_mm + 21, y_mm, flange_mm: 2 })),
    cutouts: places.map(({ id, x_mm, y_mm }) => ({ id: `cut.${id}`, x_mm, y_mm: y_mm + 30, width_mm: 10 })),
    more: {
      mechanism_types: [{ id: "mt", width_mm: 40, depth_mm: 20 }],
      mechanism_fasteners: [-10, 10].map((x_mm) => ({
        mechanism_type: "mt",
        child: `fx${x_mm}`,
        fastener_type: "wood",
        x_mm,
        y_mm: 0,
        flange_mm: 2,
      })),
      mechanisms: places.map(({ id, x_mm, y_mm }) => ({ id: `m.${id}`, type: "mt", ...at, x_mm, y_mm })),
    },
  });
}

const moved = (book: Book, id: string, byMm: number): Book =>
  withRows(
    book,
    "mechanisms",
    book.tables.mechanisms.map((row) => (row.id === id ? { ...row, x_mm: row.x_mm + byMm } : row)),
  );

describe("FitSolver", () => {
  it("finds from scratch what it finds with what it remembers", () => {
    const edit = fc.record({
      what: fc.constantFrom(
        "mechanism" as const,
        "fastener" as const,
        "cutout" as const,
        "length" as const,
        "panel" as const,
        "margin" as const,
        "take" as const,
        "turn" as const,
      ),
      which: fc.nat(8),
      value: fc.integer({ min: -9, max: 9 }),
    });
    const nth = <R>(rows: readonly R[], which: number, to: (row: R) => R): readonly R[] =>
      rows.map((row, i) => (i === which % rows.length ? to(row) : row));
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 8 }), (edits) => {
        const start = grid(3, 3);
        const line = new Remembering();
        let { book, shop } = start;
        line.run(book, shop);
        for (const { what, which, value } of edits) {
          const t = book.tables;
          if (what === "margin")
            shop = { ...shop, numbers: { ...shop.numbers, screw_far_margin_mm: 1 + Math.abs(value) } };
          if (what === "mechanism") book = moved(book, `m.${which}`, value);
          if (what === "fastener")
            book = withRows(
              book,
              "fasteners",
              nth(t.fasteners, which, (row) => ({ ...row, x_mm: row.x_mm + value })),
            );
          if (what === "cutout")
            book = withRows(
              book,
              "cutouts",
              nth(t.cutouts, which, (row) => ({ ...row, y_mm: row.y_mm + 3 * value })),
            );
          if (what === "turn")
            book = withRows(
              book,
              "fasteners",
              nth(t.fasteners, which, (row) => ({ ...row, side: "top" })),
            );
          if (what === "length")
            book = withRows(
              book,
              "fastener_types",
              nth(t.fastener_types, which, (row) => ({ ...row, length_mm: 12 + value })),
            );
          if (what === "panel")
            book = withRows(
              book,
              "panels",
              nth(t.panels, which, (row) => ({ ...row, thickness_mm: 13 + value })),
            );
          if (what === "take" && value < 0)
            book = withRows(book, "fasteners", t.fasteners.toSpliced(which, 1));
          if (what === "take" && value >= 0) book = withRows(book, "cutouts", t.cutouts.toSpliced(which, 1));
          expect(line.run(book, shop)).toEqual(fromScratch(book, shop));
        }
      }),
      { numRuns: 20, seed: 5 },
    );
  });

  it("looks again only at what a moved mechanism touches, in a machine of any size", () => {
    const counted = [4, 8].map((size) => {
      const { book, shop } = grid(size, size);
      const line = new Remembering();
      const first = line.run(book, shop);
      const cold = line.solver.computed;
      const then = line.run(moved(book, "m.5", 1), shop);
      const { fasteners, cells } = line.solver.computed;
      expect(then.fits).toBe(first.fits);
      return { cold, fasteners: fasteners - cold.fasteners, cells: cells - cold.cells };
    });
    const [small, large] = counted;
    expect(small?.cold.fasteners).toBe(3 * 16);
    expect(large?.cold.fasteners).toBe(3 * 64);
    expect(large?.cold.cells).toBeLessThan(5 * (small?.cold.cells ?? 0));
    for (const { fasteners, cells } of counted) {
      expect(fasteners).toBe(2);
      expect(cells).toBeLessThanOrEqual(12);
    }
  });

  it("gives the same objects for the same machine", () => {
    const { book, shop } = grid(2, 2);
    const line = new Remembering();
    const first = line.run(book, shop);
    const again = line.run(
      { ...book, tables: { ...book.tables, fasteners: [...book.tables.fasteners] } },
      shop,
    );
    expect(again.fits).toBe(first.fits);
    expect(again.findings).toBe(first.findings);
  });

  it("has a fit for every fastener, even of a panel that is not in the machine", () => {
    const { book, shop } = grid(1, 1);
    const gone = withRows(book, "panels", []);
    expect(fromScratch(gone, shop).fits.get("fx.0")).toMatchObject({ holdsIn: "nothing", woodMm: 0 });
  });
});
