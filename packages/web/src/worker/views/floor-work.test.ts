import { applyChanges } from "@pinwright/book";
import { type Fact, type FactBody, NO_FACT } from "@pinwright/contract";
import { foldUnits, Line, neededFor } from "@pinwright/engine";
import { describe, expect, it } from "vitest";
import { changesOf, type Edit } from "../edits/index.ts";
import { optionsOf } from "../options-of.ts";
import { ExampleModel } from "../testing/example-model.ts";
import { floorWork } from "./floor-work.ts";

const put = (table: string, rows: readonly Readonly<Record<string, string>>[]): Edit => ({
  kind: "put",
  rows: rows.map(({ id = "", ...cells }) => ({ table, key: { id }, cells: { id, ...cells } })),
});

/** The small machine for two mains voltages, with a test for one of them. */
function twoMains(): ExampleModel {
  const example = new ExampleModel();
  const edits = [
    put("options", [
      { id: "m230", label: "230 V", kind: "mains", usual: "yes" },
      { id: "m115", label: "115 V", kind: "mains", usual: "no" },
    ]),
    put("tests", [
      { id: "t.115", label: "115 V", scope: "machine", order: "30", kind: "yes-no", options: "m115" },
    ]),
  ];
  for (const edit of edits)
    example.tables = applyChanges(example.tables, changesOf(example.tables, edit)).tables ?? example.tables;
  return example;
}

const kindOf = (options: readonly string[]) => ({ what: "machine", type: "first-light", options }) as const;

describe("work of the floor", () => {
  it("is that of the unit's own options, and is not told as long as the machine is looked at with others", () => {
    const usual = twoMains().now;
    const other = new Line().run(usual.book, usual.shop, optionsOf(usual.book, ["m115"]));
    const tests = (options: readonly string[], asked: readonly string[] | null) => {
      const line = asked === null ? usual.line : other;
      const work = floorWork.entries({ ...usual, line }, kindOf(options)).get("");
      return work?.tests.map(({ id }) => id) ?? null;
    };
    expect(tests([], null)).not.toContain("t.115");
    expect(tests(["m230"], null)).not.toContain("t.115");
    expect(tests(["m115"], null)).toBeNull();
    expect(tests(["m115"], ["m115"])).toContain("t.115");
    // An option that the book no longer has is none.
    expect(tests(["m115", "gone"], ["m115"])).toContain("t.115");
  });
});

const fact = (seq: number, body: FactBody): Fact => ({
  ...{ stream: "t", seq, before: NO_FACT, hash: NO_FACT, person: "bo", body },
  at: new Date(Date.UTC(2027, 0, 4, 8, seq)).toISOString(),
});

describe("bench steps", () => {
  const { line } = new ExampleModel().now;
  const needed = (what: "board" | "harness", type: string, steps: readonly string[]): readonly string[] => {
    const begun: FactBody = { kind: "begun", unit: "u", what, type, book: "b", revision: "@1", options: [] };
    const facts = [begun, ...steps.map((step): FactBody => ({ kind: "step-done", unit: "u", step }))];
    const state = foldUnits(facts.map((body, i) => fact(i + 1, body))).get("u");
    if (state === undefined) throw new Error("no unit");
    return neededFor(line, state).steps;
  };

  it("are needed to their end once one of them is recorded", () => {
    expect(needed("board", "io", [])).toEqual([]);
    expect(needed("board", "io", ["kit"])).toEqual(expect.arrayContaining(["kit", "stage-1", "stage-2"]));
    expect(needed("harness", "hs.lamps", [])).toEqual([]);
    expect(needed("harness", "hs.lamps", ["cut"])).toEqual(["cut", "lay-up", "tug"]);
  });
});
