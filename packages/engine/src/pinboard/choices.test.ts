import { polylineLength } from "@pinwright/kernel";
import { describe, expect, test } from "vitest";
import { checkPinboard } from "./check.ts";
import { layPinboard } from "./lay.ts";
import { choice, overlapsOf, rules, settled } from "./testing/boards.ts";
import { combTree, TreeMaker } from "./testing/trees.ts";

describe("what cannot be built", () => {
  test("more holders than there is room round one peg overlap, and the finding says which", () => {
    const maker = new TreeMaker();
    const hub = maker.waypoint(0, 0, null);
    for (let i = 0; i < 24; i++) maker.landing(hub, i * 15, 45, 4);
    const input = maker.input();
    const board = layPinboard(input);
    expect(board.crossings).toBe(0);
    expect(overlapsOf(board)).toBeGreaterThan(0);
    const found = checkPinboard(input, board);
    expect(found.filter((f) => f.rule === "pinboard-overlap")).toHaveLength(board.overlaps);
    expect(found.find((f) => f.rule === "pinboard-overlap")?.subjects[0]).toBe("h.test");
  });

  test("a harness too large for its bench and tails too short for hands are told with their numbers", () => {
    const maker = new TreeMaker();
    const far = maker.waypoint(0, 3000, maker.waypoint(0, 0, null), "crossing");
    maker.landing(0, 270, 30, 3);
    maker.landing(far, 90, 60, 3);
    const found = checkPinboard(maker.input(), layPinboard(maker.input()));
    expect(found.map((f) => [f.rule, f.numbers])).toEqual([
      ["pinboard-too-large", { width_mm: 3238, height_mm: 138, bench_width_mm: 2400, bench_height_mm: 900 }],
      ["pinboard-tail-short", { tail_mm: 30, wanted_mm: 40 }],
    ]);
  });
});

describe("choices", () => {
  const input = combTree(6, 100, 2).input();
  const board = layPinboard(input);
  const node = board.nodes.find((n) => n.peg);
  const subject = `h.test|${node?.id}`;

  test("one pinned peg moves the whole board to it", () => {
    const pegs = new Map([[subject, choice(subject, "700,400", "pinned")]]);
    const held = layPinboard({ ...input, pegs });
    expect(held.nodes.find((n) => n.id === node?.id)?.at).toEqual({ xMm: 700, yMm: 400 });
    expect(rules({ ...input, pegs })).toEqual([]);
  });

  test("a direction that is chosen is taken", () => {
    const tail = input.nodes.find((n) => n.kind === "landing" && n.id > "landing:dev004");
    const own = `h.test|${tail?.id}`;
    const pegs = new Map([[own, choice(own, "60", "pinned")]]);
    const found = rules({ ...input, pegs });
    expect(found).not.toContain("pinboard-direction-lost");
    const line = layPinboard({ ...input, pegs }).branches.find(
      (b) => b.id === `tail:${tail?.id.slice(8)}`,
    )?.line;
    const [a, b] = line ?? [];
    expect(Math.atan2((b?.yMm ?? 0) - (a?.yMm ?? 0), (b?.xMm ?? 0) - (a?.xMm ?? 0))).toBeCloseTo(
      Math.PI / 3,
      5,
    );
  });

  test("pegs that branches cannot reach are moved, with a finding; lengths stay true", () => {
    const pegs = new Map(settled(board));
    pegs.set(subject, choice(subject, `${(node?.at.xMm ?? 0) + 30},${node?.at.yMm ?? 0}`, "pinned"));
    const held = layPinboard({ ...input, pegs });
    expect(rules({ ...input, pegs })).toContain("pinboard-peg-moved");
    for (const branch of held.branches) {
      expect(Math.abs(polylineLength(branch.line) - branch.lengthMm)).toBeLessThan(0.001);
    }
  });

  test("what cannot be read or belongs to nothing is told", () => {
    const pegs = new Map([
      [subject, choice(subject, "left a bit", "pinned")],
      ["h.test|gone", choice("h.test|gone", "1,2", "settled")],
    ]);
    expect(rules({ ...input, pegs }).toSorted()).toEqual(["pinboard-peg-unknown", "pinboard-peg-unreadable"]);
  });
});
