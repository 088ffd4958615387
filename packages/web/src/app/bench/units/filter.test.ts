import type { UnitSummary } from "@pinwright/contract";
import { describe, expect, it } from "vitest";
import { filtered, filterOf, paramsOf } from "./filter.ts";

const unit = (over: Partial<UnitSummary>): UnitSummary => ({
  ...{ unit: "b-000001", what: "board", type: "bt.switch16", book: "heron", revision: "@1", run: "" },
  ...{ stage: "", site: "", onTheWay: null, within: null, openDefects: 0, failedTests: [], recalls: [] },
  ...{ releasedAt: null, lastAt: "2027-01-04T08:00:00.000Z" },
  ...over,
});

const UNITS = [
  unit({}),
  unit({ unit: "b-000002", run: "run.spring", openDefects: 1, releasedAt: "2027-01-05T08:00:00.000Z" }),
  unit({ unit: "h-000001", what: "harness", type: "hs.deck", site: "north" }),
  unit({ unit: "m-000012", what: "machine", type: "heron", releasedAt: "2027-01-05T08:00:00.000Z" }),
];
const found = (query: string): readonly string[] =>
  filtered(UNITS, filterOf(new URLSearchParams(query))).map((one) => one.unit);

describe("filter of units", () => {
  it.each([
    ["", ["b-000001", "b-000002", "h-000001", "m-000012"]],
    ["q=00001", ["b-000001", "h-000001", "m-000012"]],
    ["q=%20M-", ["m-000012"]],
    ["kind=board", ["b-000001", "b-000002"]],
    ["kind=nonsense", ["b-000001", "b-000002", "h-000001", "m-000012"]],
    ["kind=board&run=-", ["b-000001"]],
    ["run=run.spring", ["b-000002"]],
    ["state=on-hold", ["b-000002"]],
    ["state=released", ["m-000012"]],
    ["state=in-work&site=-", ["b-000001"]],
    ["site=north&type=hs.deck", ["h-000001"]],
  ])("finds what %s asks for", (query, units) => {
    expect(found(query)).toEqual(units);
  });

  it("is written as it was read", () => {
    const query = "q=00&kind=board&type=bt.switch16&run=-&state=on-hold&site=north";
    expect(new URLSearchParams(paramsOf(filterOf(new URLSearchParams(query)))).toString()).toBe(query);
  });
});
