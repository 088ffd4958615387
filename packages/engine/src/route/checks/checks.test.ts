import { describe, expect, test } from "vitest";
import type { Finding, Machine } from "../../model/index.ts";
import type { SomeTables } from "../../testing/book.ts";
import type { TestWiring } from "../../testing/wiring.ts";
import { createRouted, crossing, lane, routed, waypoint } from "../testing/routed.ts";
import { checkRoutes } from "./index.ts";

const NUMBERS = { tail_max_mm: 100 };

const found = (machine: Machine, rule: string, harnessIds = ["h1"]): readonly Finding[] =>
  checkRoutes(
    machine,
    harnessIds.map((id) => routed(machine, id)),
  ).filter((f) => f.rule === rule);

/** Two devices on the playfield, joined by one lane. */
const pair = (nets: TestWiring["nets"], netRows: NonNullable<TestWiring["netRows"]> = {}): TestWiring => ({
  devices: [
    { id: "a", x: 0, y: 10, takes: 2 },
    { id: "b", x: 200, y: 10, takes: 2 },
  ],
  nets,
  netRows,
});
const straight: SomeTables = {
  waypoints: [waypoint("w0", 0, 0), waypoint("w1", 200, 0)],
  lanes: [lane("w0", "w1")],
};

/** A device on the playfield and one on the cabinet beside it; the playfield turns up about the y axis. */
const overHinge = (more: Parameters<typeof crossing>[2] = {}): SomeTables => ({
  waypoints: [
    waypoint("w0", 10, 0),
    waypoint("w1", 0, 0),
    waypoint("c0", 490, 0, { panel: "cab", side: "top" }),
    waypoint("c1", 480, 0, { panel: "cab", side: "top" }),
  ],
  lanes: [lane("w0", "w1"), lane("c0", "c1")],
  crossings: [crossing("w1", "c0", more)],
  devices: [{ id: "c", type: "one", panel: "cab", side: "top", x_mm: 470, y_mm: 10 }],
  poses: [{ id: "play", usual: "yes" }, { id: "up" }],
  pose_places: [
    { pose: "play", panel: "cab", x_mm: 0, y_mm: 0, z_mm: 0 },
    { pose: "play", panel: "pf", x_mm: 500, y_mm: 0, z_mm: 13 },
    { pose: "up", panel: "cab", x_mm: 0, y_mm: 0, z_mm: 0 },
    { pose: "up", panel: "pf", x_mm: 500, y_mm: 0, z_mm: 113, ry_deg: -90 },
  ],
});
const hinged = (more?: Parameters<typeof crossing>[2], netClass: "lamp" | "earth" = "lamp"): Machine =>
  createRouted(
    {
      devices: [{ id: "a", x: 20, y: 10 }],
      nets: { n1: { h1: ["a:1", "c:1"] }, n2: { h1: ["a:2", "c:2"] } },
      netRows: { n1: { class: netClass } },
    },
    overHinge(more),
    NUMBERS,
  );

