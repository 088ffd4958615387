import type { ArrivedFact, Fact, FactBody } from "@pinwright/contract";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createBook, createShop, type SomeTables } from "../testing/book.ts";
import { Line } from "../testing/line.ts";
import {
  byArrival,
  contentsOf,
  foldUnits,
  gateNeeded,
  isConcerned,
  type OpenRecall,
  openRecalls,
  releaseBlocks,
} from "./index.ts";

const LINK = "0".repeat(64);

/** A stream as a tablet writes it; links do not matter here. */
class Notes {
  readonly facts: Fact[] = [];
  readonly #stream: string;

  constructor(stream = "tablet-1") {
    this.#stream = stream;
  }

  write(body: FactBody, minute = this.facts.length + 1): this {
    const at = new Date(Date.UTC(2027, 0, 4, 8, minute)).toISOString();
    const seq = this.facts.length + 1;
    this.facts.push({ stream: this.#stream, seq, before: LINK, at, person: "ann", body, hash: LINK });
    return this;
  }
}

const BOARD = { label: "x", label_zh: "x", revision: "A" } as const;
const BOOK: SomeTables = {
  board_types: [
    { ...BOARD, id: "bt.mains", part: "pcb.mains" },
    { ...BOARD, id: "bt.lamp", part: "pcb.lamp" },
  ],
  boards: [
    { id: "bd.mains", type: "bt.mains" },
    { id: "bd.lamp", type: "bt.lamp" },
  ],
  parts: ["el.a", "el.b", "el.c", "pcb.mains", "pcb.lamp"].map((id) => ({ id, unit: "each" })),
  placements: [
    { board_type: "bt.lamp", reference: "R1", part: "el.a" },
    { board_type: "bt.mains", reference: "R1", part: "el.c" },
  ],
  alternates: [{ part: "el.a", instead: "el.b" }],
  tests: [
    {
      id: "t.mains",
      scope: "board",
      board_type: "bt.mains",
      purpose: "insulation",
      kind: "yes-no",
      order: 1,
    },
    { id: "t.lamp", scope: "board", board_type: "bt.lamp", purpose: "lamp", kind: "yes-no", order: 1 },
    { id: "t.bond", scope: "machine", purpose: "bond", kind: "measure", max: 0.1, order: 1 },
    { id: "t.play", scope: "machine", purpose: "ball", kind: "yes-no", order: 2 },
  ],
};
const line = new Line().run(createBook(BOOK), createShop());

const begun = (
  unit: string,
  what: "board" | "machine" | "harness",
  type: string,
  revision = "@1",
): FactBody => ({
  ...{ kind: "begun", unit, what, type, book: "test", revision, options: [] },
});
const good = (unit: string, test: string, value?: number): FactBody => ({
  ...{ kind: "reading", unit, test, good: true },
  ...(value === undefined ? {} : { value }),
});
const fitted = (unit: string, place: string): FactBody => ({ kind: "fitted", unit, into: "m-1", place });
const removed = (unit: string, place: string): FactBody => ({
  ...{ kind: "removed", unit, from: "m-1", place, why: "hum" },
});

/** What keeps a machine, as texts. */
function blocks(
  facts: readonly Fact[],
  past: Parameters<typeof gateNeeded>[2] = null,
  by = line,
): readonly string[] {
  const units = foldUnits(facts);
  const ids = ["m-1", ...contentsOf(units, "m-1")];
  const recalls = openRecalls(facts);
  return releaseBlocks(units, ids, (state) => gateNeeded(by, state, past), recalls, "m-1").map(
    ({ unit, gate, of, why, firm, lifted }) =>
      `${unit} ${gate} ${of} ${why}${firm ? " firm" : ""}${lifted ? " lifted" : ""}`,
  );
}

/** A machine with its two boards, everything passed. */
const sound = (): Notes =>
  new Notes()
    .write(begun("m-1", "machine", "test"))
    .write(begun("b-1", "board", "bt.mains"))
    .write(begun("b-2", "board", "bt.lamp"))
    .write(good("b-1", "t.mains"))
    .write(good("b-2", "t.lamp"))
    .write(fitted("b-1", "bd.mains"))
    .write(fitted("b-2", "bd.lamp"))
    .write(good("m-1", "t.bond", 0.05))
    .write(good("m-1", "t.play"))
    .write({ kind: "step-done", unit: "m-1", step: "boards::top" });

/** The same, released with all that was known. */
const released = (notes = sound()): Notes =>
  notes.write({ kind: "released", unit: "m-1", heads: [["tablet-1", notes.facts.length, LINK]] });

describe("a machine", () => {
  test("of which all is done is kept by nothing", () => {
    expect(blocks(sound().facts)).toEqual([]);
    expect(blocks(released().facts)).toEqual([]);
  });

  test("is kept by an empty place, a board of another type, and one that nobody began", () => {
    expect(blocks(new Notes().write(begun("m-1", "machine", "test")).facts)).toEqual([
      ...["m-1 fit bd.lamp missing", "m-1 fit bd.mains missing firm"],
      ...["m-1 step boards::top missing", "m-1 test t.bond missing firm", "m-1 test t.play missing"],
    ]);
    const swapped = sound().write(removed("b-1", "bd.mains")).write(fitted("b-2", "bd.mains"));
    expect(blocks(swapped.facts)).toContain("m-1 fit bd.mains wrong firm");
    const forged = sound().write(fitted("b-7", "bd.lamp"));
    expect(blocks(forged.facts)).toEqual([
      ...["b-7 fit b-7 unknown firm", "m-1 fit bd.lamp unknown"],
      ...["m-1 test t.bond not-retested firm", "m-1 test t.play not-retested"],
    ]);
  });

  test("whose board was mended inside it is tested again where the test protects people", () => {
    const notes = sound()
      .write({ kind: "defect", unit: "b-2", defect: "d-1", what: "dry joint", says: "", where: {} })
      .write({ kind: "mended", unit: "b-2", defect: "d-1", cause: "cold iron", says: "" });
    expect(blocks(notes.facts)).toEqual([
      ...["b-2 test t.lamp not-retested", "m-1 test t.bond not-retested firm"],
    ]);
    expect(blocks(notes.write(good("b-2", "t.lamp")).write(good("m-1", "t.bond", 0.02)).facts)).toEqual([]);
  });

  test("is kept by a part that was taken instead without leave, until a lead allows it", () => {
    const instead = (to: string, allowed: "book" | "concession"): FactBody => ({
      ...{ kind: "alternate", unit: "b-2", part: "el.a", instead: to, allowed, why: "none left" },
    });
    expect(blocks(sound().write(instead("el.b", "book")).facts)).toEqual([]);
    const notes = sound().write(instead("el.c", "book"));
    expect(blocks(notes.facts)).toEqual(["b-2 fit el.a wrong"]);
    expect(blocks(notes.write(instead("el.c", "concession")).facts)).toEqual([]);
  });

  test("that was released is kept by what changed since, not by what the book asks since", () => {
    const more = new Line().run(
      createBook({
        ...BOOK,
        boards: [...(BOOK.boards ?? []), { id: "bd.more", type: "bt.lamp" }],
        tests: [
          ...(BOOK.tests ?? []),
          { id: "t.new", scope: "machine", purpose: "bond", kind: "yes-no", order: 9 },
        ],
      }),
      createShop(),
    );
    expect(blocks(sound().facts, null, more)).toEqual([
      "m-1 fit bd.more missing",
      "m-1 test t.new missing firm",
    ]);
    expect(blocks(released().facts, null, more)).toEqual([]);
    const since = released().write(removed("b-2", "bd.lamp"));
    expect(blocks(since.facts, null, more)).toEqual([
      ...["m-1 fit bd.lamp missing", "m-1 test t.bond not-retested firm", "m-1 test t.play not-retested"],
    ]);
    // A board that goes in after the release is asked everything.
    const other = since.write(begun("b-3", "board", "bt.lamp")).write(fitted("b-3", "bd.lamp"));
    expect(blocks(other.facts, null, more)).toContain("b-3 test t.lamp missing");
    const back = released().write({ kind: "correction", stream: "tablet-1", seq: 9, why: "not played" });
    expect(blocks(back.facts, null, more)).toEqual(["m-1 test t.play missing"]);
  });

  test("that was released by a clock ahead or behind is judged by what was known, not by times", () => {
    const late = new Notes("tablet-2").write(
      { kind: "reading", unit: "m-1", test: "t.play", good: false },
      60 * 24 * 9,
    );
    expect(blocks([...released().facts, ...late.facts])).toEqual(["m-1 test t.play failed"]);
  });
});

describe("tests that protect people", () => {
  const purposes = ["bond", "insulation", "polarity", "interlock"] as const;

  test("are lifted by no override, of whatever gate and time (seed 11)", () => {
    const gates = ["defect", "step", "test", "fit", "recall"] as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...purposes),
        fc.constantFrom(...gates),
        fc.constantFrom("t.x", "bd.mains", "m-1"),
        fc.integer({ min: -100, max: 100 }),
        fc.option(fc.record({ value: fc.option(fc.double({ noNaN: true })), good: fc.boolean() })),
        (purpose, gate, of, minute, read) => {
          const by = new Line().run(
            createBook({
              tests: [{ id: "t.x", scope: "machine", purpose, kind: "measure", min: 0, max: 1, order: 1 }],
            }),
            createShop(),
          );
          const notes = new Notes().write(begun("m-1", "machine", "test"));
          const isIn = read?.good === true && read.value !== null && read.value >= 0 && read.value <= 1;
          if (read !== null)
            notes.write({
              ...{ kind: "reading", unit: "m-1", test: "t.x", good: read.good },
              ...(read.value === null ? {} : { value: read.value }),
            });
          notes.write({ kind: "override", unit: "m-1", gate, of, why: "fair" }, 10 + minute);
          expect(blocks(notes.facts, null, by).length === 0).toBe(isIn);
        },
      ),
      { seed: 11, numRuns: 60 },
    );
  });

