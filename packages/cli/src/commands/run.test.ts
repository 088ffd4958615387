import { readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { call, Place } from "../testing/calls.ts";

const place = new Place();
afterAll(() => place.clear());

const table = (...lines: readonly string[]) => `${lines.join("\n")}\n`;

/** First-light with a run of ten in spring and one of twenty in autumn, put together on one bench. */
const planned = place.copyWith("planned", {});
writeFileSync(
  join(planned, "shop", "runs.csv"),
  table(
    "id,label,label_zh,book,machines,ship,begin,state,confidence_pct,spare_years,remark",
    "spring,,,first-light,10,2027-05-28,,planned,95,2,",
    "autumn,,,first-light,20,2027-11-26,,planned,95,2,",
  ),
);
writeFileSync(
  join(planned, "shop", "benches.csv"),
  table("id,label,label_zh,site,people,kind,hours_day,rate", "bench,,,,2,assembly,8,"),
);
writeFileSync(
  join(planned, "shop", "stages.csv"),
  table(
    "id,label,label_zh,kind,after,benches,minutes,batch,wait_hours,most_per_day",
    "build,Build,,assembly,,,,1,,",
  ),
);
const run = (...args: readonly string[]) => call("run", planned, "--today", "2026-11-30", ...args);

describe("run", () => {
  it("tells runs, stages, orders, lots, money and cost", async () => {
    const { status, out } = await run();
    expect(status).toBe(0);
    expect(out).toMatch(/^run +machines +work from/u);
    expect(out).toMatch(/spring +10 .*2027-05-28/u);
    expect(out).toMatch(/no other lots cost less/u);
    expect(out).toMatch(/week from +material/u);
    expect(out).toMatch(/one machine, EUR +at 20/u);
  });

  it("tells what would be if, side by side", async () => {
    const { out } = await run("--run", "spring", "--machines", "40");
    expect(out).toMatch(/planned +tried/u);
    expect(out).toMatch(/machines +10 +40/u);
    expect(out).toMatch(/all that goes out/u);
  });

  it("tells two runs side by side, cost against quantity, and what is lacking", async () => {
    expect((await run("--compare", "spring,autumn")).out).toMatch(/run +spring +autumn/u);
    expect((await run("--cost", "1,100")).out).toMatch(/one machine, EUR +at 1 +at 100/u);
    expect((await run("--run", "spring", "--shortages")).out).toMatch(/build +\S+/u);
  });

  it("writes exact figures as JSON", async () => {
    const { out } = await run("--json");
    const plan: unknown = JSON.parse(out);
    expect(plan).toMatchObject({ currency: "EUR", runs: [{ runId: "spring" }, { runId: "autumn" }] });
  });

  it("writes the orders as PDF, XLSX and CSV", async () => {
    const folder = join(place.path, "orders");
    const { out } = await run("--orders", folder, "--language", "en");
    expect(out).toMatch(/sheets in/u);
    const files = readdirSync(folder);
    for (const format of ["pdf", "xlsx", "csv"])
      expect(files.filter((file) => file.endsWith(format)).length).toBe(files.length / 3);
  });

  it("says that a run is late and what to do, and that it was found", async () => {
    const { status, err } = await call("run", planned, "--today", "2027-05-26");
    expect(status).toBe(1);
    expect(err).toMatch(/error run-late: Run spring/u);
  });

  it.each([
    [["--run", "winter"], /--run winter/u],
    [["--machines", "0"], /--machines 0/u],
    [["--ship", "2027-02-30"], /--ship 2027-02-30/u],
    [["--cost", "ten"], /--cost ten/u],
    [["--compare", "spring"], /--compare/u],
  ])("refuses %j", async (args, says) => {
    const { status, err } = await run(...args);
    expect(status).toBe(2);
    expect(err).toMatch(says);
  });

  it("says so when there is no run", async () => {
    const { status, out } = await call("run", place.copyWith("none", {}), "--today", "2026-11-30");
    expect([status, out]).toEqual([
      0,
      "The shop has no open run of first-light: add one to its table runs.\n",
    ]);
  });
});
