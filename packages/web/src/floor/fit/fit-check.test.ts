import { type Block, type Fact, type FactBody, NO_FACT } from "@pinwright/contract";
import { foldUnits } from "@pinwright/engine";
import { describe, expect, it } from "vitest";
import { fitWarnings, stops } from "./fit-check.ts";

const UNIT = { unit: "b-1", what: "board", type: "lamp", revision: "@3" } as const;
const PLACE = { what: "board", type: "lamp" } as const;
const block = (given: Partial<Block>): Block => ({
  ...{ gate: "test", unit: "b-1", of: "t", why: "missing", firm: false, lifted: false },
  ...given,
});
const stateOf = (...bodies: readonly FactBody[]) =>
  foldUnits(
    bodies.map(
      (body, i): Fact => ({
        ...{ stream: "t", seq: i + 1, before: NO_FACT, hash: NO_FACT, person: "bo", body },
        at: `2027-01-04T08:0${i}:00.000Z`,
      }),
    ),
  ).get("b-1");
const kinds = (given: Partial<Parameters<typeof fitWarnings>[0]>): readonly string[] =>
  fitWarnings({
    ...{ unit: UNIT, state: undefined, place: PLACE, machine: "m-2", machineRevision: "@9" },
    ...{ blocks: [], isServers: true },
    ...given,
  }).map(({ kind }) => kind);

describe("what is looked at before a unit is fitted", () => {
  it("is nothing of a good one, whatever the book's number of changes", () => {
    expect(kinds({})).toEqual([]);
    expect(stops([{ kind: "unknown" }])).toBe(false);
    expect(kinds({ isServers: false })).toEqual(["unknown"]);
  });

  it("is where it stands now, unless that is this machine", () => {
    const fitted: FactBody = { kind: "fitted", unit: "b-1", into: "m-1", place: "bd.1" };
    expect(kinds({ state: stateOf(fitted) })).toEqual(["elsewhere"]);
    expect(kinds({ state: stateOf(fitted), machine: "m-1" })).toEqual([]);
    const removed: FactBody = { kind: "removed", unit: "b-1", from: "m-1", place: "bd.1", why: "test" };
    expect(kinds({ state: stateOf(fitted, removed) })).toEqual([]);
  });

  it("is another type or revision, an open defect, failed and missing tests, missing steps and a recall", () => {
    expect(kinds({ place: { what: "board", type: "power" } })).toEqual(["type"]);
    expect(kinds({ machineRevision: "r2" })).toEqual(["revision"]);
    const defect: FactBody = {
      ...{ kind: "defect", unit: "b-1", defect: "d-1", what: "dry-joint", says: "", where: {} },
    };
    const mended: FactBody = { kind: "mended", unit: "b-1", defect: "d-1", cause: "work", says: "" };
    expect(kinds({ state: stateOf(defect) })).toEqual(["defects"]);
    expect(kinds({ state: stateOf(defect, mended) })).toEqual([]);
    const blocks = [
      block({}),
      block({ of: "t2", why: "failed" }),
      block({ gate: "step", of: "kit" }),
      block({ gate: "recall", of: "r", why: "recalled" }),
    ];
    expect(kinds({ blocks })).toEqual(["recalled", "failed", "untested", "steps"]);
    expect(kinds({ blocks: blocks.map((one) => ({ ...one, lifted: true })) })).toEqual([]);
    expect(kinds({ blocks: blocks.map((one) => ({ ...one, unit: "b-9" })) })).toEqual([]);
  });
});
