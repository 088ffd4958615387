import { UnionFind } from "@pinwright/kernel";
import { describe, expect, test } from "vitest";
import { exampleLine } from "../testing/first-light.ts";
import { type Circuit, circuitsOf, type FuseNode, powerOf } from "./index.ts";
import { stepsOf } from "./walk.ts";

const fusesIn = (fuses: readonly FuseNode[]): readonly FuseNode[] =>
  fuses.flatMap((fuse) => [fuse, ...fusesIn(fuse.fuses)]);

const wiresIn = ({ feed, returns }: Circuit): readonly string[] =>
  [...feed, ...returns].flatMap((stop) =>
    [...stepsOf(stop)].flatMap(({ step }) => (step.kind === "wire" ? [step.laid.wire.id] : [])),
  );

const line = await exampleLine("first-light");
const power = powerOf(line);

describe("the power of first-light", () => {
  // Read off the tables: 24 V with one fuse for two coils, 5 V without a fuse for five loads.
  test("hangs where the book puts it", () => {
    const [first, second] = power.supplies;
    expect(first?.supply.id).toBe("s24");
    expect(first?.fuses.map((f) => f.row?.id)).toEqual(["fuse.coils"]);
    expect(first?.fuses[0]?.loadIds.map((id) => id.slice(0, id.indexOf(":")))).toEqual([
      "mech.bumper/coil",
      "mech.saucer/coil",
    ]);
    expect(first?.loadIds).toEqual([]);
    expect(second?.supply.id).toBe("s5");
    expect(second?.loadIds).toHaveLength(5);
  });

  test("conductors are what union-find makes of wires, mates and links", () => {
    const ids = [...power.graph.conductorOf.keys()];
    const index = new Map(ids.map((id, i) => [id, i]));
    const sets = new UnionFind(ids.length);
    const join = (a: string, b: string): void => {
      const [x, y] = [index.get(a), index.get(b)];
      if (x !== undefined && y !== undefined) sets.join(x, y);
    };
    for (const { wires } of line.harnesses.values()) for (const wire of wires) join(wire.a, wire.b);
    for (const e of line.machine.elements) if (e.row.kind === "link") join(e.fromPointId, e.toPointId);
    for (const landing of line.machine.landings.values())
      if (landing.half === "a")
        for (const id of landing.pointIds) join(id, `${landing.itemId}:b.${id.slice(landing.id.length + 1)}`);
    const roots = new Map<number, number>();
    for (const [i, id] of ids.entries()) {
      const own = power.graph.conductorOf.get(id) ?? -1;
      const root = sets.find(i);
      expect(roots.get(own) ?? root).toBe(root);
      roots.set(own, root);
    }
    expect(new Set(roots.values()).size).toBe(roots.size);
  });

  test("every load that is solved hangs on one supply or fuse", () => {
    const hung = power.supplies.flatMap((s) => [...s.loadIds, ...fusesIn(s.fuses).flatMap((f) => f.loadIds)]);
    expect(hung.toSorted()).toEqual([...line.electric.loads.keys()].toSorted());
  });
});

test("each wire is in a circuit, and none twice in one", () => {
  const circuits = circuitsOf(line, power.graph, power.rails, power.supplies);
  for (const circuit of circuits) {
    const parts = [...circuit.feed, ...circuit.returns];
    for (const stop of parts) {
      const own = wiresIn({ ...circuit, feed: [stop], returns: [] });
      expect(new Set(own).size).toBe(own.length);
    }
  }
  const charted = new Set(circuits.flatMap(wiresIn));
  const all = [...line.harnesses.values()].flatMap((h) => h.wires.map((w) => w.id));
  expect(all.filter((id) => !charted.has(id))).toEqual([]);
});

test("a chart goes from wire to wire: each begins at the place that the one before leads to", () => {
  const circuits = circuitsOf(line, power.graph, power.rails, power.supplies);
  for (const { feed, returns } of circuits)
    for (const stop of [...feed, ...returns])
      for (const { to } of stepsOf(stop))
        for (const next of to.branches) expect(to.pointIds).toContain(next.fromPointId);
});
