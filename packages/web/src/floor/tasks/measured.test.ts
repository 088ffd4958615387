import { describe, expect, it } from "vitest";
import { groupsOfPairs } from "./measured.ts";

const PLACES = ["a:1", "a:2", "b:1", "b:2", "c:1"];
/** a:1 with b:1 and c:1, a:2 with b:2. */
const GOOD = [0, 1, 0, 1, 0];

/** The partition itself, whatever its numbers are. */
const shape = (groups: readonly number[]): readonly number[] => groups.map((group) => groups.indexOf(group));

describe("what a tester read", () => {
  it("is as a good harness when nothing odd was found", () => {
    expect(shape(groupsOfPairs(PLACES, GOOD, []))).toEqual(shape(GOOD));
  });

  it("has the second place of an open pair cut off, and the others joined", () => {
    expect(shape(groupsOfPairs(PLACES, GOOD, [{ kind: "open", a: "a:1", b: "b:1" }]))).toEqual([
      0, 1, 2, 1, 0,
    ]);
  });

  it("has both groups of a short in one", () => {
    expect(shape(groupsOfPairs(PLACES, GOOD, [{ kind: "short", a: "a:1", b: "a:2" }]))).toEqual([
      0, 0, 0, 0, 0,
    ]);
  });

  it("has two swapped places as two opens and two shorts", () => {
    const swapped = groupsOfPairs(PLACES, GOOD, [
      { kind: "open", a: "a:1", b: "b:1" },
      { kind: "open", a: "a:2", b: "b:2" },
      { kind: "short", a: "a:1", b: "b:2" },
      { kind: "short", a: "a:2", b: "b:1" },
    ]);
    expect(shape(swapped)).toEqual([0, 1, 1, 0, 0]);
  });
});
