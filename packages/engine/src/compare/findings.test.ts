import { describe, expect, it } from "vitest";
import { compareFacts } from "./compare.ts";
import { FACTS_FORMAT, type FactRow, type FindingFact, type MachineFacts } from "./facts.ts";

/** A machine of which only findings and choices are told. */
const facts = (findings: readonly FindingFact[], ...choices: readonly FactRow[]): MachineFacts => ({
  format: FACTS_FORMAT,
  machine: { id: "m", labels: { en: "M", zh: "M" }, owner: "", approved: "", revision: "A" },
  rows: { choices: Object.fromEntries(choices.map((row) => [`${row.kind} ${row.subject}`, row])) },
  ...{ items: {}, wires: {}, parts: {}, steps: {}, symbols: {}, findings, sheets: [] },
});

const finding = (over: Partial<FindingFact> = {}): FindingFact => ({
  ...{ rule: "lane-overfull", severity: "warning", subjects: ["ln.a"] },
  ...{ numbers: { diameter_mm: 20, limit_mm: 18 }, accepted: null },
  ...over,
});

const WHY = { by: "designer", reason: "It was tried." };

const accept = (over: FactRow = {}): FactRow => ({
  ...{ kind: "accept", subject: "lane-overfull|ln.a", held: "pinned", basis: "diameter_mm<=20" },
  ...WHY,
  ...over,
});

const said = (before: MachineFacts, after: MachineFacts) =>
  compareFacts(before, after).groups.flatMap(({ subject, changes }) =>
    changes.map(({ what, values }) => ({ at: subject.table, what, values })),
  );
const kinds = (before: MachineFacts, after: MachineFacts) => said(before, after).map(({ what }) => what);

describe("comparing findings", () => {
  it("tells a finding of which only numbers differ, with both", () => {
    const now = finding({ numbers: { limit_mm: 18, diameter_mm: 21 } });
    expect(said(facts([finding()]), facts([now]))).toMatchObject([
      {
        what: "finding-numbers",
        values: {
          rule: "lane-overfull",
          subjects: ["ln.a"],
          from: [{ diameter_mm: 20, limit_mm: 18 }],
          to: [{ diameter_mm: 21, limit_mm: 18 }],
        },
      },
    ]);
  });

  it("looks at numbers by their names, not in their order", () => {
    const turned = finding({ numbers: { limit_mm: 18, diameter_mm: 20 } });
    expect(said(facts([finding()]), facts([turned]))).toEqual([]);
  });

  it("tells of several alike only those that differ", () => {
    const [one, two, three] = [20, 30, 40].map((diameter_mm) => finding({ numbers: { diameter_mm } }));
    if (one === undefined || two === undefined || three === undefined) throw new Error("three were made");
    expect(said(facts([one, two]), facts([three, one]))).toMatchObject([
      { what: "finding-numbers", values: { from: [{ diameter_mm: 30 }], to: [{ diameter_mm: 40 }] } },
    ]);
    expect(kinds(facts([one, two]), facts([two, one]))).toEqual([]);
  });

  it("tells an acceptance at its finding, once", () => {
    const accepted = finding({ accepted: WHY });
    expect(said(facts([finding()]), facts([accepted], accept()))).toMatchObject([
      { at: "findings", what: "accepted", values: { by: "designer", why: "It was tried." } },
    ]);
    expect(kinds(facts([accepted], accept()), facts([finding()]))).toEqual(["no-longer-accepted"]);
  });

  it("tells a finding that is new and accepted at once as both", () => {
    expect(kinds(facts([]), facts([finding({ accepted: WHY })], accept()))).toEqual([
      "finding-new",
      "accepted",
    ]);
  });

  it("tells another reason of an acceptance with the one before, and other limits", () => {
    const other = { by: "designer", reason: "It was measured." };
    expect(
      said(
        facts([finding({ accepted: WHY })], accept()),
        facts([finding({ accepted: other })], accept({ reason: other.reason })),
      ),
    ).toMatchObject([
      { at: "findings", what: "accepted-otherwise", values: { why: other.reason, was: WHY.reason } },
    ]);
    expect(
      said(
        facts([finding({ accepted: WHY })], accept()),
        facts([finding({ accepted: WHY })], accept({ basis: "diameter_mm<=25" })),
      ),
    ).toMatchObject([
      { at: "choices", what: "accepted-bounds", values: { from: "diameter_mm<=20", to: "diameter_mm<=25" } },
    ]);
  });

  it("tells an acceptance that accepts nothing, and whether what it means is there", () => {
    expect(said(facts([]), facts([], accept()))).toMatchObject([
      {
        at: "choices",
        what: "acceptance-new",
        values: { rule: "lane-overfull", subjects: ["ln.a"], isThere: "" },
      },
    ]);
    expect(said(facts([finding()]), facts([finding()], accept({ basis: "diameter_mm<=19" })))).toMatchObject([
      { what: "acceptance-new", values: { isThere: "yes" } },
    ]);
    expect(kinds(facts([], accept()), facts([]))).toEqual(["acceptance-gone"]);
    expect(kinds(facts([], accept()), facts([], accept({ reason: "Another." })))).toEqual([
      "acceptance-changed",
    ]);
  });

  it("tells an acceptance that no longer holds for the numbers at its finding, with the numbers", () => {
    const worse = finding({ numbers: { diameter_mm: 22, limit_mm: 18 } });
    expect(kinds(facts([finding({ accepted: WHY })], accept()), facts([worse], accept()))).toEqual([
      "finding-numbers",
      "no-longer-accepted",
    ]);
  });
});