  test("stay as they were when the unit was begun, until another of their purpose takes their place", () => {
    const past = line.machine.book.tables.tests;
    const asked = (tests: SomeTables["tests"]) =>
      blocks(
        new Notes().write(begun("m-1", "machine", "test")).facts,
        past,
        new Line().run(createBook({ tests: tests ?? [] }), createShop()),
      );
    const bond = { scope: "machine", purpose: "bond", kind: "measure", max: 0.1, order: 1 } as const;
    expect(asked([])).toEqual(["m-1 test t.bond missing firm"]);
    expect(asked([{ ...bond, id: "t.bond", purpose: "other" }])).toEqual(["m-1 test t.bond missing firm"]);
    expect(asked([{ ...bond, id: "t.other" }])).toEqual(["m-1 test t.other missing firm"]);
    expect(asked([{ ...bond, id: "t.other", purpose: "polarity" }])).toEqual([
      ...["m-1 test t.bond missing firm", "m-1 test t.other missing firm"],
    ]);
  });
});

test("a harness that was mended is tugged at again", () => {
  const needed = {
    steps: ["cut", "tug"],
    again: new Map([["tug", new Set(["open"])]]),
    tests: [],
    places: [],
  };
  const step = (name: string): FactBody => ({ kind: "step-done", unit: "h-1", step: name });
  const notes = new Notes()
    .write(begun("h-1", "harness", "hs.x"))
    .write(step("cut"))
    .write(step("tug"))
    .write({ kind: "defect", unit: "h-1", defect: "d-1", what: "open", says: "", where: {} })
    .write({ kind: "mended", unit: "h-1", defect: "d-1", cause: "not crimped", says: "" });
  const found = () => releaseBlocks(foldUnits(notes.facts), ["h-1"], () => needed, []);
  expect(found()).toMatchObject([{ gate: "step", of: "tug", why: "not-retested", firm: false }]);
  notes.write(step("tug"));
  expect(found()).toEqual([]);
});

