import { describe, expect, it } from "vitest";
import { advance, begin, guideIn, type Noticed, nextStep } from "./guide-state.ts";

const change = (section: string, kind: "edit" | "undo", table: string, column: string): Noticed => ({
  kind: "change",
  section,
  set: { kind, changes: [{ table, row: "r1", column, from: "1", to: "2" }] },
});
const place = (section: string, rest = ""): Noticed => ({ kind: "place", section, rest });

const WALK: readonly Noticed[] = [
  change("layout", "edit", "devices", "x_mm"),
  place("findings"),
  place("harnesses", "hs.deck"),
  change("tables", "edit", "devices", "label"),
  change("tables", "undo", "devices", "label"),
  { kind: "job", job: { book: "first-light", state: "done" } },
];

describe("the guide", () => {
  it("is done when each step was done in turn", () => {
    const steps = WALK.map((_, i) => nextStep(WALK.slice(0, i).reduce(advance, begin("first-light"))));
    expect(steps).toEqual(["move", "finding", "pinboard", "cell", "undo", "sheet"]);
    expect(nextStep(WALK.reduce(advance, begin("first-light")))).toBeNull();
  });

  it("does not take something else for a step", () => {
    const start = begin("first-light");
    for (const other of [
      change("layout", "edit", "boards", "x_mm"),
      change("layout", "undo", "devices", "x_mm"),
      ...WALK.slice(1),
    ])
      expect(nextStep(advance(start, other))).toBe("move");
    const atPinboard = WALK.slice(0, 2).reduce(advance, start);
    expect(nextStep(advance(atPinboard, place("harnesses")))).toBe("pinboard");
    const atSheet = WALK.slice(0, 5).reduce(advance, start);
    const elsewhere: Noticed = { kind: "job", job: { book: "tidewatch", state: "done" } };
    expect(nextStep(advance(atSheet, elsewhere))).toBe("sheet");
  });

  it("is read again as it was kept, and nothing else is", () => {
    const state = WALK.slice(0, 3).reduce(advance, begin("first-light"));
    expect(guideIn(JSON.stringify(state))).toEqual(state);
    for (const text of [null, "", "{", "7", "{}", '{"book":1,"done":[]}']) expect(guideIn(text)).toBeNull();
    expect(guideIn('{"book":"x","done":["dance","undo"],"open":1}')).toEqual({
      book: "x",
      done: ["undo"],
      open: false,
    });
  });
});
