import { type Fact, type FactBody, NO_FACT } from "@pinwright/contract";
import { describe, expect, it } from "vitest";
import { eventsOf } from "./events.ts";

const fact = (seq: number, minute: number, body: FactBody): Fact => ({
  ...{ stream: "t", seq, before: NO_FACT, hash: NO_FACT, person: "bo", body },
  at: new Date(Date.UTC(2027, 0, 4, 8, minute)).toISOString(),
});

describe("what happened to a unit", () => {
  it("shows a swap as one, the last first, and what was taken back", () => {
    const facts = [
      fact(1, 0, { kind: "fitted", unit: "b-1", into: "m-1", place: "bd" }),
      fact(2, 1, { kind: "step-done", unit: "m-1", step: "st" }),
      fact(3, 2, { kind: "correction", stream: "t", seq: 2, why: "by mistake" }),
      fact(4, 3, { kind: "removed", unit: "b-1", from: "m-1", place: "bd", why: "faulty" }),
      fact(5, 3, { kind: "fitted", unit: "b-2", into: "m-1", place: "bd" }),
      fact(6, 4, { kind: "noted", unit: "m-9", says: "another machine" }),
    ];
    const told = (unit: string) =>
      eventsOf(facts, [unit]).map((event) => [event.kind, event.fact.seq, event.isTakenBack]);
    expect(told("m-1")).toEqual([
      ["swapped", 5, false],
      ["fact", 2, true],
      ["fact", 1, false],
    ]);
    expect(told("b-1")).toEqual([
      ["fact", 4, false],
      ["fact", 1, false],
    ]);
  });

  it("does not take a unit that came out earlier for a swap", () => {
    const facts = [
      fact(1, 0, { kind: "removed", unit: "b-1", from: "m-1", place: "bd", why: "faulty" }),
      fact(2, 9, { kind: "fitted", unit: "b-2", into: "m-1", place: "bd" }),
    ];
    expect(eventsOf(facts, ["m-1"]).map(({ kind }) => kind)).toEqual(["fact", "fact"]);
  });
});
