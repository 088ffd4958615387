import { applyChanges, type CellChange } from "@pinwright/book";
import { compareHarness, Line, unsettled } from "@pinwright/engine";
import { expect, it } from "vitest";
import { ExampleModel } from "../testing/example-model.ts";
import { betterHarness, keepHarness } from "./settling.ts";

const put = (example: ExampleModel, changes: readonly CellChange[]): void => {
  const { tables, conflicts } = applyChanges(example.tables, changes);
  expect(conflicts).toEqual([]);
  example.tables = tables ?? example.tables;
};

it("keeps a harness so that keeping it again writes nothing, and nothing of it changes", () => {
  const example = new ExampleModel();
  const before = example.now.line;
  const [id] = before.harnesses.keys();
  if (id === undefined) throw new Error("the example has no harness");
  const keeping = keepHarness(example.now, id);
  expect(keeping.added).toBeGreaterThan(5);
  put(example, keeping.changes);
  const [was, is] = [before.harnesses.get(id), example.now.line.harnesses.get(id)];
  expect([is?.wires, is?.branches, is?.pinboard, is?.route.paths]).toEqual([
    was?.wires,
    was?.branches,
    was?.pinboard,
    was?.route.paths,
  ]);
  expect(keepHarness(example.now, id)).toEqual({ added: 0, changed: 0, removed: 0, changes: [] });
});

it("tells what doing a kept harness anew would bring, and takes it", () => {
  const example = new ExampleModel();
  const [id, free] = [...example.now.line.harnesses][0] ?? [];
  if (id === undefined || free === undefined) throw new Error("the example has no harness");
  put(example, keepHarness(example.now, id).changes);
  // A kept colour that the program would not choose.
  const wire = free.wires[0];
  const choices = example.tables.get("choices") ?? new Map();
  const row = [...choices].find(
    ([, cells]) => cells.get("kind") === "colour" && cells.get("subject") === wire?.id,
  );
  const own = new Set(free.wires.map((one) => one.colour));
  const stocked = wire?.wireType.colours.find((colour) => !own.has(colour));
  if (row === undefined || stocked === undefined) throw new Error("no colour to change");
  put(example, [
    { table: "choices", row: row[0], column: "value", from: row[1].get("value") ?? "", to: stocked },
  ]);
  expect(example.now.line.harnesses.get(id)?.wires[0]?.colour).toBe(stocked);
  const better = betterHarness(example.now, id);
  expect(better?.change.recoloured).toContain(wire?.id);
  put(example, better?.changes ?? []);
  expect(example.now.line.harnesses.get(id)?.wires[0]?.colour).toBe(wire?.colour);
  expect(betterHarness(example.now, id)?.changes).toEqual([]);
});

it("tries out one harness with what it depends on, and finds what trying out the whole machine finds", () => {
  const example = new ExampleModel();
  const { line, shop } = example.now;
  const ids = [...line.harnesses.keys()];
  expect(ids.length).toBeGreaterThan(2);
  for (const id of ids) {
    const whole = new Line().run(unsettled(line, [id]), shop).harnesses.get(id);
    const before = line.harnesses.get(id);
    if (whole === undefined || before === undefined) throw new Error(`no harness ${id}`);
    expect(betterHarness(example.now, id)?.change).toEqual(compareHarness(before, whole));
  }
});
