import { decimal } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { type BillEntry, isCalled, narrowedTo, ROOT, treeRows } from "./bill-rows.ts";

const node = (id: string, ...children: readonly string[]): BillEntry => ({
  id,
  label: `The ${id}`,
  labelZh: "",
  kind: id === ROOT ? "machine" : "part",
  partId: null,
  unit: "each",
  total: decimal(1),
  inside: children.map((childId) => ({ childId, why: "bom", colour: "", quantity: decimal(2) })),
});
const nodesOf = (...all: readonly BillEntry[]) => new Map(all.map((one) => [one.id, one]));

const NODES = nodesOf(
  node(ROOT, "leg", "coil"),
  node("coil", "wire", "bobbin"),
  node("leg"),
  node("wire"),
  node("bobbin"),
);

describe("the bill as a tree", () => {
  const ids = (open: ReadonlySet<string> | null, most = 100) =>
    treeRows(NODES, ROOT, open, null, most).map(({ node: { id }, depth }) => `${depth} ${id}`);

  it("shows what is laid open, and all of it when asked", () => {
    expect(ids(new Set())).toEqual(["0 machine"]);
    expect(ids(new Set([ROOT]))).toEqual(["0 machine", "1 leg", "1 coil"]);
    expect(ids(null)).toEqual(["0 machine", "1 leg", "1 coil", "2 wire", "2 bobbin"]);
    expect(ids(null, 3)).toHaveLength(3);
  });

  it("is narrowed to what fits with everything above it", () => {
    const narrowed = narrowedTo(NODES, (one) => isCalled(one, ["bob"]));
    expect(treeRows(NODES, ROOT, new Set(), narrowed, 100).map(({ node: { id } }) => id)).toEqual([
      ROOT,
      "coil",
      "bobbin",
    ]);
  });

  it("does not go round in a circle for ever", () => {
    const nodes = nodesOf(node(ROOT, "a"), node("a", "b"), node("b", "a"));
    const rows = treeRows(nodes, ROOT, null, null, 100);
    expect(rows.map(({ node: { id } }) => id)).toEqual([ROOT, "a", "b", "a"]);
    expect(rows.at(-1)).toMatchObject({ isCircle: true, isOpen: false });
    expect(narrowedTo(nodes, ({ id }) => id === "b").ids).toEqual(new Set([ROOT, "a", "b"]));
  });
});

it("is ordered by cost when asked, the dearest first", () => {
  const costs = new Map([
    ["leg", 5n],
    ["coil", 9n],
    ["bobbin", 2n],
  ]);
  const rows = treeRows(NODES, ROOT, null, null, 100, (id) => costs.get(id) ?? 0n);
  expect(rows.map(({ node: { id } }) => id)).toEqual([ROOT, "coil", "bobbin", "wire", "leg"]);
});
