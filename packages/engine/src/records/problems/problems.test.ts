import type { Fact, FactBody } from "@pinwright/contract";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foldProblems, revisionWith } from "./fold-problems.ts";

const fact = (stream: string, seq: number, minute: number, body: FactBody): Fact => ({
  ...{ stream, seq, body, person: "ann" },
  ...{ before: "0".repeat(64), hash: "0".repeat(64) },
  at: new Date(Date.UTC(2027, 0, 4, 8, minute)).toISOString(),
});
const problem = (name: string, says = "sticks"): FactBody => ({
  ...{ kind: "problem", problem: name, book: "heron", from: "letter", says },
  about: [{ kind: "mechanism", id: "mech.kicker" }],
});
const note = (name: string, did: "seen" | "tried" | "measured" | "decided", says = ""): FactBody => ({
  ...{ kind: "problem-note", problem: name, did, says },
});
const ended = (name: string, changeNo?: number): FactBody => ({
  ...{ kind: "problem-ended", problem: name, why: "longer stop" },
  ...(changeNo === undefined ? { how: "no-change" } : { how: "changed", changeNo }),
});

const RELEASES = [
  { name: "B", changeNo: 40 },
  { name: "A", changeNo: 10 },
  { name: "C", changeNo: 90 },
];

const COURSE = [
  fact("t-1", 1, 1, problem("p-1")),
  fact("t-2", 1, 2, problem("p-2")),
  fact("t-1", 2, 3, problem("p-3")),
  fact("t-1", 3, 4, note("p-1", "seen")),
  fact("t-2", 2, 5, note("p-1", "measured", "0.4 mm of play")),
  fact("t-1", 4, 6, note("p-2", "decided", "move the stop")),
  fact("t-2", 3, 7, note("p-1", "decided", "longer stop")),
  fact("t-2", 4, 8, ended("p-1", 41)),
  fact("t-1", 5, 9, note("p-1", "seen", "again")),
  fact("t-1", 6, 10, note("p-3", "tried", "mistyped")),
  fact("t-1", 7, 11, { kind: "correction", stream: "t-1", seq: 6, why: "mistyped" }),
  fact("t-1", 8, 12, note("p-nobody", "seen")),
];

describe("problems", () => {
  it("are open, decided or ended, with their course and the revision that has the change", () => {
    const found = foldProblems(COURSE, RELEASES);
    expect(found.map(({ problem: name, state }) => [name, state])).toEqual([
      ["p-3", "open"],
      ["p-2", "decided"],
      ["p-1", "ended"],
    ]);
    expect(found[2]).toMatchObject({
      ...{ unit: null, seen: 2, seenSince: 1, revision: "C" },
      notes: [{ did: "seen" }, { did: "measured" }, { did: "decided" }, { did: "seen" }],
      ended: { how: "changed", changeNo: 41, stream: "t-2", seq: 4 },
    });
    expect(found[0]?.notes).toEqual([]);
  });

  it("are the same in whatever order their records come (seed 31)", () => {
    const expected = foldProblems(COURSE, RELEASES);
    fc.assert(
      fc.property(fc.shuffledSubarray(COURSE, { minLength: COURSE.length }), (shuffled) => {
        expect(foldProblems(shuffled, RELEASES)).toEqual(expected);
      }),
      { seed: 31, numRuns: 50 },
    );
  });

  it("are open again when whoever ended them takes that back", () => {
    const back = fact("t-2", 5, 20, { kind: "correction", stream: "t-2", seq: 4, why: "not fixed" });
    const p1 = foldProblems([...COURSE, back], RELEASES).find(({ problem: name }) => name === "p-1");
    expect(p1).toMatchObject({ state: "decided", ended: null, revision: null, seenSince: 0 });
  });

  it("end without a change as well, and then in no revision", () => {
    const facts = [fact("t-1", 1, 1, problem("p-1")), fact("t-1", 2, 2, ended("p-1"))];
    expect(foldProblems(facts, RELEASES)).toMatchObject([
      { state: "ended", revision: null, ended: { how: "no-change", changeNo: null } },
    ]);
  });

  it("have their change in the first release that is not before it", () => {
    expect([10, 11, 40, 90, 91].map((no) => revisionWith(no, RELEASES))).toEqual(["A", "B", "B", "C", null]);
  });
});
