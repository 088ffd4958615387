import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { seededRandom } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { resolveMachine, straightDistances } from "../model/index.ts";
import { wireHarness } from "../wire/index.ts";
import { electricNetwork } from "./network/network.ts";
import { CORNERS } from "./solve/corners.ts";
import { againstNgspice } from "./testing/against-ngspice.ts";
import { NGSPICE_MISSING } from "./testing/ngspice.ts";
import { randomMachine } from "./testing/random-machine.ts";

/** Largest difference from ngspice that is allowed, as a share of a node's voltage. */
const ALLOWED = 1e-4;

it("finds ngspice, against which the circuits are tested", () => {
  expect(NGSPICE_MISSING).toBeNull();
});

describe("ngspice", () => {
  it("finds the same voltages at every node of 20 random networks, at every corner in turn", () => {
    for (let seed = 1; seed <= 20; seed++) {
      const { machine, wires } = randomMachine(seed);
      const random = seededRandom(seed + 1000);
      const corner = CORNERS[seed % CORNERS.length];
      if (corner === undefined) throw new Error("there is no such corner");
      const { nodes, worstShare, worstV, turned, worstNode } = againstNgspice(
        machine,
        wires,
        corner,
        () => random() < 0.5,
      );
      expect(nodes, `network ${seed}`).toBeGreaterThan(15);
      expect(turned, `network ${seed}`).toBe(0);
      expect(worstShare, `network ${seed} at ${worstNode}`).toBeLessThan(ALLOWED);
      expect(worstV, `network ${seed}`).toBeLessThan(1e-5);
    }
  });

  it("finds the same voltages at every node of every supply of Tidewatch", async () => {
    const folder = join(import.meta.dirname, "../../../../examples/tidewatch");
    const { book, shop } = await readBook(folder);
    const machine = resolveMachine(book, shop ?? emptyShop());
    // Straight through the air: routing takes most of a run's time and adds nothing here.
    const distance = straightDistances(machine);
    const placeOf = (end: string) => machine.points.get(end)?.place;
    const wires = [...machine.harnesses.keys()].flatMap((id) =>
      wireHarness(machine, id).wires.map((wire) => {
        const [a, b] = [placeOf(wire.a), placeOf(wire.b)];
        const finishedMm = 150 + (a === undefined || b === undefined ? 0 : distance(a, b));
        return { ...wire, finishedMm };
      }),
    );
    const worn = CORNERS[6];
    if (worn === undefined) throw new Error("there is no such corner");
    const found = againstNgspice(machine, wires, worn, (_, n) => n % 3 === 0);
    expect(electricNetwork(machine, wires).unfedIds).toEqual([]);
    expect(found.nodes).toBeGreaterThan(2000);
    expect(found.turned).toBe(0);
    expect(found.worstShare, found.worstNode).toBeLessThan(ALLOWED);
  });
});
