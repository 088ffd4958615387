import type { Fact, FactBody } from "@pinwright/contract";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { contentsOf, foldUnits, type Needed, releaseBlocks } from "./index.ts";

/** A stream as a tablet writes it; links do not matter here. */
class Notes {
  readonly facts: Fact[] = [];
  readonly #stream: string;

  constructor(stream = "tablet-1") {
    this.#stream = stream;
  }

  write(body: FactBody, minute = this.facts.length + 1): this {
    const at = new Date(Date.UTC(2027, 0, 4, 8, minute)).toISOString();
    const link = "0".repeat(64);
    this.facts.push({
      ...{ stream: this.#stream, seq: this.facts.length + 1, before: link, at, person: "ann", body },
      hash: link,
    });
    return this;
  }
}

const begun = (unit: string, what: "board" | "machine" = "board"): FactBody => ({
  ...{ kind: "begun", unit, what, type: what === "board" ? "bt.driver" : "heron", book: "heron" },
  ...{ revision: "A", options: [] },
});
const reading = (test: string, value: number, good = true, unit = "b-1"): FactBody => ({
  ...{ kind: "reading", unit, test, value, good },
});
const defect = (id: string, what = "dry joint", unit = "b-1"): FactBody => ({
  ...{ kind: "defect", unit, defect: id, what, says: "", where: { item: "R1" }, station: "st.boards" },
});
const mended = (id: string, unit = "b-1"): FactBody => ({
  ...{ kind: "mended", unit, defect: id, cause: "cold iron", says: "", minutes: 3 },
});

const NEEDED: Needed = {
  steps: [],
  tests: [
    { id: "t.bond", purpose: "bond", kind: "measure", min: null, max: 0.1 },
    { id: "t.current", purpose: "supply", kind: "measure", min: 30, max: 70 },
  ],
  places: [],
};
const blocks = (notes: Notes, needed = NEEDED, recalls: Parameters<typeof releaseBlocks>[3] = []) =>
  releaseBlocks(foldUnits(notes.facts), ["b-1"], () => needed, recalls).map(
    ({ gate, of, why, firm, lifted }) =>
      `${gate} ${of} ${why}${firm ? " firm" : ""}${lifted ? " lifted" : ""}`,
  );

describe("units", () => {
  test("are what their records say, in whatever order these arrive (seed 4)", () => {
    const notes = new Notes()
      .write(begun("m-1", "machine"))
      .write(begun("b-1"))
      .write(begun("b-2"))
      .write({ kind: "fitted", unit: "b-1", into: "m-1", place: "bd.1" })
      .write(reading("t.current", 50))
      .write(defect("d-1"))
      .write({ kind: "removed", unit: "b-1", from: "m-1", place: "bd.1", why: "hum" })
      .write(mended("d-1"))
      .write({ kind: "fitted", unit: "b-2", into: "m-1", place: "bd.1" })
      .write(reading("t.current", 900))
      .write({ kind: "correction", stream: "tablet-1", seq: 10, why: "mistyped" })
      .write({ kind: "handed", unit: "m-1", stage: "st.test", site: "works" });
    const expected = foldUnits(notes.facts);
    expect(contentsOf(expected, "m-1")).toEqual(["b-2"]);
    expect(expected.get("b-1")?.within).toMatchObject([{ unit: "m-1", until: { seq: 7 } }]);
    expect(expected.get("b-1")?.readings.get("t.current")).toHaveLength(1);
    expect(expected.get("m-1")).toMatchObject({ stage: "st.test", site: "works" });
    fc.assert(
      fc.property(fc.shuffledSubarray(notes.facts, { minLength: notes.facts.length }), (facts) => {
        expect(foldUnits(facts)).toEqual(expected);
      }),
      { seed: 4, numRuns: 30 },
    );
  });

  test("fitted where another one is, take its place", () => {
    const notes = new Notes()
      .write({ kind: "fitted", unit: "b-1", into: "m-1", place: "bd.1" })
      .write({ kind: "fitted", unit: "b-2", into: "m-1", place: "bd.1" });
    const units = foldUnits(notes.facts);
    expect(contentsOf(units, "m-1")).toEqual(["b-2"]);
    expect(units.get("b-1")?.within.at(-1)?.until).toMatchObject({ seq: 2 });
  });
});

describe("release", () => {
  const good = () =>
    new Notes().write(begun("b-1")).write(reading("t.bond", 0.05)).write(reading("t.current", 50));

  test("of a unit that passed everything is kept by nothing", () => {
    expect(blocks(good())).toEqual([]);
  });

  test("is kept by a missing test, a failed one, and one outside its limits though called good", () => {
    expect(blocks(new Notes().write(begun("b-1")))).toEqual([
      ...["test t.bond missing firm", "test t.current missing"],
    ]);
    expect(blocks(good().write(reading("t.current", 50, false)))).toEqual(["test t.current failed"]);
    expect(blocks(good().write(reading("t.current", 71)))).toEqual(["test t.current failed"]);
    expect(blocks(good().write(reading("t.current", 71)).write(reading("t.current", 69)))).toEqual([]);
  });

  test("is kept by an open defect, and by tests that were done before it was mended", () => {
    expect(blocks(good().write(defect("d-1")))).toEqual(["defect d-1 open"]);
    const mendedOne = good().write(defect("d-1")).write(mended("d-1"));
    expect(blocks(mendedOne)).toEqual(["test t.bond not-retested firm", "test t.current not-retested"]);
    expect(blocks(mendedOne.write(reading("t.bond", 0.05)).write(reading("t.current", 50)))).toEqual([]);
  });

  test("can be lifted with a reason, but not where it protects whoever touches the machine", () => {
    const lift = (of: string): FactBody => ({
      kind: "override",
      unit: "b-1",
      gate: "test",
      of,
      why: "sent for show",
    });
    const notes = new Notes().write(begun("b-1")).write(lift("t.bond")).write(lift("t.current"));
    expect(blocks(notes)).toEqual(["test t.bond missing firm", "test t.current missing lifted"]);
  });

  test("is kept by a recall of a lot that went in, and by an empty place", () => {
    const recall = { recall: "rc-1", part: "ic.1", lot: "L7", type: null, revision: null };
    const used = (lot: string): FactBody => ({ kind: "lot-used", unit: "b-1", part: "ic.1", lot });
    expect(blocks(good().write(used("L7")), NEEDED, [recall])).toEqual(["recall rc-1 recalled"]);
    expect(blocks(good().write(used("L8")), NEEDED, [recall])).toEqual([]);
    const ofRevision = { recall: "rc-2", part: null, lot: null, type: "bt.driver", revision: "A" };
    expect(blocks(good(), NEEDED, [ofRevision])).toEqual(["recall rc-2 recalled"]);
    expect(blocks(good(), { ...NEEDED, places: ["bd.1"] })).toEqual(["fit bd.1 missing"]);
  });
});
