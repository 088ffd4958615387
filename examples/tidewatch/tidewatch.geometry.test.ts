import { type Machine, type MechanismItem, type PanelPoint, Resolver } from "@pinwright/engine";
import { distance, pointInRing, pointSegmentDistance, ringSides } from "@pinwright/kernel";
import { describe, expect, test } from "vitest";
import { ballGrid, cellOf, flood, isSwept, rests, tightPlaces } from "./check/ball-grid.ts";
import { type Body, bodiesAbove, bodiesBelow } from "./check/bodies.ts";
import { cutoutShape } from "./check/cutout-shape.ts";
import { allowedAbove, BALL_MM, clashes, obstacles, ownerOf } from "./check/playfield.ts";
import { assemble } from "./make/assemble.ts";

const PANEL = "playfield";
const { book, shop } = assemble();
const machine: Machine = new Resolver().resolve(book, shop);
const panel = book.tables.panels.find((row) => row.id === PANEL);
const widthMm = panel?.width_mm ?? 0;
const heightMm = panel?.height_mm ?? 0;
const thicknessMm = panel?.thickness_mm ?? 0;
const items = [...machine.items.values()].filter((item) => item.place.panelId === PANEL);
const above = bodiesAbove(machine, PANEL);
const below = bodiesBelow(machine, PANEL);
const cuts = book.tables.cutouts
  .filter((row) => row.panel === PANEL)
  .map((row) => ({ row, ring: cutoutShape(book, row), at: { xMm: row.x_mm, yMm: row.y_mm } }));

const distanceTo = (p: PanelPoint, ring: readonly PanelPoint[]): number =>
  pointInRing(p, ring) === "outside"
    ? Math.min(...ringSides(ring).map((s) => pointSegmentDistance(p, s)))
    : 0;

/** Children of flippers that show where the ball is met. */
const bat = (mechanism: string) => machine.items.get(`${mechanism}/bat`);

describe("the playfield of Tidewatch", () => {
  test("is as large as such a panel is", () => {
    expect([widthMm, heightMm, thicknessMm]).toEqual([514, 1067, 13]);
  });

  test("has everything within its outline", () => {
    const outside = items.filter((item) =>
      item.footprint.some(
        (p) => p.xMm < -0.01 || p.yMm < -0.01 || p.xMm > widthMm + 0.01 || p.yMm > heightMm + 0.01,
      ),
    );
    expect(outside.map((item) => item.id)).toEqual([]);
  });

  test("has nothing above it that fills the same space twice", () => {
    expect(clashes(above, allowedAbove)).toEqual([]);
  });

  test("has nothing below it that fills the same space twice", () => {
    expect(clashes(below, (a, b) => ownerOf(a) === ownerOf(b))).toEqual([]);
  });

  test("keeps the parts of each mechanism on its own plate", () => {
    const off = items.flatMap((item) => {
      const parent = item.parentId === null ? undefined : machine.items.get(item.parentId);
      if (parent === undefined || parent.place.side === "top" || item.place.zMm < 0) return [];
      const corners = item.kind === "fastener" ? [item.place] : item.footprint;
      return corners.some((p) => distanceTo(p, parent.footprint) > 0.6) ? [item.id] : [];
    });
    expect(off).toEqual([]);
  });

  test("has nothing higher than the glass allows", () => {
    // Room under the glass: 60 mm at the player's end, rising by 75 mm a metre. Common practice, no source.
    const high = above.filter((body) => body.ring.some((p) => body.toMm > 60 + 0.075 * p.yMm));
    expect(high.map((body) => [body.id, body.toMm])).toEqual([]);
  });
});

