import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { HarnessRoute } from "../model/index.ts";
import type { SomeTables } from "../testing/book.ts";
import type { TestWiring } from "../testing/wiring.ts";
import { wireHarness } from "../wire/index.ts";
import { settleRoute } from "./settle.ts";
import { createRouted, lane, routed, waypoint } from "./testing/routed.ts";
import { trunkWork } from "./trunk-work.ts";

/** A board in the middle, devices round it, two ways from left to right. */
const wiring: TestWiring = {
  boards: [{ id: "drv", x: 20, y: 200, connectors: { j1: 4 } }],
  devices: [
    { id: "d1", x: 120, y: 210 },
    { id: "d2", x: 420, y: 190 },
    { id: "d3", x: 430, y: 420 },
  ],
  nets: {
    n1: { h1: ["drv:j1.1", "d1:1"] },
    n2: { h1: ["drv:j1.2", "d2:1"] },
    n3: { h1: ["drv:j1.3", "d3:1"] },
  },
};
const places: SomeTables = {
  waypoints: [
    waypoint("w0", 40, 200),
    waypoint("w1", 160, 200),
    waypoint("w2", 400, 200),
    waypoint("w3", 400, 400),
    waypoint("w4", 160, 450),
  ],
  lanes: [lane("w0", "w1"), lane("w1", "w2"), lane("w2", "w3"), lane("w1", "w4"), lane("w4", "w3")],
};
const NUMBERS = { tail_max_mm: 100 };

/** The route has one way between any two nodes, and every wire's branches run from its one landing to the other. */
function expectSoundTree(machine: ReturnType<typeof createRouted>, route: HarnessRoute): void {
  expect(route.branches).toHaveLength(route.nodes.length - 1);
  const seen = new Set([route.rootId]);
  for (const branch of route.branches) {
    expect(seen.has(branch.a)).toBe(true);
    expect(seen.has(branch.b)).toBe(false);
    seen.add(branch.b);
  }
  const branchById = new Map(route.branches.map((b) => [b.id, b]));
  for (const wire of wireHarness(machine, route.harnessId).wires) {
    const path = route.paths.get(wire.id);
    if (path === undefined) continue;
    const nodeOf = (end: string): string | undefined =>
      route.spliceAt.get(end) ?? `landing:${machine.points.get(end)?.landingId}`;
    let node = nodeOf(wire.a);
    for (const id of path) {
      const branch = branchById.get(id);
      expect([branch?.a, branch?.b]).toContain(node);
      node = branch?.a === node ? branch?.b : branch?.a;
    }
    if (path.length > 0) expect(node).toBe(nodeOf(wire.b));
  }
}