describe("an override", () => {
  test("speaks of the reading before it, not of one after", () => {
    const lift: FactBody = { kind: "override", unit: "m-1", gate: "test", of: "t.play", why: "fair" };
    const bad: FactBody = { kind: "reading", unit: "m-1", test: "t.play", good: false };
    const notes = sound().write(bad).write(lift);
    expect(blocks(notes.facts)).toEqual(["m-1 test t.play failed lifted"]);
    expect(blocks(notes.write(bad).facts)).toEqual(["m-1 test t.play failed"]);
  });
});

describe("recalls", () => {
  test("are open until they are ended or taken back, whatever comes first", () => {
    const recall = (name: string): FactBody => ({ kind: "recall", recall: name, part: "el.a", why: "fire" });
    const notes = new Notes()
      .write(recall("rc-1"))
      .write(recall("rc-2"))
      .write({ kind: "recall-ended", recall: "rc-1", why: "all back" })
      .write({ kind: "correction", stream: "tablet-1", seq: 2, why: "wrong part" })
      .write(recall("rc-1"));
    expect(openRecalls(notes.facts)).toMatchObject([{ recall: "rc-1", part: "el.a", lot: null }]);
    expect(openRecalls([...notes.facts].reverse())).toHaveLength(1);
    expect(openRecalls(notes.facts.slice(0, 4))).toEqual([]);
  });

  test("of a part find what has it by the book, unless something else was taken, and what it was taken for", () => {
    const recall = (part: string, lot: string | null = null): OpenRecall => ({
      ...{ recall: "rc", part, lot, type: null, revision: null },
    });
    const stateOf = (...bodies: FactBody[]) => {
      const notes = new Notes().write(begun("b-2", "board", "bt.lamp"));
      for (const body of bodies) notes.write(body);
      const state = foldUnits(notes.facts).get("b-2");
      if (state === undefined) throw new Error("b-2 was begun");
      return { state, parts: gateNeeded(line, state, null).parts };
    };
    const isFound = (part: string, lot: string | null, ...bodies: FactBody[]) => {
      const { state, parts } = stateOf(...bodies);
      return isConcerned(state, recall(part, lot), parts);
    };
    const instead: FactBody = {
      ...{ kind: "alternate", unit: "b-2", part: "el.a", instead: "el.b", allowed: "book", why: "none" },
    };
    expect(isFound("el.a", null)).toBe(true);
    expect(isFound("pcb.lamp", null)).toBe(true);
    expect(isFound("bt.lamp", null)).toBe(true);
    expect(isFound("el.c", null)).toBe(false);
    expect(isFound("el.a", "L7")).toBe(false);
    expect(isFound("el.a", null, instead)).toBe(false);
    expect(isFound("el.b", null, instead)).toBe(true);
  });
});

test("facts of a clock that is ahead get the time of their arrival", () => {
  const [one, two] = new Notes().write(good("m-1", "t.play")).write(good("m-1", "t.bond", 0)).facts;
  if (!(one && two)) throw new Error("two facts");
  const receivedAt = "2027-01-04T08:01:30.000Z";
  const arrived = [one, two].map((fact, no): ArrivedFact => ({ no, receivedAt, fact, aside: null }));
  expect(byArrival(arrived).map(({ at }) => at)).toEqual([one.at, receivedAt]);
});
