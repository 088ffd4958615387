import { describe, expect, it } from "vitest";
import { type Chosen, chosenIn, groupsOf, paramsOf, type Said } from "./chosen.ts";

const said = (rule: string, severity: "error" | "warning" | "note", id: string, accepted = false): Said => ({
  key: `${rule}|${id}`,
  sentence: `${id} is ${rule}`,
  entry: {
    finding: {
      rule,
      severity,
      subjects: [id],
      numbers: {},
      accepted: accepted ? { by: "Mara", reason: "fine", basis: "" } : null,
    },
    subjects: [{ id, kind: "item", table: null, label: "Left gate", labelZh: "左门" }],
    subject: `${rule}|${id}`,
    basis: "",
    bounds: [],
    lapsed: null,
  },
});
const all = [
  said("z-rule", "error", "sw.1"),
  said("a-rule", "warning", "sw.2"),
  said("a-rule", "warning", "sw.3", true),
  said("a-rule", "error", "sw.4"),
];
const everything: Chosen = { shown: "all", severity: null, rule: null, text: "", about: null };
const ids = (chosen: Partial<Chosen>): readonly string[] =>
  groupsOf(all, { ...everything, ...chosen }).flatMap((g) =>
    g.said.map((s) => s.entry.finding.subjects[0] ?? ""),
  );

describe("groupsOf", () => {
  it("keeps those that name an id", () => {
    expect(ids({ about: "sw.2" })).toEqual(["sw.2"]);
    expect(ids({ about: "sw" })).toEqual([]);
    expect(chosenIn(new URLSearchParams({ id: "sw.2" })).about).toBe("sw.2");
    expect(paramsOf({ ...everything, about: "sw.2" })).toEqual({ show: "all", id: "sw.2" });
  });

  it("puts the most serious first and keeps rules together", () => {
    expect(ids({})).toEqual(["sw.4", "sw.1", "sw.2", "sw.3"]);
    expect(ids({ shown: "open" })).toEqual(["sw.4", "sw.1", "sw.2"]);
    expect(ids({ shown: "accepted" })).toEqual(["sw.3"]);
  });

  it("keeps what fits severity, rule and every word of the text", () => {
    expect(ids({ severity: "warning", shown: "open" })).toEqual(["sw.2"]);
    expect(ids({ rule: "z-rule" })).toEqual(["sw.1"]);
    expect(ids({ text: "gate SW.2" })).toEqual(["sw.2"]);
    expect(ids({ text: "左门 z-rule" })).toEqual(["sw.1"]);
  });
});

describe("the address", () => {
  it("holds what is chosen, and nothing of what is usual", () => {
    const chosen: Chosen = {
      shown: "accepted",
      severity: "note",
      rule: "a-rule",
      text: "left gate",
      about: null,
    };
    expect(chosenIn(new URLSearchParams(paramsOf(chosen)))).toEqual(chosen);
    expect(paramsOf(chosenIn(new URLSearchParams("show=nonsense&severity=loud")))).toEqual({});
  });
});
