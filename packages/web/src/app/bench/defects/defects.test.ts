import type { KeptDefect, TestYield } from "@pinwright/contract";
import { describe, expect, it } from "vitest";
import { inOrder, keyOf } from "./keys.ts";
import { spanQuery } from "./span.ts";
import { rolledByType, yieldsBy } from "./yield-rows.ts";

const defect = (given: Partial<KeptDefect>): KeptDefect => ({
  ...{ unit: "b-1", what: "board", type: "bt.lamp", run: "", defect: "d-1", kind: "dry-joint", says: "" },
  ...{ where: {}, station: "", picture: null, at: "2027-01-04T08:00:00.000Z", person: "bo", mended: null },
  retest: null,
  ...given,
});
const mended = { cause: "work", says: "", minutes: 3, at: "2027-01-04T09:00:00.000Z", person: "bo" };

describe("defects", () => {
  it("are counted by their part: a reference together with its board", () => {
    expect(keyOf(defect({ where: { item: "R1" } }), "part")).toBe("bt.lamp R1");
    expect(keyOf(defect({ what: "machine", type: "heron", where: { point: "j1:3" } }), "part")).toBe("j1:3");
    expect(keyOf(defect({}), "part")).toBe("");
    expect(keyOf(defect({}), "harness")).toBeNull();
    expect(keyOf(defect({}), "board")).toBe("bt.lamp");
    expect([keyOf(defect({}), "cause"), keyOf(defect({ mended }), "cause")]).toEqual([null, "work"]);
  });

  it("come with the open ones first, else in their order", () => {
    const list = [defect({ defect: "a", mended }), defect({ defect: "b" }), defect({ defect: "c", mended })];
    expect(inOrder(list).map((one) => one.defect)).toEqual(["b", "a", "c"]);
  });

  it("are of the last days, today among them", () => {
    const now = new Date(2027, 0, 9, 15, 30).getTime();
    expect(spanQuery("week", now).from).toBe(new Date(2027, 0, 3).toISOString());
    expect(spanQuery("all", now)).toEqual({});
  });
});

describe("yields", () => {
  const test = (given: Partial<TestYield>): TestYield => ({
    ...{ what: "board", type: "bt.lamp", test: "t.1", station: "", units: 10, first: 9, last: 10 },
    ...given,
  });

  it("multiply over the tests of a kind of unit, whichever stations they were taken at", () => {
    const tests = [
      test({ station: "a", units: 4, first: 4 }),
      test({ station: "b", units: 6, first: 5 }),
      test({ test: "t.2", first: 5 }),
      test({ type: "bt.other", first: 2 }),
    ];
    expect(yieldsBy(tests, ({ station }) => station).get("b")).toEqual({ units: 6, first: 5, last: 10 });
    const rolled = rolledByType(tests);
    expect(rolled.get("board bt.lamp")).toBeCloseTo(0.45, 12);
    expect(rolled.get("board bt.other")).toBeCloseTo(0.2, 12);
  });
});
