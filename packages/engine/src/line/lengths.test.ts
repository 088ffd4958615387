import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Line } from "./line.ts";

describe("lengths of the small example", async () => {
  const { book } = await readBook(join(import.meta.dirname, "../../../../examples/first-light"));
  const usual = emptyShop();
  const run = (numbers: Partial<typeof usual.numbers>) =>
    new Line().run(book, { ...usual, numbers: { ...usual.numbers, ...numbers } });

  it("rounds every branch up to the shop's step, tails with dressing and loop", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(1, 2.5, 5, 10, 25),
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 0, max: 120 }),
        (length_step_mm, dressing_mm, service_loop_mm) => {
          const result = run({ length_step_mm, dressing_mm, service_loop_mm });
          for (const harness of result.harnesses.values()) {
            for (const branch of harness.branches) {
              const landing =
                branch.kind === "tail" ? result.machine.landings.get(branch.id.slice(5)) : undefined;
              const isHousing = landing !== undefined && landing.connector !== null;
              const allowanceMm = landing === undefined ? 0 : dressing_mm + (isHousing ? service_loop_mm : 0);
              const wantedMm = branch.routeMm + allowanceMm;
              expect(branch.lengthMm % length_step_mm).toBe(0);
              expect(branch.lengthMm).toBeGreaterThanOrEqual(wantedMm - 1e-3);
              expect(branch.lengthMm).toBeLessThan(wantedMm + length_step_mm);
            }
          }
        },
      ),
      { seed: 3, numRuns: 8 },
    );
  });

  it("makes a finished wire the sum of its branches, and all wires of a landing share its tail", () => {
    const result = run({});
    for (const harness of result.harnesses.values()) {
      const lengths = new Map(harness.branches.map((branch) => [branch.id, branch.lengthMm]));
      for (const wire of harness.wires) {
        expect(wire.finishedMm).toBe(wire.path.reduce((sum, id) => sum + (lengths.get(id) ?? Number.NaN), 0));
        for (const end of [wire.a, wire.b]) {
          const landingId = result.machine.points.get(end)?.landingId;
          if (landingId !== undefined) expect(wire.path).toContain(`tail:${landingId}`);
        }
      }
    }
  });

  it("cuts a wire long by strip and trim, and crimps first what the cutting bench can crimp", () => {
    const result = run({ trim_mm: 20, cut_step_mm: 5 });
    const wires = [...result.harnesses.values()].flatMap((harness) => harness.wires);
    const family = (end: string) => result.machine.points.get(end)?.family;
    for (const wire of wires) {
      const bareMm = (family(wire.a)?.strip_mm ?? 8) + (family(wire.b)?.strip_mm ?? 8);
      expect(wire.cutMm).toBeGreaterThanOrEqual(wire.finishedMm + bareMm + 20);
      expect(wire.cutMm).toBeLessThan(wire.finishedMm + bareMm + 25);
      if (wire.crimpedFirst === "a" || wire.crimpedFirst === "b")
        expect(family(wire[wire.crimpedFirst])?.crimped_at).toBe("bench");
      if (wire.crimpedFirst === "none")
        expect([family(wire.a)?.crimped_at, family(wire.b)?.crimped_at]).not.toContain("bench");
    }
    expect(wires.some((wire) => wire.crimpedFirst !== "none")).toBe(true);
    expect(
      run({ trim_mm: 0 })
        .harnesses.get("hs.power")
        ?.wires.some((wire) => wire.crimpedFirst === "both"),
    ).toBe(true);
  });
});
