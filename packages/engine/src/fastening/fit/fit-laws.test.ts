import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitted, type TestFastening } from "./testing/fastened.ts";

type Fasteners = NonNullable<TestFastening["fasteners"]>;
type Cutouts = NonNullable<TestFastening["cutouts"]>;

const side = fc.constantFrom("top" as const, "under" as const);
const place = { x_mm: fc.integer({ min: 500, max: 560 }), y_mm: fc.integer({ min: 500, max: 560 }), side };

const fasteners: fc.Arbitrary<Fasteners> = fc.array(
  fc.oneof(
    fc.record({ ...place, flange_mm: fc.integer({ min: 0, max: 8 }) }),
    fc.record({ ...place, type: fc.constant("m4"), nut: fc.constantFrom("nut", null) }),
    fc.record({ ...place, type: fc.constant("m4"), tapped_mm: fc.integer({ min: 1, max: 9 }) }),
  ),
  { minLength: 1, maxLength: 12 },
);

const cutout = fc.record({
  ...place,
  shape: fc.constantFrom("circle" as const, "rect" as const, "slot" as const),
  width_mm: fc.integer({ min: 8, max: 30 }),
  height_mm: fc.integer({ min: 3, max: 8 }),
  rotation_deg: fc.integer({ min: 0, max: 359 }),
  depth_mm: fc.option(fc.integer({ min: 1, max: 12 }), { freq: 4 }),
});

const cutouts: fc.Arbitrary<Cutouts> = fc.array(cutout, { maxLength: 5 });

/** A large panel, so that its outline has no say when all is moved. */
const panel = { width_mm: 5000, height_mm: 5000 };
const numbers = { screw_edge_diameters: 4, screw_spacing_diameters: 5 };

const options = { numRuns: 60, seed: 20 };

const other = (s: "top" | "under") => (s === "top" ? "under" : "top");

describe("laws of how fasteners hold", () => {
  it("a longer screw never has more wood left, nor holds with less thread", () => {
    const lengths = fc.tuple(fc.integer({ min: 5, max: 30 }), fc.integer({ min: 0, max: 10 }));
    fc.assert(
      fc.property(fasteners, cutouts, lengths, (f, c, [length, more]) => {
        const of = (length_mm: number) =>
          fitted({
            panel,
            fasteners: f,
            cutouts: c,
            types: [
              { id: "wood", kind: "wood-screw", diameter_mm: 4, length_mm },
              { id: "m4", kind: "machine-screw", thread: "M4", diameter_mm: 4, length_mm },
            ],
          }).fits;
        const longer = of(length + more);
        for (const [id, fit] of of(length)) {
          const then = longer.get(id);
          expect(then?.engagedMm).toBeGreaterThanOrEqual(fit.engagedMm);
          if (fit.leftMm !== null) expect(then?.leftMm).toBeCloseTo(fit.leftMm - more, 9);
        }
      }),
      options,
    );
  });

  it("a cutout never adds wood", () => {
    fc.assert(
      fc.property(fasteners, cutouts, cutout, (f, c, one) => {
        const before = fitted({ panel, fasteners: f, cutouts: c }).fits;
        for (const [id, { woodMm }] of fitted({ panel, fasteners: f, cutouts: [...c, one] }).fits)
          expect(woodMm).toBeLessThanOrEqual(before.get(id)?.woodMm ?? -1);
      }),
      options,
    );
  });

  it("moving everything together changes nothing", () => {
    const by = fc.tuple(fc.integer({ min: -400, max: 4000 }), fc.integer({ min: -400, max: 4000 }));
    fc.assert(
      fc.property(fasteners, cutouts, by, (f, c, [dx, dy]) => {
        const moved = <R extends { readonly x_mm?: number; readonly y_mm?: number }>(rows: readonly R[]) =>
          rows.map((row) => ({ ...row, x_mm: (row.x_mm ?? 0) + dx, y_mm: (row.y_mm ?? 0) + dy }));
        const here = fitted({ panel, numbers, fasteners: f, cutouts: c });
        const there = fitted({ panel, numbers, fasteners: moved(f), cutouts: moved(c) });
        expect(there.fits).toEqual(here.fits);
        const sorted = (findings: typeof here.findings) =>
          findings.map((one) => JSON.stringify(one)).toSorted();
        expect(sorted(there.findings)).toEqual(sorted(here.findings));
      }),
      options,
    );
  });

  it("a panel turned over holds its fasteners alike", () => {
    fc.assert(
      fc.property(fasteners, cutouts, (f, c) => {
        const over = <R extends { readonly side?: "top" | "under" }>(rows: readonly R[]) =>
          rows.map((row) => ({ ...row, side: other(row.side ?? "top") }));
        expect(fitted({ panel, fasteners: over(f), cutouts: over(c) }).fits).toEqual(
          fitted({ panel, fasteners: f, cutouts: c }).fits,
        );
      }),
      options,
    );
  });
});