describe("lamps, cutouts and screws", () => {
  test("a lamp sits under the middle of each insert, and an insert above each of these lamps", () => {
    const inserts = cuts.filter(({ row }) => row.purpose === "insert");
    const lamps = items.filter((item) => item.kind === "device" && /insert$/.test(item.type.id));
    expect(inserts.length).toBe(lamps.length);
    const dark = inserts.filter(
      ({ at }) => !lamps.some((lamp) => lamp.place.side === "under" && distance(lamp.place, at) < 0.2),
    );
    expect(dark.map(({ row }) => row.id)).toEqual([]);
  });

  test("cutouts leave wood between them and at the edge", () => {
    const close: string[] = [];
    cuts.forEach((a, i) => {
      if (a.ring.some((p) => Math.min(p.xMm, p.yMm, widthMm - p.xMm, heightMm - p.yMm) < 2))
        close.push(a.row.id);
      for (const b of cuts.slice(i + 1)) {
        if (distance(a.at, b.at) > 120) continue;
        const gap = Math.min(
          ...a.ring.map((p) => distanceTo(p, b.ring)),
          ...b.ring.map((p) => distanceTo(p, a.ring)),
        );
        if (gap < 2) close.push(`${a.row.id} ${b.row.id} ${gap.toFixed(1)}`);
      }
    });
    expect(close).toEqual([]);
  });

  test("what comes up through the wood has a hole to come through", () => {
    const through = items.filter(
      (item) =>
        item.parentId === null &&
        item.place.side === "under" &&
        (item.kind === "device" || item.kind === "mechanism") &&
        item.type.reach_mm > 0,
    );
    const blocked = through.filter(
      (item) => !cuts.some(({ row, at }) => row.serves === item.id && distanceTo(at, item.footprint) < 10),
    );
    expect(blocked.map((item) => item.id)).toEqual([]);
  });

  test("screws have wood around them and do not come through where they would show", () => {
    const bad: string[] = [];
    for (const item of items) {
      if (item.kind !== "fastener" || !["wood-screw", "post", "machine-screw"].includes(item.type.kind))
        continue;
      const near = cuts.filter(({ ring }) => distanceTo(item.place, ring) < item.type.diameter_mm / 2 + 1);
      const sameHole = near.filter(({ row }) => row.serves !== item.id);
      if (sameHole.length > 0) bad.push(`${item.id} in ${sameHole.map(({ row }) => row.id).join(" ")}`);
      const depthMm = item.type.length_mm - item.flangeMm;
      if (depthMm < thicknessMm - 1) continue;
      const held = machine.items.get(item.holds ?? "");
      const hidden =
        held !== undefined &&
        held.place.side !== item.place.side &&
        pointInRing(item.place, held.footprint) !== "outside";
      if (!hidden) bad.push(`${item.id} comes through (${depthMm} mm)`);
    }
    expect(bad).toEqual([]);
  });

  test("no two screws meet inside the wood", () => {
    const screws = items.flatMap((item) => (item.kind === "fastener" ? [item] : []));
    const meet: string[] = [];
    screws.forEach((a, i) => {
      for (const b of screws.slice(i + 1)) {
        const gap = distance(a.place, b.place) - (a.type.diameter_mm + b.type.diameter_mm) / 2;
        if (gap < 1.5) meet.push(`${a.id} ${b.id} ${gap.toFixed(1)}`);
      }
    });
    expect(meet).toEqual([]);
  });
});

describe("flippers", () => {
  test("stand on both sides of the drain, their tips more than a ball apart", () => {
    const [left, right] = [bat("mech.flip-left"), bat("mech.flip-right")];
    if (left === undefined || right === undefined) throw new Error("a flipper has no bat");
    expect(left.place.yMm).toBeCloseTo(right.place.yMm, 6);
    const apart = right.place.xMm - left.place.xMm;
    // Usual distance of the pivots. Common practice, no source.
    expect(apart).toBeGreaterThanOrEqual(150);
    expect(apart).toBeLessThanOrEqual(170);
    const gap =
      Math.min(...right.footprint.map((p) => p.xMm)) - Math.max(...left.footprint.map((p) => p.xMm));
    expect(gap).toBeGreaterThan(BALL_MM + 3);
    expect(gap).toBeLessThan(2 * BALL_MM);
    const lowest = Math.min(...left.footprint.map((p) => p.yMm));
    expect(lowest).toBeGreaterThan(100);
  });

  test("a third one is half way up", () => {
    const upper = bat("mech.flip-upper");
    expect(upper?.place.yMm).toBeGreaterThan(400);
    expect(upper?.place.yMm).toBeLessThan(650);
  });
});

/** A place that a ball must be able to get to. */
const SHOTS: Readonly<Record<string, readonly [number, number]>> = {
  "left flipper": [190, 195],
  "right flipper": [280, 195],
  "upper flipper": [396, 488],
  drain: [235, 80],
  "left outlane": [29, 330],
  "left inlane": [73, 330],
  "right inlane": [397, 330],
  "right outlane": [441, 330],
  "FOG targets": [34, 490],
  "left orbit and spinner": [33, 700],
  "captive ball": [73, 568],
  "left ramp": [115, 670],
  "way down from the bumpers": [165, 660],
  "drop targets": [240, 624],
  "cave target": [314, 610],
  "right ramp": [363, 670],
  "right anchor target": [402, 583],
  "right orbit": [440, 700],
  "top lane 1": [200, 970],
  "top lane 2": [240, 970],
  "top lane 3": [280, 970],
  "between the bumpers": [240, 895],
  wreck: [92, 803],
  "storm wall": [312, 755],
};

