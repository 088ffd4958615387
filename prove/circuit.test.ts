import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { randomMachine } from "../packages/engine/src/electric/testing/random-machine.ts";
import { cells } from "./write-results.ts";

describe("circuits against ngspice", () => {
  const rows = cells(readFileSync(new URL("results/circuit.csv", import.meta.url), "utf8"));

  it("agree within 0.01 % at every node of 200 random networks, with no diode turned over", () => {
    expect(rows.map(([seed]) => Number(seed))).toEqual(Array.from({ length: 200 }, (_, n) => n + 1));
    for (const [seed, , , , , nodes, turned, share, volts] of rows) {
      expect(Number(nodes), `network ${seed}`).toBeGreaterThan(15);
      expect(Number(turned), `network ${seed}`).toBe(0);
      expect(Number(share), `network ${seed}`).toBeLessThan(1e-4);
      expect(Number(volts), `network ${seed}`).toBeLessThan(1e-5);
    }
  });

  it("are those of the random networks of today", () => {
    for (const [seed, , , , wires] of rows.filter((_, n) => n % 20 === 0))
      expect(randomMachine(Number(seed)).wires.length, `network ${seed}`).toBe(Number(wires));
  });
});
