import { type Finding, makeFinding } from "@pinwright/engine";
import { describe, expect, it } from "vitest";
import { first, ids } from "./about.ts";
import { ELECTRICAL, FASTENING, WIRING } from "./all.ts";
import { judge, newlyFound } from "./judge.ts";

const found = makeFinding("fuse-large", "warning", ["a", "b"]);

describe("the tables of faults", () => {
  it("are large enough, and each fault is in them once", () => {
    expect(WIRING.length + ELECTRICAL.length).toBeGreaterThanOrEqual(40);
    expect(ELECTRICAL.length).toBeGreaterThanOrEqual(28);
    expect(FASTENING.length).toBeGreaterThanOrEqual(45);
    const names = [...WIRING, ...ELECTRICAL, ...FASTENING].map(({ rule, name }) => `${rule} ${name}`);
    expect(new Set(names).size).toBe(names.length);
  });
});

describe("newlyFound", () => {
  it("is what is found of something else, more seriously, or accepted no longer", () => {
    const accepted = { ...found, accepted: { by: "x", reason: "y", basis: "" } };
    expect(newlyFound([found], [found])).toEqual([]);
    expect(newlyFound([found], [{ ...found, severity: "note" }])).toEqual([]);
    expect(newlyFound([found], [accepted])).toEqual([]);
    for (const other of [
      { ...found, subjects: ["a", "c"] },
      { ...found, severity: "error" as const },
    ])
      expect(newlyFound([found], [other])).toEqual([other]);
    expect(newlyFound([accepted], [found])).toEqual([found]);
  });
});

describe("judge", () => {
  const plan = { victim: ["a"], change: () => {}, follows: [first("wire-hot", ids("w"))] };
  const verdict = (then: readonly Finding[], now: readonly Finding[]) =>
    judge({ rule: "fuse-large" }, plan, then, now);

  it("tells the fault from what follows, from what has nothing to do with it, and from what is gone", () => {
    const hot = makeFinding("wire-hot", "error", ["w"]);
    const other = makeFinding("wire-hot", "error", ["v"]);
    const elsewhere = makeFinding("fuse-large", "error", ["c"]);
    expect(verdict([], [found, hot])).toEqual({ caught: [found], followed: [hot], strays: [], lost: [] });
    expect(verdict([], [other, elsewhere])).toMatchObject({ caught: [], strays: [other, elsewhere] });
    expect(verdict([other, hot], [found]).lost).toEqual([other]);
  });
});
