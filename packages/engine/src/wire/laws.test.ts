import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { HarnessWires, Machine } from "../model/index.ts";
import { arbitraryWiring, shuffled } from "../testing/arbitrary.ts";
import { createMachine } from "../testing/book.ts";
import { createWiring } from "../testing/wiring.ts";
import { linkedPoints, netIndex, settleWires, wireHarness } from "./index.ts";

const RUNS = { seed: 20261125, numRuns: 150 };

/** Points that wires and links join to a point. */
function reached(machine: Machine, wires: HarnessWires, from: string): ReadonlySet<string> {
  const seen = new Set<string>();
  const todo = [from];
  for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
    if (seen.has(at)) continue;
    seen.add(at);
    todo.push(...linkedPoints(netIndex(machine), at));
    for (const wire of wires.wires) {
      if (wire.a === at) todo.push(wire.b);
      if (wire.b === at) todo.push(wire.a);
    }
  }
  return seen;
}

describe("laws of wiring", () => {
  test("every end is connected to its net and to nothing else, and no contact is overfull", () => {
    fc.assert(
      fc.property(arbitraryWiring, (wiring) => {
        const machine = createMachine(createWiring(wiring));
        const wires = wireHarness(machine, "h1");
        for (const [netId, { h1 = [] }] of Object.entries(wiring.nets)) {
          const own = new Set(h1);
          const joined = reached(machine, wires, h1[0] ?? "");
          for (const point of h1) {
            expect(joined.has(point), `${point} of ${netId}`).toBe(true);
            const count = wires.wires.filter((w) => w.a === point || w.b === point).length;
            expect(count).toBeLessThanOrEqual(machine.points.get(point)?.family.wires_per_contact ?? 0);
            if (h1.length > 1) expect(count, `${point} of ${netId}`).toBeGreaterThan(0);
          }
          for (const point of joined) {
            if (!point.startsWith("splice:")) expect(own.has(point), `${point} on ${netId}`).toBe(true);
          }
        }
        for (const splice of wires.splices) {
          const count = wires.wires.filter((w) => w.a === splice.id || w.b === splice.id).length;
          expect(count).toBeGreaterThanOrEqual(3);
          expect(count).toBeLessThanOrEqual(5);
        }
        expect(wires.order.value).toBeGreaterThanOrEqual(wires.order.lowerBound);
      }),
      RUNS,
    );
  });

  test("the order of rows does not matter", () => {
    fc.assert(
      fc.property(arbitraryWiring, fc.nat(), (wiring, seed) => {
        const tables = createWiring(wiring);
        const again = wireHarness(createMachine(shuffled(tables, seed)), "h1");
        expect(again).toEqual(wireHarness(createMachine(tables), "h1"));
      }),
      { ...RUNS, numRuns: 60 },
    );
  });

  test("a settled harness is wired as it was", () => {
    fc.assert(
      fc.property(arbitraryWiring, (wiring) => {
        const machine = createMachine(createWiring(wiring));
        const choices = settleWires(machine, "h1").map((c) => ({ ...c, held: "settled" as const }));
        const settled = createMachine(createWiring({ ...wiring, choices }));
        expect(wireHarness(settled, "h1").wires).toEqual(wireHarness(machine, "h1").wires);
      }),
      RUNS,
    );
  });

  test("with choices settled, one more device changes at most the wire that it splits", () => {
    fc.assert(
      fc.property(arbitraryWiring, fc.nat({ max: 3 }), fc.nat({ max: 400 }), (wiring, net, x) => {
        const before = createMachine(createWiring(wiring));
        const choices = settleWires(before, "h1").map((c) => ({ ...c, held: "settled" as const }));
        const netId = `n${net}`;
        const nets = { ...wiring.nets, [netId]: { h1: [...(wiring.nets[netId]?.h1 ?? []), "new:1"] } };
        const devices = [...(wiring.devices ?? []), { id: "new", x, y: 500, takes: 2 as const }];
        const after = createMachine(createWiring({ ...wiring, devices, nets, choices }));
        const now = new Map(wireHarness(after, "h1").wires.map((w) => [w.id, w.number]));
        const old = wireHarness(before, "h1").wires;
        const gone = old.filter((w) => !now.has(w.id));
        expect(gone.length).toBeLessThanOrEqual(1);
        for (const wire of gone) expect(wire.netId).toBe(netId);
        for (const wire of old) if (now.has(wire.id)) expect(now.get(wire.id)).toBe(wire.number);
      }),
      RUNS,
    );
  });
});
