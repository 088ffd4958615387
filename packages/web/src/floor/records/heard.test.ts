import type { ArrivedFact, AsideReason, Fact } from "@pinwright/contract";
import { describe, expect, it } from "vitest";
import { knownUnits } from "./heard.ts";

const fact = (stream: string, seq: number, step: string): Fact => ({
  ...{ stream, seq, before: "0".repeat(64), hash: "0".repeat(64), person: "bo" },
  at: `2027-01-04T08:0${seq}:00.000Z`,
  body: { kind: "step-done", unit: "b-1", step, minutes: 2 },
});
const arrived = (given: Fact, aside: AsideReason | null = null): ArrivedFact => ({
  no: 1,
  receivedAt: given.at,
  fact: given,
  aside,
});

describe("what is known of units", () => {
  it("counts what the server and the device both have once, and what is kept aside nowhere", () => {
    const [mine, later, theirs, false1] = [
      fact("t", 1, "one"),
      fact("t", 2, "two"),
      fact("u", 3, "three"),
      fact("u", 4, "four"),
    ];
    const units = knownUnits(
      [[arrived(mine), arrived(theirs), arrived(false1, "revoked")]],
      [
        { fact: mine, sentAt: mine.at, why: null },
        { fact: later, sentAt: null, why: null },
        { fact: fact("t", 5, "five"), sentAt: mine.at, why: "not-allowed" },
      ],
    );
    const state = units.get("b-1");
    expect([...(state?.steps.keys() ?? [])]).toEqual(["one", "two", "three"]);
    expect(state?.minutes).toBe(6);
  });
});
