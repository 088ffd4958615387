import fc from "fast-check";
import { expect, it } from "vitest";
import { AccessSolver } from "../../fastening/access/access-solver.ts";
import { NO_FASTENING } from "../../fastening/index.ts";
import { SolidsSolver } from "../../fastening/solids/solids-solver.ts";
import { Resolver } from "../../model/index.ts";
import { createBook, createShop, type SomeTables } from "../../testing/book.ts";
import { Line } from "../../testing/line.ts";
import { createWiring } from "../../testing/wiring.ts";
import { OrderSolver } from "./order-solver.ts";

const place = fc.record({ x: fc.nat(8).map((n) => 30 + 20 * n), y: fc.nat(8).map((n) => 30 + 20 * n) });

/** Three boards on stand-offs and four devices, wired in two harnesses along a crossing of two lanes. */
function tables(
  places: readonly { readonly x: number; readonly y: number }[],
  rule: string | null,
): SomeTables {
  const at = (i: number) => places[i] ?? { x: 0, y: 0 };
  return createWiring({
    boards: [0, 1, 2].map((i) => ({ id: `b${i}`, ...at(i), connectors: { j1: 2 } })),
    devices: [3, 4, 5, 6].map((i) => ({ id: `d${i}`, ...at(i) })),
    nets: {
      n1: { h1: ["b0:j1.1", "d3:1"] },
      n2: { h1: ["b1:j1.1", "d4:1"] },
      n3: { h2: ["b2:j1.1", "d5:1"] },
      n4: { h2: ["b2:j1.2", "d6:1"] },
    },
    more: {
      waypoints: [
        { id: "w1", panel: "pf", side: "under", x_mm: 20, y_mm: 110 },
        { id: "w2", panel: "pf", side: "under", x_mm: 110, y_mm: 110 },
        { id: "w3", panel: "pf", side: "under", x_mm: 210, y_mm: 110 },
      ],
      lanes: [
        { id: "l1", from: "w1", to: "w2", max_diameter_mm: 30 },
        { id: "l2", from: "w2", to: "w3", max_diameter_mm: 30 },
      ],
      fastener_types: [{ id: "screw", kind: "wood-screw", diameter_mm: 3, length_mm: 9, drive: "cross 1" }],
      fasteners: [3, 4, 5, 6].map((i) => ({
        id: `f${i}`,
        type: "screw",
        panel: "pf",
        side: "under",
        x_mm: at(i).x + 12,
        y_mm: at(i).y,
        holds: `d${i}`,
      })),
      step_rules: rule === null ? [] : [{ id: "r", first_item: rule, then_harness: "h1" }],
    },
  });
}

it("gives after any edits what it gives from scratch, and the same object when nothing has changed", () => {
  const edit = fc.record({ at: fc.nat(6), place, rule: fc.constantFrom(null, "b0", "d6", "gone") });
  fc.assert(
    fc.property(
      fc.array(place, { minLength: 7, maxLength: 7 }),
      fc.array(edit, { maxLength: 4 }),
      (start, edits) => {
        const shop = createShop();
        const line = new Line();
        const resolver = new Resolver();
        const [solids, access, order] = [new SolidsSolver(), new AccessSolver(), new OrderSolver()];
        let places = start;
        for (const one of [null, ...edits]) {
          if (one !== null) places = places.with(one.at, one.place);
          const book = createBook(tables(places, one?.rule ?? null));
          const { harnesses } = line.run(book, shop);
          const machine = resolver.resolve(book, shop);
          const own = solids.solve(machine);
          const fastening = { ...NO_FASTENING, solids: own, reaches: access.solve(machine, own).reaches };
          const found = order.solve(machine, fastening, harnesses);
          const copy = { ...fastening, solids: new Map(own), reaches: new Map(fastening.reaches) };
          expect(found).toEqual(new OrderSolver().solve(machine, copy, harnesses));
          expect(order.solve(machine, fastening, harnesses)).toBe(found);
          for (const part of [resolver, solids, access, order]) part.sweep();
        }
      },
    ),
    { numRuns: 8, seed: 13 },
  );
});
