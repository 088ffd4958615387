import { describe, expect, it } from "vitest";
import type { HarnessRoute, SizedBranch, SizedWire, TreeNode } from "../model/index.ts";
import { createBook, createShop } from "../testing/book.ts";
import { bundleOf } from "./bundle.ts";
import { checkBundles } from "./check.ts";
import { circlesOf } from "./circles.ts";
import type { BundledHarness } from "./passages.ts";

const SHOP = createShop({
  holders: [
    { id: "tie", kind: "tie", min_diameter_mm: 1, max_diameter_mm: 8 },
    { id: "saddle", kind: "saddle", min_diameter_mm: 4, max_diameter_mm: 6, part: "saddle.6" },
  ],
});
const BOOK = createBook({
  wire_types: [{ id: "w16", od_mm: 1.6 }],
  cables: [{ id: "pair", od_mm: 3.4 }],
  waypoints: [{ id: "p", hold: "saddle", hold_part: "saddle.6" }, { id: "q" }, { id: "r" }],
  lanes: [
    { id: "pq", from: "p", to: "q", max_diameter_mm: 6 },
    { id: "qr", from: "q", to: "r", max_diameter_mm: 20 },
  ],
  crossings: [{ id: "hole", from: "r", to: "s", kind: "hole", max_diameter_mm: 5 }],
});
const WIRE_TYPE = BOOK.tables.wire_types[0];

const wire = (id: string, cableId: string | null = null): SizedWire => {
  if (WIRE_TYPE === undefined) throw new Error("no wire type");
  return {
    id,
    number: 1,
    netId: "n",
    netClass: "switch",
    harnessId: "h",
    a: "a",
    b: "b",
    wireType: WIRE_TYPE,
    cableId,
    core: null,
    path: [],
    finishedMm: 0,
    cutMm: 0,
    tolerancePlusMm: 0,
    crimpedFirst: "a",
    colour: "WH",
  };
};

const NODES: readonly TreeNode[] = [
  ["p", 0, 0],
  ["q", 100, 0],
  ["r", 100, 60],
  ["s", 100, 60],
].map(([id, xMm, yMm]) => ({
  id: String(id),
  kind: "waypoint",
  breakout: false,
  place: { panelId: "f", side: "under", xMm: Number(xMm), yMm: Number(yMm), rotationDeg: 0, zMm: 0 },
}));

/** A harness of `count` wires that run through p, q, r and a hole. */
const harness = (
  id: string,
  count: number,
  wires = Array.from({ length: count }, (_, i) => wire(`${id}${i}`)),
): BundledHarness => {
  const wireIds = wires.map((w) => w.id);
  const bundle = bundleOf(circlesOf(wires, BOOK), SHOP);
  const branch = (
    branchId: string,
    kind: SizedBranch["kind"],
    a: string,
    b: string,
    lengthMm: number,
  ): SizedBranch => ({
    id: branchId,
    kind,
    a,
    b,
    routeMm: lengthMm,
    lengthMm,
    wireIds,
    bundle,
  });
  const branches = [
    branch("pq", "lane", "p", "q", 100),
    branch("qr", "lane", "q", "r", 60),
    branch("hole", "crossing", "r", "s", 20),
  ];
  const route: HarnessRoute = {
    harnessId: id,
    rootId: "p",
    nodes: NODES,
    branches,
    paths: new Map(),
    spliceAt: new Map(),
    unreached: [],
    work: {
      breakouts: 0,
      ties: 0,
      insertions: 0,
      splices: 0,
      minutes: 0,
      metres: 0,
      total: { value: 0, lowerBound: 0, gap: 0 },
    },
  };
  const row = {
    id,
    label: id,
    label_zh: "",
    number: 1,
    board_width_mm: 2400,
    board_height_mm: 900,
    service_loop_mm: null,
    options: [],
  };
  return { harness: row, wires, route, branches };
};

const check = (...all: BundledHarness[]) => checkBundles({ book: BOOK, shop: SHOP }, all);
const rules = (...all: BundledHarness[]) => check(...all).map((f) => `${f.rule} ${f.subjects[0]}`);

describe("circlesOf", () => {
  it("counts all cores of a cable as one circle of the cable", () => {
    expect(circlesOf([wire("1"), wire("2", "pair"), wire("3", "pair")], BOOK)).toEqual([3.4, 1.6]);
  });
});

describe("checkBundles", () => {
  it("finds nothing where everything fits", () => {
    expect(check(harness("h", 5))).toEqual([]);
  });

  it("adds up all harnesses in a lane, a hole and a saddle", () => {
    // 4 × 1.6 mm alone: 3.863 packed, 4.327 laid; 8 together: 5.288 packed, 5.922 laid, 5 mm wide hole.
    expect(rules(harness("g", 4))).toEqual([]);
    expect(rules(harness("g", 4), harness("h", 4))).toEqual(["hole-overfull hole"]);
    expect(rules(harness("g", 4), harness("h", 5))).toEqual([
      "clip-overfull p",
      "hole-overfull hole",
      "lane-overfull pq",
    ]);
    const found = check(harness("g", 4), harness("h", 5)).find((f) => f.rule === "lane-overfull");
    expect(found).toMatchObject({
      severity: "error",
      subjects: ["pq", "g", "h"],
      numbers: { laid_mm: 6.476, packed_mm: 5.782, max_mm: 6, circles: 9 },
    });
  });

  it("says when a saddle does not hold so thin a bundle", () => {
    expect(rules(harness("h", 2))).toEqual(["clip-loose p"]);
  });

  it("says when no tie goes round", () => {
    const found = check(harness("h", 15)).filter((f) => f.rule === "tie-missing");
    expect(rules(harness("h", 14)).filter((r) => r.startsWith("tie"))).toEqual([]);
    expect(found.map((f) => f.subjects)).toEqual([
      ["hole", "h"],
      ["pq", "h"],
      ["qr", "h"],
    ]);
    expect(found[0]?.numbers).toMatchObject({ circles: 15, thickest_tie_mm: 8 });
  });

  it("says when a bend has no room: 90° at q, half of 60 mm, 3 × the bundle", () => {
    const tight = (count: number) => check(harness("h", count)).filter((f) => f.rule === "bend-tight");
    // 30 mm of tangent at 90° is a radius of 30 mm: a bundle of 10 mm.
    expect(tight(20)).toEqual([]);
    const [found] = tight(30);
    expect(found?.subjects).toEqual(["q", "h", "pq", "qr"]);
    const diameter = Number(found?.numbers.diameter_mm);
    expect(diameter).toBeGreaterThan(10);
    expect(found?.numbers).toMatchObject({ turn_deg: 90, room_mm: 30, radius_possible_mm: 30 });
    expect(found?.numbers.tangent_mm).toBeCloseTo(3 * diameter, 0);
  });

  it("does not depend on the order of the harnesses", () => {
    const all = [harness("c", 9), harness("a", 7), harness("b", 12)];
    expect(check(...all)).toEqual(check(...all.toReversed()));
  });
});
