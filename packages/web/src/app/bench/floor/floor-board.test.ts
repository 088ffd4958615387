import type { FloorUnit } from "@pinwright/contract";
import { describe, expect, it } from "vitest";
import { type FloorNow, floorBoards, shortNumber } from "./floor-board.ts";
import { screenPages } from "./pages.ts";

const unit = (given: Partial<FloorUnit>): FloorUnit => ({
  ...{ unit: "b-000001", what: "board", type: "bt.lamp", run: "run.1", stage: "", site: "" },
  ...{ onTheWay: null, within: null, filled: [], open: [], failed: [] },
  ...{ begunAt: "2027-01-04T08:00:00.000Z", lastAt: "2027-01-04T09:00:00.000Z", lastPerson: "bo" },
  ...given,
});
const machine = (given: Partial<FloorUnit>): FloorUnit =>
  unit({ unit: "m-000001", what: "machine", ...given });
const floor = (units: readonly FloorUnit[], more: Partial<FloorNow> = {}): FloorNow => ({
  at: "2027-01-04T10:00:00.000Z",
  units: [...units],
  countedIn: [],
  released: [],
  today: { yields: [], defects: 0 },
  ...more,
});
const STAGES = [
  { id: "st.boards", kind: "boards" },
  { id: "st.assembly", kind: "assembly" },
];
const PLACES = [
  { id: "bd.1", what: "board", type: "bt.lamp" },
  { id: "bd.2", what: "board", type: "bt.lamp" },
  { id: "hs.1", what: "harness", type: "hs.1" },
] as const;
const boards = (now: FloorNow, quietHours = 8) =>
  floorBoards(now, {
    ...{ stages: STAGES, places: PLACES, runOrder: [], quietHours },
    nowMs: Date.parse("2027-01-04T12:00:00.000Z"),
  });

describe("a run on the floor", () => {
  it("has its units at their stages, those that are fitted or on the way at none", () => {
    const [board] = boards(
      floor([
        unit({}),
        unit({ unit: "b-000002", stage: "st.assembly" }),
        unit({
          unit: "b-000003",
          within: { unit: "m-000001", place: "bd.1" },
          failed: [{ test: "t", at: "x" }],
        }),
        unit({
          unit: "b-000004",
          onTheWay: { transport: "tr-1", to: "works", at: "2027-01-04T09:00:00.000Z" },
        }),
        machine({}),
      ]),
    );
    expect(board?.rows).toMatchObject([
      { stage: "", machines: ["m-000001"], counts: { machine: 1 } },
      { stage: "st.boards", counts: { board: 1 } },
      { stage: "st.assembly", counts: { board: 1 } },
    ]);
  });

  it("tells what is stuck: defects before failed tests, transports and what is quiet", () => {
    const at = "2027-01-04T09:30:00.000Z";
    const [board] = boards(
      floor([
        unit({ unit: "b-000001" }),
        unit({ unit: "b-000002", lastAt: "2027-01-04T08:00:00.000Z" }),
        unit({ unit: "b-000003", failed: [{ test: "t.1", at }] }),
        unit({
          unit: "b-000004",
          open: [{ defect: "d", kind: "dry-joint", at }],
          failed: [{ test: "t.1", at }],
        }),
        unit({ unit: "b-000005", onTheWay: { transport: "tr-1", to: "works", at } }),
      ]),
      2,
    );
    expect(board?.stuck.map(({ unit: id, why, of, others }) => [id, why, of, others])).toEqual([
      ["b-000004", "defect", "dry-joint", 1],
      ["b-000003", "test", "t.1", 0],
      ["b-000005", "way", "works", 0],
      ["b-000001", "quiet", "", 0],
    ]);
    expect(boards(floor([unit({})]), 4)[0]?.stuck).toEqual([]);
  });

  it("tells what machines wait for, and how much of it is ready; one that is not begun waits for nothing", () => {
    const [board] = boards(
      floor([
        machine({ filled: ["bd.1"] }),
        machine({ unit: "m-000002" }),
        machine({ unit: "m-000003", lastAt: "2027-01-04T08:00:00.000Z" }),
        unit({ unit: "b-000001", stage: "st.assembly" }),
        unit({ unit: "b-000002", stage: "st.assembly", open: [{ defect: "d", kind: "x", at: "y" }] }),
        unit({ unit: "b-000003" }),
      ]),
    );
    expect(board?.waits).toEqual([
      { what: "board", type: "bt.lamp", machines: 2, missing: 3, ready: 1, inWork: 2 },
      { what: "harness", type: "hs.1", machines: 2, missing: 2, ready: 0, inWork: 0 },
    ]);
  });

  it("counts what was released and today's yield, and has what belongs to no run last", () => {
    const yields = [
      { what: "board", run: "run.1", units: 10, first: 8 },
      { what: "harness", run: "run.1", units: 4, first: 4 },
    ] as const;
    const found = boards(
      floor([unit({ run: "" }), machine({})], {
        released: [{ run: "run.1", what: "machine", units: 3 }],
        today: { yields: [...yields], defects: 2 },
      }),
    );
    expect(found).toMatchObject([
      { run: "run.1", machines: 4, released: 3, today: { units: 14, first: 12 } },
      { run: "", machines: 0, today: { units: 0, first: 0 } },
    ]);
    expect([shortNumber("m-000012"), shortNumber("box 7")]).toEqual(["12", "box 7"]);
  });

  it("turns pages until all that is stuck was seen, and never shows an empty list in between", () => {
    const at = "2027-01-04T09:30:00.000Z";
    const many = Array.from({ length: 14 }, (_, i) =>
      unit({ unit: `b-${i}`, failed: [{ test: "t.1", at: `${at}${i}` }] }),
    );
    const pages = screenPages(boards(floor([...many, machine({ run: "run.2" })])));
    expect(pages.map(({ board, stuck, waits }) => [board.run, stuck.length, waits?.length])).toEqual([
      ["run.1", 6, 0],
      ["run.1", 6, 0],
      ["run.1", 2, 0],
      ["run.2", 0, 2],
    ]);
    expect(new Set(pages.flatMap(({ stuck }) => stuck.map((one) => one.unit))).size).toBe(14);
  });
});
