import { join } from "node:path";
import { emptyShop, withRows } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Finding, FindingNumber, Machine } from "../model/index.ts";
import { acceptBounds, acceptedBounds, acceptSubject, brokenBounds, withAcceptance } from "./accept.ts";
import { Line } from "./line.ts";
import { WORSE } from "./worse.ts";

const finding = (
  rule: string,
  numbers: Finding["numbers"],
  severity: Finding["severity"] = "warning",
): Finding => ({ rule, severity, subjects: ["a.1", "b.2"], numbers, accepted: null });

/** A machine in which a finding was accepted as it is. */
const accepting = (accepted: Finding): Pick<Machine, "choices"> => ({
  choices: new Map([
    [
      "accept",
      new Map([
        [
          acceptSubject(accepted),
          {
            kind: "accept",
            subject: acceptSubject(accepted),
            value: "",
            held: "pinned",
            by: "someone",
            reason: "good enough",
            basis: acceptBounds(accepted),
          },
        ],
      ]),
    ],
  ]),
});

const isAccepted = (accepted: Finding, now: Finding): boolean =>
  withAcceptance(accepting(accepted), now).accepted !== null;

describe("acceptance", () => {
  it("ends when a finding gets worse, and outlasts its getting better", () => {
    const was = finding("lane-overfull", { laid_mm: 18.2, max_mm: 16, circles: 20 }, "error");
    const now = (numbers: Finding["numbers"]) =>
      isAccepted(was, { ...was, numbers: { ...was.numbers, ...numbers } });
    expect(now({})).toBe(true);
    expect(now({ laid_mm: 17.9, max_mm: 17, circles: 30 })).toBe(true);
    expect(now({ laid_mm: 18.3 })).toBe(false);
    expect(now({ max_mm: 15.9 })).toBe(false);
  });

  it("ends when the same finding becomes more serious", () => {
    const was = finding("crossing-pinch", { depth_mm: 9, deepest_mm: 12, room_mm: 10 });
    expect(isAccepted(was, { ...was, severity: "note" })).toBe(true);
    expect(isAccepted(was, { ...was, severity: "error" })).toBe(false);
  });

  it("is for one pair of classes in a lane, not for another one", () => {
    const was = finding("classes-together", { class: "coil", other_class: "audio", length_mm: 80 });
    const other = { ...was, numbers: { ...was.numbers, other_class: "sensor" } };
    expect(acceptSubject(was)).toBe("classes-together|a.1|b.2|coil|audio");
    expect(isAccepted(was, other)).toBe(false);
  });

  it("holds a text with spaces", () => {
    const was = finding("net-classes-mixed", { loud: "coil motor", quiet: "100 %" });
    expect(acceptBounds(was)).toBe("severity<=warning loud=coil%20motor quiet=100%20%25");
    expect(isAccepted(was, was)).toBe(true);
    expect(isAccepted(was, { ...was, numbers: { ...was.numbers, loud: "coil" } })).toBe(false);
  });

  it("tells which bounds are no longer kept", () => {
    const now = finding("tail-long", { tail_mm: 320, tail_max_mm: 250 });
    expect(brokenBounds(now, "tail_mm<=300 tail_max_mm>=250").map((bound) => bound.name)).toEqual([
      "tail_mm",
    ]);
    expect(brokenBounds(now, "nonsense")).toHaveLength(1);
    expect(acceptedBounds("")).toEqual([]);
  });

  it("of a rule that nobody told of, ends with any other number", () => {
    const was = finding("from-the-future", { spin_deg: 3, free: true });
    expect(isAccepted(was, was)).toBe(true);
    for (const spin_deg of [2, 4])
      expect(isAccepted(was, { ...was, numbers: { ...was.numbers, spin_deg } })).toBe(false);
  });

  it("follows the direction of every number of every rule", () => {
    const numbersOf = (rule: string): Readonly<Record<string, FindingNumber>> =>
      Object.fromEntries(Object.entries(WORSE[rule] ?? {}).map(([name]) => [name, 50]));
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.keys(WORSE).sort()),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        (rule, step) => {
          const was = finding(rule, numbersOf(rule));
          for (const [name, worse] of Object.entries(WORSE[rule] ?? {})) {
            const at = (value: number) =>
              isAccepted(was, { ...was, numbers: { ...was.numbers, [name]: value } });
            expect(at(50)).toBe(true);
            expect(at(50 + step)).toBe(worse === "less" || worse === "free");
            expect(at(50 - step)).toBe(worse === "more" || worse === "free");
          }
        },
      ),
      { seed: 5, numRuns: 300 },
    );
  });

  it("closes every finding of a real book until one gets worse", async () => {
    const { book } = await readBook(join(import.meta.dirname, "../../../../examples/first-light"));
    const line = new Line();
    const shop = emptyShop();
    const handRoom = (hand_room_mm: number) => ({ ...shop, numbers: { ...shop.numbers, hand_room_mm } });
    const { findings } = line.run(book, handRoom(60));
    expect(findings.map((one) => one.rule)).toContain("pinboard-tail-short");
    const choices = findings.map((one) => ({
      kind: "accept" as const,
      subject: acceptSubject(one),
      value: "",
      held: "pinned" as const,
      by: "someone",
      reason: "a trial",
      basis: acceptBounds(one),
    }));
    const accepted = withRows(book, "choices", [...book.tables.choices, ...choices]);
    const open = (hand_room_mm: number): readonly string[] =>
      line.run(accepted, handRoom(hand_room_mm)).findings.flatMap((one) => (one.accepted ? [] : [one.rule]));
    expect(open(60)).toEqual([]);
    expect(open(61)).toContain("pinboard-tail-short");
  });
});
