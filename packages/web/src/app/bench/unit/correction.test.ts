import { type Fact, type FactBody, factBodySchema, NO_FACT } from "@pinwright/contract";
import { describe, expect, it } from "vitest";
import { fieldsOf, mayCorrect, replaced } from "./correction.ts";

const unit = "b-000001";
const reading: FactBody = {
  kind: "reading",
  unit,
  test: "t.5v",
  value: 50,
  good: false,
  instrument: "meter-1",
};
const step: FactBody = { kind: "step-done", unit, step: "stage-1", minutes: 12, count: 40 };

const BODIES: readonly FactBody[] = [
  reading,
  { kind: "reading", unit, test: "t.look", good: true },
  step,
  { kind: "lot-used", unit, part: "p.res-1k", lot: "L7", quantity: 3 },
  { kind: "noted", unit, says: "look again" },
  { kind: "handed", unit, stage: "stage.test" },
  { kind: "fitted", unit, into: "m-000001", place: "bd.lamps" },
  { kind: "defect", unit, defect: "d1", what: "dry-joint", says: "", where: {} },
  { kind: "mended", unit, defect: "d1", cause: "work", says: "", minutes: 4 },
];

describe("correction of a record", () => {
  it.each(BODIES.map((body) => [body.kind, body] as const))(
    "leaves %s as it is when nothing is typed",
    (_, body) => {
      const fields = fieldsOf(body);
      expect(fields).not.toBeNull();
      expect(factBodySchema.parse(replaced(body, fields ?? {}))).toEqual(body);
    },
  );

  it("puts a reading right, with its test, unit and instrument", () => {
    expect(replaced(reading, { value: " 5,0 ", good: "yes" })).toEqual({ ...reading, value: 5, good: true });
    expect(replaced(reading, { value: "", good: "yes" })).toEqual({
      ...{ kind: "reading", unit, test: "t.5v", good: true, instrument: "meter-1" },
    });
  });

  it("takes no number that is none, no count of half a screw and no blank name", () => {
    expect(replaced(reading, { value: "5 V", good: "yes" })).toBeNull();
    expect(replaced(step, { minutes: "-3", count: "" })).toBeNull();
    expect(replaced(step, { minutes: "3", count: "1.5" })).toBeNull();
    expect(replaced({ kind: "noted", unit, says: "a" }, { text: "  " })).toBeNull();
  });

  it("only takes back what has no fields, and nothing of the server's", () => {
    expect(fieldsOf({ kind: "override", unit, gate: "step", of: "st.1", why: "done" })).toBeNull();
    const fact: Fact = {
      ...{ stream: "t-1", seq: 1, before: NO_FACT, at: "2027-01-04T08:00:00.000Z", person: "ann" },
      ...{ body: reading, hash: NO_FACT },
    };
    expect(mayCorrect(fact, "ben")).toBe(true);
    expect(mayCorrect({ ...fact, stream: "server" }, "ben")).toBe(false);
    const lift: Fact = { ...fact, body: { kind: "override", unit, gate: "step", of: "st.1", why: "done" } };
    expect([mayCorrect(lift, "ben"), mayCorrect(lift, "ann")]).toEqual([false, true]);
    expect(
      mayCorrect({ ...fact, body: { kind: "correction", stream: "t-1", seq: 1, why: "w" } }, "ann"),
    ).toBe(false);
  });
});
