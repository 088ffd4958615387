import { applyChanges, type CellChange } from "@pinwright/book";
import type { HarnessResult } from "@pinwright/engine";
import { distance } from "@pinwright/kernel";
import { beforeEach, describe, expect, it } from "vitest";
import { pegTrial, pinPeg, unpinPegs } from "../asks/pegs.ts";
import { ExampleModel } from "../testing/example-model.ts";

let example: ExampleModel;
beforeEach(() => {
  example = new ExampleModel();
});

const put = (changes: readonly CellChange[]): void => {
  const { tables, conflicts } = applyChanges(example.tables, changes);
  expect(conflicts).toEqual([]);
  example.tables = tables ?? example.tables;
};
/** The harness whose tree has the most branches. */
const busiest = (): HarnessResult => {
  const all = [...example.now.line.harnesses.values()];
  const [first] = all.toSorted((a, b) => b.branches.length - a.branches.length);
  if (first === undefined) throw new Error("the example has no harness");
  return first;
};
const harnessNow = (id: string): HarnessResult => {
  const found = example.now.line.harnesses.get(id);
  if (found === undefined) throw new Error(`no harness ${id}`);
  return found;
};
const placeOf = ({ pinboard }: HarnessResult, nodeId: string) => {
  const found = pinboard.nodes.find((node) => node.id === nodeId);
  if (found === undefined) throw new Error(`no node ${nodeId}`);
  return found.at;
};

describe("a holder in the hand", () => {
  it("goes round on its tail, stays where it was put, and moves nothing else", () => {
    const harness = busiest();
    const id = harness.harness.id;
    const tail = harness.branches.find((branch) => branch.kind === "tail");
    if (tail === undefined) throw new Error("no tail");
    const nodeId = `landing:${tail.id.slice("tail:".length)}`;
    const from = placeOf(harness, nodeId);
    const move = { harnessId: id, nodeId, xMm: from.xMm + 30, yMm: from.yMm + 25 };
    const tried = pegTrial(example.now, move);
    put(pinPeg(example.now, { move, by: "Mara", reason: "near the vice" }));
    const after = harnessNow(id);
    expect(placeOf(after, nodeId)).toEqual(tried?.at);
    expect(distance(placeOf(after, nodeId), from)).toBeGreaterThan(5);
    for (const node of harness.pinboard.nodes)
      if (node.id !== nodeId) expect(distance(placeOf(after, node.id), node.at)).toBeLessThan(0.001);
    const line = after.pinboard.branches.find((branch) => branch.id === tail.id)?.line ?? [];
    expect(line).toHaveLength(2);
    const choice = example.now.line.machine.choices.get("peg")?.get(`${id}|${nodeId}`);
    expect(choice).toMatchObject({ held: "pinned", by: "Mara", reason: "near the vice" });
    expect(example.now.line.findings.filter(({ rule }) => rule.startsWith("pinboard-peg"))).toEqual([]);
  });
});

describe("a peg in the hand", () => {
  it("takes along what hangs on it, and comes no farther than its branches reach", () => {
    const harness = busiest();
    const id = harness.harness.id;
    const peg = harness.pinboard.nodes.find((node) => node.peg && !node.id.startsWith("landing:"));
    if (peg === undefined) throw new Error("no peg");
    const move = { harnessId: id, nodeId: peg.id, xMm: peg.at.xMm + 5000, yMm: peg.at.yMm + 300 };
    const tried = pegTrial(example.now, move);
    if (tried === null) throw new Error("no trial");
    expect(distance(tried.at, peg.at)).toBeLessThan(3000);
    put(pinPeg(example.now, { move, by: "", reason: "" }));
    const after = harnessNow(id);
    expect(distance(placeOf(after, peg.id), tried.at)).toBeLessThan(0.001);
    for (const branch of after.pinboard.branches) {
      const length = branch.line.slice(1).reduce((sum, p, i) => sum + distance(p, branch.line[i] ?? p), 0);
      expect(length).toBeCloseTo(branch.lengthMm, 2);
    }
    expect(example.now.line.findings.filter(({ rule }) => rule === "pinboard-peg-moved")).toEqual([]);
  });
});

describe("pegs let go", () => {
  it("take back along what they had taken along", () => {
    const id = busiest().harness.id;
    const peg = busiest().pinboard.nodes.find((node) => node.peg && !node.id.startsWith("landing:"));
    if (peg === undefined) throw new Error("no peg");
    const move = { harnessId: id, nodeId: peg.id, xMm: peg.at.xMm + 10, yMm: peg.at.yMm + 60 };
    put(pinPeg(example.now, { move, by: "", reason: "" }));
    put(unpinPegs(example.now, { harnessId: id, nodeId: peg.id }));
    expect(example.now.line.findings.filter(({ rule }) => rule === "pinboard-peg-moved")).toEqual([]);
  });

  it("leave the board as it was before a hand came to it", () => {
    const harness = busiest();
    const id = harness.harness.id;
    const before = harness.pinboard;
    const [node] = before.nodes;
    if (node === undefined) throw new Error("no node");
    const move = { harnessId: id, nodeId: node.id, xMm: node.at.xMm + 40, yMm: node.at.yMm + 40 };
    put(pinPeg(example.now, { move, by: "", reason: "" }));
    put(unpinPegs(example.now, { harnessId: id, nodeId: null }));
    expect(harnessNow(id).pinboard).toEqual(before);
    expect(example.tables.get("choices")?.size ?? 0).toBe(0);
  });

  it("can be one of them: the others stay", () => {
    const id = busiest().harness.id;
    const nodes = busiest().pinboard.nodes.filter((node) => node.id.startsWith("landing:"));
    for (const node of nodes.slice(0, 2)) {
      const at = placeOf(harnessNow(id), node.id);
      const move = { harnessId: id, nodeId: node.id, xMm: at.xMm + 20, yMm: at.yMm + 10 };
      put(pinPeg(example.now, { move, by: "", reason: "" }));
    }
    const [first, second] = nodes;
    const kept = placeOf(harnessNow(id), second?.id ?? "");
    put(unpinPegs(example.now, { harnessId: id, nodeId: first?.id ?? "" }));
    expect(placeOf(harnessNow(id), second?.id ?? "")).toEqual(kept);
    expect(example.now.line.findings.filter(({ rule }) => rule === "pinboard-peg-moved")).toEqual([]);
    const choices = example.now.line.machine.choices.get("peg");
    expect(choices?.has(`${id}|${first?.id}`)).toBe(false);
    expect(choices?.get(`${id}|${second?.id}`)?.held).toBe("pinned");
  });
});
