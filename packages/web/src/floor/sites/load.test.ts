import type { UnitSummary } from "@pinwright/contract";
import { describe, expect, it } from "vitest";
import { comingTo, count, stacksAt, transportId } from "./load.ts";

const unit = (id: string, given: Partial<UnitSummary> = {}): UnitSummary => ({
  ...{ unit: id, what: "board", type: "lamp", book: "b", revision: "@1", run: "", stage: "", site: "works" },
  ...{ onTheWay: null, within: null, openDefects: 0, failedTests: [], recalls: [], releasedAt: null },
  ...{ lastAt: "2027-01-04T08:00:00.000Z" },
  ...given,
});

describe("transport", () => {
  it("is named by its day", () => {
    const id = transportId(new Date("2027-03-09T10:00:00Z"), () => new Uint8Array([0, 10, 35, 40]));
    expect(id).toBe("tr-270309-0az4");
  });

  it("takes what stands at the site by itself, kind by kind", () => {
    const units = [
      unit("b-1"),
      unit("b-2", { within: { unit: "m-1", place: "bd" } }),
      unit("b-3", { onTheWay: { transport: "tr-1", to: "joinery" } }),
      unit("b-4", { site: "joinery" }),
      unit("b-5", { site: "" }),
      unit("m-1", { what: "machine", type: "tide" }),
    ];
    expect(stacksAt(units, "works")).toEqual([
      { what: "board", type: "lamp", unitIds: ["b-1", "b-5"] },
      { what: "machine", type: "tide", unitIds: ["m-1"] },
    ]);
    expect(comingTo(units, "joinery")).toEqual([{ transport: "tr-1", unitIds: ["b-3"] }]);
    expect(comingTo(units, "works")).toEqual([]);
  });

  it("is counted in: what is there, what is missing, what is too much; also when the server knows already", () => {
    const counted = new Set(["b-1", "b-9"]);
    expect(count(["b-1", "b-2"], [], counted)).toEqual({ missing: ["b-2"], there: ["b-1"], extra: ["b-9"] });
    expect(count(["b-2"], ["b-1", "b-2"], counted)).toEqual({
      missing: ["b-2"],
      there: ["b-1"],
      extra: ["b-9"],
    });
  });
});
