import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bookIdFrom, isBookId } from "./book-id.ts";

describe("bookIdFrom", () => {
  it("makes a short name of a name", () => {
    expect(bookIdFrom("  Storm Front 2 ")).toBe("storm-front-2");
    expect(bookIdFrom("Über & Café")).toBe("uber-cafe");
    expect(bookIdFrom("潮汐")).toBe("");
  });

  it("makes only what the server takes, or nothing", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 120 }), (label) => {
        const id = bookIdFrom(label);
        expect(id === "" || isBookId(id)).toBe(true);
      }),
      { seed: 3, numRuns: 200 },
    );
  });
});