describe("checkRoutes", () => {
  test("a sound machine has nothing to tell", () => {
    const machine = createRouted(pair({ n1: { h1: ["a:1", "b:1"] } }), straight, NUMBERS);
    expect(checkRoutes(machine, [routed(machine)])).toEqual([]);
  });

  test("landing-unreached: no waypoint within the longest tail", () => {
    const far = {
      ...pair({ n1: { h1: ["a:1", "b:1"] } }),
      devices: [
        { id: "a", x: 0, y: 10 },
        { id: "b", x: 200, y: 500 },
      ],
    };
    const [finding] = found(createRouted(far, straight, NUMBERS), "landing-unreached");
    expect(finding).toMatchObject({ subjects: ["b", "h1"], numbers: { tail_max_mm: 100, wires_missing: 1 } });
  });

  test("lane-unusable: a lane from the top to the underside", () => {
    const bad = {
      ...straight,
      waypoints: [...(straight.waypoints ?? []), waypoint("t", 0, 0, { side: "top" })],
    };
    const machine = createRouted(
      pair({ n1: { h1: ["a:1", "b:1"] } }),
      { ...bad, lanes: [...(bad.lanes ?? []), lane("t", "w0")] },
      NUMBERS,
    );
    expect(found(machine, "lane-unusable").map((f) => f.subjects)).toEqual([["l.t-w0"]]);
  });

  test("lane-unusable: a crossing of which nothing tells the length", () => {
    const machine = createRouted(
      pair({ n1: { h1: ["a:1", "b:1"] } }),
      {
        waypoints: [...(straight.waypoints ?? []), waypoint("c", 0, 0, { panel: "cab" })],
        lanes: straight.lanes ?? [],
        crossings: [crossing("w0", "c")],
      },
      NUMBERS,
    );
    expect(found(machine, "lane-unusable").map((f) => f.subjects)).toEqual([["x.w0-c"]]);
  });

  test("lane-class-barred: the only way bars the class of one of the wires", () => {
    const machine = createRouted(
      pair({ n1: { h1: ["a:1", "b:1"] }, n2: { h1: ["a:2", "b:2"] } }, { n2: { class: "coil" } }),
      { ...straight, lanes: [lane("w0", "w1", { classes: ["lamp"] })] },
      NUMBERS,
    );
    expect(found(machine, "lane-class-barred")).toMatchObject([
      { subjects: ["l.w0-w1", "h1"], numbers: { class: "coil", wires: 1 } },
    ]);
  });

  test("mains in a lane that does not name it is not routed at all", () => {
    const machine = createRouted(
      pair({ n1: { h1: ["a:1", "b:1"] } }, { n1: { class: "mains" } }),
      straight,
      NUMBERS,
    );
    expect(found(machine, "landing-unreached")).not.toEqual([]);
  });

  test("mains-together: another harness in the lane of the mains; its earth may be there", () => {
    const lanes = { ...straight, lanes: [lane("w0", "w1", { classes: ["mains", "earth", "lamp"] })] };
    const classes = { n1: { class: "mains" }, n2: { class: "lamp" } } as const;
    const machine = createRouted(
      pair({ n1: { h1: ["a:1", "b:1"] }, n2: { h2: ["a:2", "b:2"] } }, classes),
      lanes,
      NUMBERS,
    );
    expect(found(machine, "mains-together", ["h1", "h2"])).toMatchObject([
      { severity: "error", subjects: ["l.w0-w1", "h1", "h2"], numbers: { length_mm: 200 } },
    ]);
    const earthed = createRouted(
      pair(
        { n1: { h1: ["a:1", "b:1"] }, n2: { h1: ["a:2", "b:2"] } },
        { ...classes, n2: { class: "earth" } },
      ),
      lanes,
      NUMBERS,
    );
    expect(found(earthed, "mains-together")).toEqual([]);
  });

  test("classes-together: coil beside audio in one lane, within a harness and between two", () => {
    const classes = { n1: { class: "coil" }, n2: { class: "audio" } } as const;
    for (const second of ["h1", "h2"]) {
      const machine = createRouted(
        pair({ n1: { h1: ["a:1", "b:1"] }, n2: { [second]: ["a:2", "b:2"] } }, classes),
        straight,
        NUMBERS,
      );
      expect(found(machine, "classes-together", [...new Set(["h1", second])])).toMatchObject([
        { severity: "warning", numbers: { class: "coil", other_class: "audio" } },
      ]);
    }
  });

  test("crossing-pull: a given length that is too short in the lifted pose", () => {
    expect(found(hinged(), "crossing-pull")).toEqual([]);
    const [finding] = found(hinged({ length_mm: 50 }), "crossing-pull");
    expect(finding).toMatchObject({
      severity: "error",
      subjects: ["x.w1-c0", "up"],
      numbers: { length_mm: 50 },
    });
  });

  test("crossing-pinch: the slack is deeper than the room when it is shut", () => {
    expect(found(hinged({ room_mm: 200 }), "crossing-pinch")).toEqual([]);
    const [finding] = found(hinged({ room_mm: 10 }), "crossing-pinch");
    expect(finding).toMatchObject({
      severity: "error",
      subjects: ["x.w1-c0", "play"],
      numbers: { room_mm: 10 },
    });
  });

  test("crossing-bend: a short loop is too tight for its bundle", () => {
    expect(found(hinged(), "crossing-bend")).toEqual([]);
    const [finding] = found(hinged({ length_mm: 20 }), "crossing-bend");
    expect(finding).toMatchObject({ severity: "warning", subjects: ["x.w1-c0", "play"] });
  });

  test("hinge-earth: the earth wire over a hinge has to be the longest", () => {
    expect(found(hinged(), "hinge-earth")).toEqual([]);
    const [finding] = found(hinged({}, "earth"), "hinge-earth");
    expect(finding?.subjects).toEqual(["n1|h1|a:1|c:1", "x.w1-c0"]);
    expect(finding?.numbers.extra_mm).toBe(10);
  });

  test("joint-at-hinge: a splice pinned to the end of a hinge", () => {
    const choices = [
      { kind: "splice-place", subject: "splice:n1:h1:1", value: "w1", held: "pinned" },
    ] as const;
    const wiring: TestWiring = {
      devices: [
        { id: "a", x: 20, y: 10 },
        { id: "b", x: 30, y: 10 },
      ],
      nets: { n1: { h1: ["a:1", "b:1", "c:1"] } },
      netRows: { n1: { shape: "splice" } },
    };
    const free = createRouted(wiring, overHinge(), NUMBERS);
    expect(routed(free).wires.splices.map((s) => s.id)).toEqual(["splice:n1:h1:1"]);
    expect(found(free, "joint-at-hinge")).toEqual([]);
    const pinned = createRouted({ ...wiring, choices }, overHinge(), NUMBERS);
    expect(found(pinned, "joint-at-hinge").map((f) => f.subjects)).toEqual([
      ["splice:n1:h1:1", "x.w1-c0", "w1", "h1"],
    ]);
  });

  test("tail-long and choice-not-followed: a tail pinned too far away, and one pinned where it cannot be", () => {
    const wiring = pair({ n1: { h1: ["a:1", "b:1"] } });
    const pin = (value: string) => [{ kind: "attach", subject: "a", value, held: "pinned" }] as const;
    const far = createRouted({ ...wiring, choices: pin("w1") }, straight, NUMBERS);
    expect(found(far, "tail-long").map((f) => f.subjects)).toEqual([["a", "h1"]]);
    const nowhere = createRouted({ ...wiring, choices: pin("w9") }, straight, NUMBERS);
    expect(found(nowhere, "choice-not-followed").map((f) => f.subjects)).toEqual([["a", "w0", "h1"]]);
  });

  test("choice-not-followed: a pinned trunk that names a lane that is not there", () => {
    const choices = [{ kind: "trunk", subject: "h1", value: "l.w0-w1 l.gone", held: "pinned" }] as const;
    const machine = createRouted({ ...pair({ n1: { h1: ["a:1", "b:1"] } }), choices }, straight, NUMBERS);
    expect(found(machine, "choice-not-followed")).toMatchObject([
      { subjects: ["h1", "l.gone"], numbers: { kind: "trunk", unknown: 1, off_trunk: 0 } },
    ]);
  });
});
