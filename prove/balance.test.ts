import { readFileSync } from "node:fs";
import { balanceFaults } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { readLine } from "../packages/kernel/src/optimise/balance/testing/instance.ts";
import { balanceInstances } from "./balance-instances.ts";
import { cells } from "./write-results.ts";

const results = (name: string): string[][] =>
  cells(readFileSync(new URL(`results/${name}`, import.meta.url), "utf8"));

describe("balanced lines", () => {
  const instances = balanceInstances();
  const rows = results("balance.csv");
  const plans = results("balance-plans.csv");

  it("keep every rule at the stations and the takt that are stated", () => {
    expect(rows).toHaveLength(instances.length);
    instances.forEach(({ name, problem, given, file }, i) => {
      const [, , , , value = ""] = rows[i] ?? [];
      const stations = (plans[i]?.[3] ?? "")
        .split(";")
        .map((tasks) => (tasks === "" ? [] : tasks.split(" ").map(Number)));
      const takt = problem === "SALBP-1" ? given : Number(value);
      expect(stations, name).toHaveLength(problem === "SALBP-1" ? Number(value) : given);
      expect(balanceFaults(readLine(file), takt, stations), name).toEqual([]);
    });
  });

  it("of up to 100 tasks have the published optimum or better in 95 %, never more than one station above", () => {
    const small = rows.filter(([, tasks]) => Number(tasks) <= 100);
    const good = small.filter(([, , , , value, , published]) => Number(value) <= Number(published));
    expect(good.length / small.length).toBeGreaterThanOrEqual(0.95);
    for (const [name, , problem, , value, , published] of small) {
      if (problem === "SALBP-1") expect(Number(value), name).toBeLessThanOrEqual(Number(published) + 1);
    }
  });

  it("have bounds that no value goes below, and only an unconfirmed published value is beaten", () => {
    for (const [name, , , , value, bound, published, checked] of rows) {
      expect(Number(bound), name).toBeLessThanOrEqual(Math.min(Number(value), Number(published)));
      if (checked !== "as printed") expect(Number(value), name).toBeGreaterThanOrEqual(Number(published));
    }
  });
});
