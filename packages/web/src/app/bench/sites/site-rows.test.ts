import type { FloorUnit } from "@pinwright/contract";
import { describe, expect, it } from "vitest";
import { siteRows, transportsOf, workOfSite } from "./site-rows.ts";

const unit = (id: string, given: Partial<FloorUnit>): FloorUnit => ({
  ...{ unit: id, what: "machine", type: "heron", run: "", stage: "", site: "" },
  ...{ onTheWay: null, within: null, filled: [], open: [], failed: [] },
  ...{ begunAt: "2027-01-04T08:00:00.000Z", lastAt: "2027-01-04T09:00:00.000Z", lastPerson: "bo" },
  ...given,
});
const way = (at: string, transport = "tr-1") => ({ transport, to: "works", at });
const UNITS = [
  unit("m-1", { site: "joinery", stage: "st.paint" }),
  unit("m-2", { site: "joinery", stage: "st.bring", onTheWay: way("2027-01-04T11:00:00.000Z") }),
  unit("m-3", { site: "joinery", stage: "st.bring", onTheWay: way("2027-01-04T10:00:00.000Z") }),
  unit("m-4", { stage: "st.test" }),
  unit("m-5", { site: "works", stage: "st.test", lastAt: "2027-01-04T12:00:00.000Z" }),
  unit("m-6", { site: "works", onTheWay: way("2027-01-04T09:00:00.000Z", "tr-0") }),
  unit("b-1", {
    what: "board",
    site: "works",
    within: { unit: "m-5", place: "bd.1" },
    failed: [{ test: "t", at: "x" }],
  }),
];

describe("sites", () => {
  it("have what is there by stage, what is coming, and what nobody knows of last", () => {
    const rows = siteRows(UNITS, ["works", "joinery"], []);
    expect(rows.map(({ site, units, coming }) => [site, units, coming])).toEqual([
      ["works", 1, 3],
      ["joinery", 1, 0],
      ["", 1, 0],
    ]);
    expect(rows[0]?.lastAt).toBe("2027-01-04T12:00:00.000Z");
    expect(rows[1]?.byStage).toEqual(new Map([["st.paint", 1]]));
  });

  it("tell transports, the longest on the way first, with what was counted in from them", () => {
    const counted = { unit: "m-9", what: "machine", type: "heron", transport: "tr-1", at: "z" } as const;
    expect(transportsOf(UNITS, [counted])).toMatchObject([
      { transport: "tr-0", countedIn: [] },
      {
        transport: "tr-1",
        since: "2027-01-04T10:00:00.000Z",
        out: [{ unit: "m-2" }, { unit: "m-3" }],
        countedIn: [{ unit: "m-9" }],
      },
    ]);
  });

  it("have the work of their own stages", () => {
    const stages = [
      { id: "st.paint", kind: "paint", sites: ["joinery"] },
      { id: "st.test", kind: "test", sites: ["works"] },
    ];
    expect(workOfSite(UNITS, "works", stages)).toMatchObject([
      { stage: "st.test", waiting: [{ unit: "m-4" }, { unit: "m-5" }], coming: 0 },
    ]);
    expect(workOfSite(UNITS, "joinery", stages)).toMatchObject([
      { stage: "st.paint", waiting: [{ unit: "m-1" }] },
    ]);
  });
});
