import { readFileSync } from "node:fs";
import { UnionFind } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { readStp } from "../packages/kernel/src/graph/testing/stp.ts";
import { readTsp } from "../packages/kernel/src/optimise/testing/tsp.ts";
import { type Instance, steinerInstances, tourInstances } from "./instances.ts";
import { cells } from "./write-results.ts";

/** Rows of `results/<name>`. */
const results = (name: string): string[][] =>
  cells(readFileSync(new URL(`results/${name}`, import.meta.url), "utf8"));

const numbers = (text = ""): number[] => (text === "" ? [] : text.split(" ").map(Number));
const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;

describe("packings", () => {
  const rows = results("packing.csv");

  it("are valid: nothing overlaps, nothing sticks out, nothing is below the bound", () => {
    const bounds = new Map(rows.map(([name = "", , bound]) => [name, Number(bound)]));
    const packings = results("packing-centres.csv");
    expect(packings.map(([name]) => name)).toEqual(rows.map(([name]) => name));
    for (const [name = "", diameterText, enclosing, centreText] of packings) {
      const diameters = numbers(diameterText);
      const xy = numbers(centreText);
      expect(xy, name).toHaveLength(2 * diameters.length);
      let overlap = 0;
      let outside = 0;
      diameters.forEach((d, i) => {
        const x = xy[2 * i] ?? Number.NaN;
        const y = xy[2 * i + 1] ?? Number.NaN;
        outside = Math.max(outside, (2 * Math.hypot(x, y) + d) / Number(enclosing) - 1);
        for (let j = 0; j < i; j++) {
          const gap = Math.hypot(x - (xy[2 * j] ?? Number.NaN), y - (xy[2 * j + 1] ?? Number.NaN));
          overlap = Math.max(overlap, 1 - (2 * gap) / (d + (diameters[j] ?? Number.NaN)));
        }
      });
      expect(overlap, name).toBeLessThanOrEqual(1e-9);
      expect(outside, name).toBeLessThanOrEqual(1e-9);
      expect(Number(enclosing), name).toBeGreaterThanOrEqual((bounds.get(name) ?? Number.NaN) - 1e-6);
    }
  });

  it("of 1 to 61 equal circles are within 2 % of the best known, quickly, and within 0.5 % thoroughly", () => {
    const equal = rows.filter(([name = "", , , , , best]) => name.startsWith("equal") && best !== "");
    expect(equal.length).toBeGreaterThan(40);
    for (const [name, n, , quick, thorough, best] of equal) {
      if (Number(n) <= 61) expect(Number(quick) / Number(best), name).toBeLessThanOrEqual(1.02);
      expect(Number(thorough) / Number(best), name).toBeLessThanOrEqual(1.005);
      expect(Number(thorough) / Number(best), name).toBeGreaterThanOrEqual(1 - 1e-6);
    }
  });

  it("of radii 1 to n are within 3 % quickly and 1.5 % thoroughly", () => {
    const unequal = rows.filter(([name = ""]) => name.startsWith("radii"));
    for (const [name, , , quick, thorough, best] of unequal) {
      expect(Number(quick) / Number(best), name).toBeLessThanOrEqual(1.03);
      expect(Number(thorough) / Number(best), name).toBeLessThanOrEqual(1.015);
      expect(Number(thorough) / Number(best), name).toBeGreaterThanOrEqual(1 - 1e-6);
    }
  });
});

describe("Steiner trees", () => {
  const byName = (list: readonly Instance[]) => new Map(list.map((i) => [i.name, i]));

  it("join the terminals without a circle, at the cost that is stated", () => {
    const instances = byName(steinerInstances());
    const trees = results("steiner-trees.csv");
    expect(trees).toHaveLength(instances.size);
    for (const [name = "", value, edgeText] of trees) {
      const instance = instances.get(name);
      if (instance === undefined) throw new Error(`no instance ${name}`);
      const { graph, terminals } = readStp(instance.file);
      const sets = new UnionFind(graph.nodes);
      let cost = 0;
      for (const e of numbers(edgeText)) {
        expect(sets.join(graph.a[e] ?? -1, graph.b[e] ?? -1), name).toBe(true);
        cost += graph.cost[e] ?? Number.NaN;
      }
      expect(new Set(terminals.map((t) => sets.find(t))).size, name).toBe(1);
      expect(cost, name).toBe(Number(value));
      expect(cost, name).toBeGreaterThanOrEqual(instance.optimum);
    }
  });

  it("have a mean gap to the proved optima of at most 0.3 % in B and C, and in every other set", () => {
    const gaps = new Map<string, number[]>();
    for (const [set = "", name, , , , value, bound, optimum] of results("steiner.csv")) {
      expect(Number(bound), name).toBeLessThanOrEqual(Number(optimum));
      gaps.set(set, [...(gaps.get(set) ?? []), 100 * (Number(value) / Number(optimum) - 1)]);
    }
    expect([...gaps.keys()].slice(0, 2)).toEqual(["B", "C"]);
    for (const [set, list] of gaps) expect(mean(list), set).toBeLessThanOrEqual(0.3);
  });
});

describe("orders", () => {
  it("visit every node once and are as long as stated", () => {
    const instances = new Map(tourInstances().map((i) => [i.name, i]));
    const orders = results("order-orders.csv");
    expect(orders).toHaveLength(2 * instances.size);
    for (const [name = "", kind, value, orderText] of orders) {
      const instance = instances.get(name);
      if (instance === undefined) throw new Error(`no instance ${name}`);
      const matrix = readTsp(instance.file);
      const order = numbers(orderText);
      expect(
        order.toSorted((a, b) => a - b),
        name,
      ).toEqual(matrix.map((_, i) => i));
      let length =
        kind === "tour" ? (matrix[order[order.length - 1] ?? -1]?.[order[0] ?? -1] ?? Number.NaN) : 0;
      for (let i = 1; i < order.length; i++)
        length += matrix[order[i - 1] ?? -1]?.[order[i] ?? -1] ?? Number.NaN;
      expect(length, name).toBe(Number(value));
      if (kind === "tour") expect(length, name).toBeGreaterThanOrEqual(instance.optimum);
    }
  });

  it("are within 3 % of the published lengths, 1 % on average, with bounds below them", () => {
    const rows = results("order.csv");
    for (const [name, , tour, bound, optimum] of rows) {
      expect(Number(bound), name).toBeLessThanOrEqual(Number(optimum));
      expect(Number(tour) / Number(optimum), name).toBeLessThanOrEqual(1.03);
    }
    expect(mean(rows.map(([, , , , , gap]) => Number(gap)))).toBeLessThanOrEqual(1);
  });
});
