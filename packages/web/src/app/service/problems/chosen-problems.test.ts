import type { KeptProblem } from "@pinwright/contract";
import { describe, expect, it } from "vitest";
import { chosenProblems, decisionOf, filterOf, openAbout } from "./chosen-problems.ts";

const said = { stream: "t-1", seq: 1, at: "2027-01-04T08:00:00.000Z", person: "ann" };
const problem = (name: string, more: Partial<KeptProblem> = {}): KeptProblem => ({
  ...{ ...said, problem: name, book: "heron", about: [{ kind: "item", id: "sw.1" }], from: "letter" },
  ...{ says: "does not close", unit: null, run: null, picture: null, notes: [], state: "open" },
  ...{ ended: null, revision: null, seen: 0, seenSince: 0, ...more },
});
const PROBLEMS = [
  problem("p-1", { unit: "m-000031" }),
  problem("p-2", { state: "decided", about: [{ kind: "machine", id: "machine" }] }),
  problem("p-3", { state: "ended", from: "build" }),
  problem("p-4", { about: [{ kind: "board", id: "bt.io" }], says: "Label is wrong" }),
];
const chosen = (search: string) =>
  chosenProblems(PROBLEMS, filterOf(new URLSearchParams(search))).map((one) => one.problem);
const open = (...ids: readonly string[]) => openAbout(PROBLEMS, new Set(ids)).map((one) => one.problem);

describe("problems", () => {
  it("are chosen by state, source, subject and text", () => {
    expect(chosen("")).toHaveLength(4);
    expect(chosen("state=open")).toEqual(["p-1", "p-4"]);
    expect(chosen("from=build")).toEqual(["p-3"]);
    expect(chosen("kind=board")).toEqual(["p-4"]);
    expect(chosen("text=label")).toEqual(["p-4"]);
    expect(chosen("text=m-000031&state=open")).toEqual(["p-1"]);
    expect(chosen("state=nothing")).toHaveLength(4);
  });

  it("stand open against what they are about, and those of the machine against everything", () => {
    expect(open("sw.1")).toEqual(["p-1", "p-2"]);
    expect(open("bt.io")).toEqual(["p-2", "p-4"]);
    expect(open()).toEqual(["p-2"]);
    expect(openAbout(PROBLEMS, null)).toHaveLength(3);
  });

  it("say what was decided last", () => {
    const notes = (["tried", "decided", "seen", "decided", "seen"] as const).map((did, n) => ({
      ...{ ...said, seq: n, did, says: `${n}`, unit: null, picture: null },
    }));
    expect(decisionOf(problem("p-5", { notes }))).toBe("3");
    expect(decisionOf(problem("p-6"))).toBe("");
  });
});