describe("routeHarness", () => {
  test("joins all landings along the shorter way", () => {
    const machine = createRouted(wiring, places, NUMBERS);
    const { route } = routed(machine);
    expectSoundTree(machine, route);
    expect(route.unreached).toEqual([]);
    expect(route.branches.filter((b) => b.kind === "lane").map((b) => b.id)).toEqual([
      "l.w0-w1",
      "l.w1-w2",
      "l.w2-w3",
    ]);
    expect(route.nodes.filter((n) => n.breakout)).toHaveLength(2);
    expect(route.paths.get("n1|h1|d1:1|drv:j1.1")?.at(0)).toBe("tail:d1");
    expect(route.paths.get("n1|h1|d1:1|drv:j1.1")?.at(-1)).toBe("tail:drv:j1");
  });

  test("counts the work as the shop does", () => {
    const { route } = routed(createRouted(wiring, places, NUMBERS));
    const { work } = route;
    expect(work.breakouts).toBe(2);
    const paths = [...route.paths.values()].flat();
    const tied = route.branches.filter(
      (b) => b.kind === "tail" && paths.filter((id) => id === b.id).length > 1,
    );
    expect(tied.length).toBeGreaterThan(0);
    const tiedMm = tied.reduce((sum, b) => sum + b.routeMm, 0);
    expect(work.ties).toBeCloseTo((120 + 240 + 200 + tiedMm) / 75, 9);
    expect(work.insertions).toBe(6);
    expect(work.minutes).toBeCloseTo(2 * 0.9 + work.ties * 0.25 + 6 * 0.15, 9);
    const lengths = new Map(route.branches.map((b) => [b.id, b.routeMm]));
    const metres =
      [...route.paths.values()].flat().reduce((sum, id) => sum + (lengths.get(id) ?? 0), 0) / 1000;
    expect(work.metres).toBeCloseTo(metres, 9);
    expect(work.total.value).toBeCloseTo(work.minutes + 0.08 * work.metres, 9);
    expect(work.total.lowerBound).toBeLessThanOrEqual(work.total.value);
    expect(work.total.lowerBound).toBeGreaterThan(0);
  });

  test("does not depend on the order of rows", () => {
    const usual = routed(createRouted(wiring, places, NUMBERS)).route;
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...(places.waypoints ?? [])], { minLength: 5 }),
        fc.shuffledSubarray([...(places.lanes ?? [])], { minLength: 5 }),
        fc.shuffledSubarray([...(wiring.devices ?? [])], { minLength: 3 }),
        fc.shuffledSubarray(Object.entries(wiring.nets), { minLength: 3 }),
        (waypoints, lanes, devices, nets) => {
          const other = { ...wiring, devices, nets: Object.fromEntries(nets) };
          expect(routed(createRouted(other, { waypoints, lanes }, NUMBERS)).route).toEqual(usual);
        },
      ),
      { seed: 30, numRuns: 15 },
    );
  });

  test("a tail is as long as the way along the panel and the height of its landing", () => {
    const machine = createRouted(wiring, places, NUMBERS);
    const landing = machine.landings.get("d3");
    const { route } = routed(machine);
    const tail = route.branches.find((b) => b.id === "tail:d3");
    const from = route.nodes.find((n) => n.id === tail?.a);
    const [x, y] = [landing?.place.xMm ?? 0, landing?.place.yMm ?? 0];
    const flatMm = Math.hypot(x - (from?.place.xMm ?? 0), y - (from?.place.yMm ?? 0));
    expect(tail?.routeMm).toBeCloseTo(flatMm + Math.abs(landing?.place.zMm ?? 0), 2);
  });

  test("a wire between two landings at one waypoint has two tails and no lane", () => {
    const near: TestWiring = {
      devices: [
        { id: "d1", x: 30, y: 200 },
        { id: "d2", x: 50, y: 200 },
      ],
      nets: { n1: { h1: ["d1:1", "d2:1"] } },
    };
    const { route } = routed(createRouted(near, places, NUMBERS));
    expect(route.branches.map((b) => b.kind)).toEqual(["tail", "tail"]);
    expect(route.work.breakouts).toBe(0);
  });

  test("a harness with one landing has nothing to follow", () => {
    const machine = createRouted(
      {
        boards: [{ id: "drv", x: 20, y: 200, connectors: { j1: 2 } }],
        nets: { n1: { h1: ["drv:j1.1", "drv:j1.2"] } },
      },
      places,
      NUMBERS,
    );
    const { route, wires } = routed(machine);
    expect(route.unreached).toEqual([]);
    expect(wires.wires.map((w) => route.paths.get(w.id))).toEqual([[]]);
  });

  test("names the landings that no lane reaches, and routes the others", () => {
    const cut = { ...places, lanes: [lane("w0", "w1"), lane("w1", "w2")] };
    const machine = createRouted(wiring, cut, NUMBERS);
    const { route } = routed(machine);
    expectSoundTree(machine, route);
    expect(route.unreached).toEqual(["d3"]);
    expect(route.paths.has("n3|h1|d3:1|drv:j1.3")).toBe(false);
    expect(route.paths.size).toBe(2);
  });

  test("a pinned trunk is the only way, a pinned tail goes where it was pinned", () => {
    const round = "l.w0-w1 l.w1-w4 l.w4-w3 l.w2-w3";
    const machine = createRouted(
      {
        ...wiring,
        choices: [
          { kind: "trunk", subject: "h1", value: round, held: "pinned" },
          { kind: "attach", subject: "d1", value: "w0", held: "pinned" },
        ],
      },
      places,
      NUMBERS,
    );
    const { route } = routed(machine);
    expect(route.branches.map((b) => b.id)).not.toContain("l.w1-w2");
    expect(route.branches.find((b) => b.id === "tail:d1")).toMatchObject({ a: "w0" });
    expectSoundTree(machine, route);
  });

  test("a pinned tail goes before the one that is kept for its harness", () => {
    const kept = settleRoute(routed(createRouted(wiring, places, NUMBERS)).route).map((choice) => ({
      ...choice,
      held: "settled" as const,
    }));
    for (const subject of ["d1", "h1|d1"]) {
      const pinned = { kind: "attach", subject, value: "w0", held: "pinned" } as const;
      const choices = [...kept.filter((choice) => choice.subject !== subject), pinned];
      const { route } = routed(createRouted({ ...wiring, choices }, places, NUMBERS));
      expect(route.branches.find((b) => b.id === "tail:d1")).toMatchObject({ a: "w0" });
    }
  });

  test("a settled route stays as it is when a better lane comes, and gives way when it no longer reaches", () => {
    const first = routed(createRouted(wiring, places, NUMBERS));
    const choices = settleRoute(first.route).map((c) => ({ ...c, held: "settled" as const }));
    const better = { ...places, lanes: [...(places.lanes ?? []), lane("w0", "w2")] };
    const settled = routed(createRouted({ ...wiring, choices }, better, NUMBERS));
    expect(settled.route.branches).toEqual(first.route.branches);
    const gone = { ...places, lanes: (places.lanes ?? []).filter((l) => l.id !== "l.w1-w2") };
    const moved = routed(createRouted({ ...wiring, choices }, gone, NUMBERS));
    expect(moved.route.unreached).toEqual([]);
    expect(moved.route.branches.map((b) => b.id)).toContain("l.w4-w3");
  });

  test("the drawn trunk is measured beside the proposal and is never better", () => {
    const machine = createRouted(wiring, places, NUMBERS);
    const { wires, route } = routed(machine);
    const drawn = trunkWork(machine, wires, ["l.w0-w1", "l.w1-w4", "l.w4-w3", "l.w2-w3"]);
    expect(drawn.unreached).toEqual([]);
    expect(drawn.work.total.value).toBeGreaterThan(route.work.total.value);
    expect(trunkWork(machine, wires, ["l.w0-w1"]).unreached).toEqual(["d2", "d3"]);
  });

  test("a splice lies at a waypoint of the tree, as pinned if it can be", () => {
    const spliced: TestWiring = {
      ...wiring,
      nets: { n1: { h1: ["drv:j1.1", "d1:1", "d2:1", "d3:1"] } },
      netRows: { n1: { shape: "splice" } },
    };
    const machine = createRouted(spliced, places, NUMBERS);
    const { route, wires } = routed(machine);
    const [splice] = wires.splices;
    expect(wires.splices).toHaveLength(1);
    expect(["w1", "w2"]).toContain(route.spliceAt.get(splice?.id ?? ""));
    expectSoundTree(machine, route);
    const pinned = { kind: "splice-place", subject: splice?.id ?? "", value: "w0", held: "pinned" } as const;
    const held = routed(createRouted({ ...spliced, choices: [pinned] }, places, NUMBERS));
    expect([...held.route.spliceAt.values()]).toEqual(["w0"]);
  });
});
