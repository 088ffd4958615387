import type { ChangeHead } from "@pinwright/contract";
import { describe, expect, it } from "vitest";
import { lastOwn } from "./last-reversible.ts";

const head = (no: number, more: Partial<ChangeHead> = {}): ChangeHead => ({
  no,
  id: String(no),
  kind: "edit",
  person: "mara",
  personName: "Mara",
  at: `2026-03-02T08:00:0${no}.000Z`,
  note: "",
  reverses: null,
  undoneBy: null,
  cells: 1,
  ...more,
});

describe("lastOwn", () => {
  it("is a person's own last set that was not taken back", () => {
    const heads = [head(4, { person: "jun" }), head(3, { undoneBy: 5 }), head(2), head(1)];
    expect(lastOwn("undo", "mara", heads)?.no).toBe(2);
    expect(lastOwn("undo", "nobody", heads)).toBeNull();
  });

  it("makes again only what was taken back, and takes back what was made again", () => {
    const heads = [
      head(3, { kind: "redo", reverses: 2 }),
      head(2, { kind: "undo", reverses: 1, undoneBy: 3 }),
    ];
    expect(lastOwn("redo", "mara", heads)).toBeNull();
    expect(lastOwn("undo", "mara", heads)?.no).toBe(3);
    expect(lastOwn("redo", "mara", [head(2, { kind: "undo", reverses: 1 }), head(1)])?.no).toBe(2);
  });
});
