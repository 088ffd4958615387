import { describe, expect, it } from "vitest";
import { ExampleModel } from "../testing/example-model.ts";
import { netTree } from "./net-tree.ts";

const { line } = new ExampleModel().now;
const wiresOf = (netId: string) =>
  [...line.harnesses.values()].flatMap((harness) => harness.wires.filter((wire) => wire.netId === netId));

describe("netTree", () => {
  it("has every end once, and every wire unless it closes a loop", () => {
    for (const netId of line.machine.nets.keys()) {
      const rows = netTree(line, netId);
      const ends = new Set(line.machine.ends.filter((end) => end.net === netId).map((end) => end.point));
      const ids = rows.map((row) => row.id);
      expect(new Set(ids).size).toBe(ids.length);
      for (const end of ends) expect(ids).toContain(end);
      const shown = rows.flatMap((row) => (row.via?.kind === "wire" ? [row.via.wireId] : []));
      expect(new Set(shown).size).toBe(shown.length);
      const wires = wiresOf(netId);
      expect(shown.length).toBeLessThanOrEqual(wires.length);
      const parts = rows.filter((row) => row.parent === null).length;
      // A tree of n rows in p parts has n − p joints.
      expect(rows.filter((row) => row.via !== null)).toHaveLength(rows.length - parts);
    }
  });

  it("hangs each row on an earlier one that its wire really ends on", () => {
    for (const netId of line.machine.nets.keys()) {
      const rows = netTree(line, netId);
      for (const [i, row] of rows.entries()) {
        if (row.parent === null) continue;
        const parent = rows[row.parent];
        expect(row.parent).toBeLessThan(i);
        expect(row.column === parent?.column || row.column === (parent?.column ?? 0) + 1).toBe(true);
        if (row.via?.kind !== "wire") continue;
        const { wireId } = row.via;
        const wire = wiresOf(netId).find((one) => one.id === wireId);
        expect([wire?.a, wire?.b].toSorted()).toEqual([row.id, parent?.id].toSorted());
      }
    }
  });

  it("draws a chain of wires in one column, from the point that feeds it", () => {
    const chain = [...line.machine.nets.keys()].find((netId) => {
      const counts = new Map<string, number>();
      for (const { a, b } of wiresOf(netId))
        for (const end of [a, b]) counts.set(end, (counts.get(end) ?? 0) + 1);
      return counts.size > 3 && Math.max(...counts.values()) === 2;
    });
    if (chain === undefined) throw new Error("the example has no chain of four ends");
    expect(new Set(netTree(line, chain).map((row) => row.column))).toEqual(new Set([0]));
  });
});