describe("a ball", () => {
  const inPlay = obstacles(machine);
  const rings = (bodies: readonly Body[]) => bodies.map((body) => body.ring);
  const grid = (bodies: readonly Body[], diameterMm: number) =>
    ballGrid(rings(bodies), diameterMm / 2, widthMm, heightMm);
  const isDropped = (body: Body) => /^mech\.drop.*\/face/.test(body.id);
  const isGate = (body: Body) => body.id === "tp.exit-gate";
  const launched = grid(
    inPlay.filter((body) => !isGate(body)),
    BALL_MM,
  );
  const field = grid(inPlay, BALL_MM);
  const plunger: PanelPoint = { xMm: 486, yMm: 70 };
  const fromPlunger = flood(launched, plunger);

  test("gets from the plunger to every shot", () => {
    const missed = Object.entries(SHOTS).filter(
      ([, [xMm, yMm]]) => fromPlunger[cellOf(launched, { xMm, yMm })] !== 1,
    );
    expect(missed.map(([name]) => name)).toEqual([]);
  });

  test("falls into the cave only when its target is down", () => {
    const saucer: PanelPoint = { xMm: 314, yMm: 674 };
    expect(fromPlunger[cellOf(launched, saucer)]).toBe(0);
    const open = grid(
      inPlay.filter((body) => !isGate(body) && !isDropped(body)),
      BALL_MM,
    );
    expect(flood(open, plunger)[cellOf(open, saucer)]).toBe(1);
  });

  test("does not fall back into the plunger lane", () => {
    expect(flood(field, { xMm: 235, yMm: 300 })[cellOf(field, plunger)]).toBe(0);
  });

  test.each([
    ["targets up, level", false, 0],
    ["targets up, leaning left", false, 2],
    ["targets up, leaning right", false, -2],
    ["targets down, level", true, 0],
    ["targets down, leaning left", true, 2],
    ["targets down, leaning right", true, -2],
  ] as const)("rolls down to the drain from everywhere: %s", (_, down, leanDeg) => {
    const bodies = down ? inPlay.filter((body) => !isDropped(body)) : inPlay;
    const free = grid(bodies, BALL_MM);
    const reach = flood(
      grid(
        bodies.filter((body) => !isGate(body)),
        BALL_MM,
      ),
      plunger,
    );
    const cells = reach.map((seen, cell) => (seen === 1 && free.free[cell] === 1 ? 1 : 0));
    const places = rests(free, cells, leanDeg, 0.5).map(({ at }) => at);
    const inDrain = (p: PanelPoint) => p.xMm > 203 && p.xMm < 267 && p.yMm < 100;
    const onPlunger = (p: PanelPoint) => p.xMm > 460 && p.yMm < 80;
    expect(places.filter((p) => !inDrain(p) && !onPlunger(p))).toEqual([]);
    expect(places.some(inDrain)).toBe(true);
    expect(places.some(onPlunger)).toBe(true);
  });

  test("meets no gap of nearly its own width", () => {
    const [small, large] = [grid(inPlay, BALL_MM - 3), grid(inPlay, BALL_MM + 3)];
    expect(tightPlaces(small, flood(small, { xMm: 235, yMm: 300 }), large, 12)).toEqual([]);
    const bigger = flood(large, { xMm: 235, yMm: 300 });
    const missed = Object.entries(SHOTS).filter(
      ([, [xMm, yMm]]) => bigger[cellOf(large, { xMm, yMm })] !== 1,
    );
    expect(missed.map(([name]) => name)).toEqual([]);
  });

  test("rolls over no screw head and comes over no wire hole", () => {
    const lane = flood(field, plunger);
    const reached = flood(field, { xMm: 235, yMm: 300 }).map((seen, cell) => seen | (lane[cell] ?? 0));
    const heads = items.filter((item) => item.kind === "fastener" && item.place.side === "top");
    const holes = cuts.filter(({ row }) => row.purpose === "wire-hole");
    const crossed = [
      ...heads.filter((item) => reached[cellOf(field, item.place)] === 1).map((item) => item.id),
      ...holes
        .filter(({ at, row }) => isSwept(field, reached, at, (BALL_MM + (row.width_mm ?? 0)) / 2 - 0.5))
        .map(({ row }) => row.id),
    ];
    expect(crossed).toEqual([]);
  });
});

describe("counts", () => {
  const ofClass = (name: string) =>
    items.filter((item) => item.kind === "device" && item.type.class === name).length;

  test("of devices on the playfield", () => {
    expect({
      switches: ofClass("switch"),
      lamps: ofClass("lamp"),
      coils: ofClass("coil"),
      motors: ofClass("motor"),
    }).toEqual({ switches: 76, lamps: 130, coils: 24, motors: 2 });
  });

  test("of mechanism types and fasteners", () => {
    const types = new Set(
      items.flatMap((item): MechanismItem["type"]["id"][] =>
        item.kind === "mechanism" ? [item.type.id] : [],
      ),
    );
    expect(types.size).toBeGreaterThanOrEqual(12);
    expect(items.filter((item) => item.kind === "fastener").length).toBeGreaterThanOrEqual(400);
  });
});
