import { describe, expect, it } from "vitest";
import { faultsOf, NEW_RUN, newRunId, type RunDraft, rowsOf } from "./run-draft.ts";

const DRAFT: RunDraft = { ...NEW_RUN, label: "Spring 2027", ship: "2027-05-01" };

describe("a run that is being written", () => {
  it("needs a name, a number and a day", () => {
    expect(faultsOf(DRAFT)).toEqual([]);
    expect(faultsOf({ ...DRAFT, label: " ", machines: 0.5, ship: "" })).toEqual([
      "noName",
      "noMachines",
      "noShip",
    ]);
    expect(faultsOf({ ...DRAFT, label: "", labelZh: "春季" })).toEqual([]);
  });

  it.each([
    ["Spring 2027", [], "spring-2027"],
    ["Spring 2027", ["spring-2027"], "spring-2027-2"],
    ["春季", [], "run-1"],
    ["春季", ["run-1", "run-2"], "run-3"],
  ])("%s gets an id beside %j: %s", (label, taken, id) => {
    expect(newRunId(label, new Set(taken))).toBe(id);
  });

  it("writes its mix once for each set of options, and takes away what is gone", () => {
    const mix = [
      { key: "0", optionIds: ["zh", "mains-115"], machines: 3 },
      { key: "1", optionIds: ["mains-115", "zh"], machines: 2 },
      { key: "2", optionIds: [], machines: 4 },
    ];
    const before = {
      id: "spring",
      label: "",
      labelZh: "",
      machines: 10,
      ship: "",
      begin: "",
      state: "planned",
      confidencePct: 95,
      spareYears: 5,
      remark: "",
      bookId: "other-book",
      isOfBook: true,
      mix: [
        { options: "mains-115", machines: 5 },
        { options: "mains-115 zh", machines: 1 },
      ],
      frozenPrices: 0,
    } as const;
    const { rows, gone } = rowsOf("spring", { ...DRAFT, mix }, "tidewatch", before);
    expect(rows.slice(1)).toEqual([
      { table: "run_mix", key: { run: "spring", options: "mains-115 zh" }, cells: { machines: "5" } },
    ]);
    expect(rows[0]?.cells.book).toBe("other-book");
    expect(gone).toEqual([{ table: "run_mix", key: { run: "spring", options: "mains-115" } }]);
  });
});
