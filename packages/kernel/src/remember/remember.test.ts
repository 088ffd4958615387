import { describe, expect, it } from "vitest";
import { deepEqual, NestedQuery, Query } from "./index.ts";

describe("Query", () => {
  it("computes again only when an input is another object", () => {
    const query = new Query<{ sum: number }>(deepEqual);
    const a = { v: 1 };
    const first = query.ask("k", [a], () => ({ sum: 1 }));
    expect(query.ask("k", [a], () => ({ sum: 99 }))).toBe(first);
    expect(query.ask("k", [{ v: 1 }], () => ({ sum: 2 }))).toEqual({ sum: 2 });
    expect(query.computed).toBe(2);
  });

  it("gives the old object back when the new answer equals it", () => {
    const query = new Query<{ sum: number }>(deepEqual);
    const first = query.ask("k", [{}], () => ({ sum: 1 }));
    expect(query.ask("k", [{}], () => ({ sum: 1 }))).toBe(first);
    expect(query.computed).toBe(2);
  });

  it("forgets what a whole round did not ask for", () => {
    const query = new Query<number>(Object.is);
    const input = {};
    query.ask("a", [input], () => 1);
    query.sweep();
    query.sweep();
    query.ask("a", [input], () => 1);
    expect(query.computed).toBe(2);
  });
});

describe("NestedQuery", () => {
  const total = (query: NestedQuery<number, number>, rows: readonly { readonly v: number }[]): number =>
    query.ask("k", rows, (parts) =>
      rows.reduce((sum, row, i) => sum + parts.ask(`${i}`, [row], () => row.v), 0),
    );

  it("computes anew only the parts that have changed, even after rounds in which the whole stood", () => {
    const query = new NestedQuery<number, number>(Object.is, Object.is);
    const rows = [{ v: 1 }, { v: 2 }, { v: 3 }];
    expect(total(query, rows)).toBe(6);
    for (let round = 0; round < 3; round++) {
      query.sweep();
      expect(total(query, rows)).toBe(6);
    }
    expect([query.computed, query.computedParts]).toEqual([1, 3]);
    expect(total(query, rows.with(1, { v: 5 }))).toBe(9);
    expect([query.computed, query.computedParts]).toEqual([2, 4]);
  });

  it("forgets the parts with the whole", () => {
    const query = new NestedQuery<number, number>(Object.is, Object.is);
    const rows = [{ v: 1 }, { v: 2 }];
    total(query, rows);
    query.sweep();
    query.sweep();
    total(query, rows);
    expect([query.computed, query.computedParts]).toEqual([2, 4]);
  });
});

describe("deepEqual", () => {
  it.each([
    [{ a: [1, { b: null }] }, { a: [1, { b: null }] }, true],
    [{ a: 1 }, { a: 1, b: undefined }, false],
    [new Map([["k", [1]]]), new Map([["k", [1]]]), true],
    [new Map([["k", [1]]]), new Map([["k", [2]]]), false],
    [new Set([1, 2]), new Set([2, 1]), true],
    [new Set([1]), new Set([2]), false],
    [[1, 2], { 0: 1, 1: 2 }, false],
    [Number.NaN, Number.NaN, true],
    [0, -0, false],
  ])("compares %o with %o", (a, b, equal) => {
    expect(deepEqual(a, b)).toBe(equal);
    expect(deepEqual(b, a)).toBe(equal);
  });
});
