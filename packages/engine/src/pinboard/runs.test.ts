import { distance, polylineLength } from "@pinwright/kernel";
import { describe, expect, test } from "vitest";
import type { PinboardInput } from "./input.ts";
import { layPinboard } from "./lay.ts";
import { choice, rules, settled } from "./testing/boards.ts";
import { TreeMaker } from "./testing/trees.ts";

/** Two breakouts with a zig-zag of lanes between them. */
function zigZag(lanes: number, withTail: boolean): PinboardInput {
  const maker = new TreeMaker();
  let at = maker.waypoint(0, 0, null);
  maker.landing(at, 180, 100, 8);
  maker.landing(at, 270, 90, 3);
  for (let i = 1; i < lanes; i++) at = maker.waypoint(i * 80, i % 2 === 0 ? 0 : 45, at);
  at = maker.waypoint(lanes * 80, 0, at);
  maker.landing(at, 0, 100, 4);
  maker.landing(at, 90, 80, 3);
  if (withTail) maker.landing(4, 90, 70, 2);
  return maker.input();
}

describe("lanes between two breakouts", () => {
  test("are one straight run, as long as all of them together, with a peg at each end only", () => {
    const input = zigZag(6, false);
    const board = layPinboard(input);
    expect(board.kind).toBe("planar");
    expect(board.nodes.filter((n) => n.peg)).toHaveLength(2);
    const [p, q] = board.nodes.filter((n) => n.peg).map((n) => n.at);
    if (p === undefined || q === undefined) throw new Error("two pegs are expected");
    const lanes = input.branches.filter((b) => b.kind === "lane");
    expect(lanes).toHaveLength(6);
    expect(distance(p, q)).toBeCloseTo(
      lanes.reduce((sum, lane) => sum + lane.lengthMm, 0),
      3,
    );
    expect(p.yMm).toBeCloseTo(q.yMm, 3);
    for (const lane of lanes) {
      const line = board.branches.find((b) => b.id === lane.id)?.line ?? [];
      expect(Math.abs(polylineLength(line) - lane.lengthMm)).toBeLessThan(0.001);
    }
  });

  test("are tied evenly, as if they were one", () => {
    const board = layPinboard(zigZag(6, false));
    let from = 0;
    const ties: number[] = [];
    for (const lane of board.branches.filter((b) => b.id.startsWith("l"))) {
      ties.push(...lane.tiesMm.map((mm) => from + mm));
      from += lane.lengthMm;
    }
    const steps = ties.slice(1).map((mm, i) => mm - (ties[i] ?? 0));
    expect(ties[0]).toBeCloseTo(15, 1);
    expect(ties.at(-1)).toBeCloseTo(from - 15, 1);
    expect(Math.max(...steps) - Math.min(...steps)).toBeLessThan(0.5);
    expect(Math.max(...steps)).toBeLessThanOrEqual(75);
  });

  test("stay where they are when they are bent to fit, settled, and then tapped", () => {
    const input = zigZag(40, false);
    const board = layPinboard(input);
    expect(board.bendPegs.length).toBeGreaterThan(0);
    const pegs = settled(board);
    expect(pegs.size).toBeLessThan(20);
    expect(layPinboard({ ...input, pegs })).toMatchObject({ nodes: board.nodes, branches: board.branches });
    const tapped = { ...zigZag(40, true), pegs };
    const places = new Map(layPinboard(tapped).nodes.map((n) => [n.id, n.at]));
    for (const node of board.nodes) expect(places.get(node.id)).toEqual(node.at);
    expect(rules(tapped)).not.toContain("pinboard-peg-moved");
  });

  test("go round a peg that a person put at a waypoint between them", () => {
    const input = zigZag(6, false);
    const board = layPinboard(input);
    const fixed = board.nodes.find((n) => n.peg);
    const passed = board.nodes.find((n) => n.id === "w005")?.at ?? { xMm: 0, yMm: 0 };
    const towards = (fixed?.at.xMm ?? 0) < passed.xMm ? -10 : 10;
    const asked = { xMm: passed.xMm + towards, yMm: passed.yMm + 20 };
    const pegs = new Map([
      ...[...settled(board)].filter(([subject]) => subject === `h.test|${fixed?.id}`),
      ["h.test|w005", choice("h.test|w005", `${asked.xMm},${asked.yMm}`, "pinned")],
    ]);
    const held = layPinboard({ ...input, pegs });
    expect(held.nodes.find((n) => n.id === "w005")).toEqual({ id: "w005", at: asked, peg: true });
  });
});
