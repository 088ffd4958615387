import { polylineLength } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { SizedBranch, TreeNode } from "../model/index.ts";
import { layInCones } from "./cones.ts";
import { drawingOf, itemsOf } from "./drawing.ts";
import type { PinboardInput } from "./input.ts";
import { layPinboard } from "./lay.ts";
import { measure } from "./measure.ts";
import { crossingsOf, overlapsOf, rules, settled } from "./testing/boards.ts";
import { combTree, HARNESS, randomTree, starTree, TreeMaker } from "./testing/trees.ts";
import { boardTree } from "./tree.ts";
import { unfold } from "./unfolded.ts";

const SEED = { seed: 5_514, numRuns: 25 };
const small = fc.record({ landings: fc.integer({ min: 2, max: 24 }), seed: fc.nat(100_000) });
const inputOf = ({ landings, seed }: { landings: number; seed: number }): PinboardInput =>
  randomTree(landings, seed).input();

describe("every pinboard", () => {
  test("is true to scale: each line is as long as its branch, and joins its nodes", () => {
    fc.assert(
      fc.property(small, (shape) => {
        const input = inputOf(shape);
        const board = layPinboard(input);
        const at = new Map(board.nodes.map((n) => [n.id, n.at]));
        for (const source of input.branches) {
          const branch = board.branches.find((b) => b.id === source.id);
          expect(Math.abs(polylineLength(branch?.line ?? []) - source.lengthMm)).toBeLessThan(0.001);
          expect(branch?.line[0]).toEqual(at.get(source.a));
          expect(branch?.line.at(-1)).toEqual(at.get(source.b));
        }
        expect(board.holders.map((h) => h.at)).toEqual(
          board.holders.map((h) => at.get(`landing:${h.landingId}`)),
        );
      }),
      SEED,
    );
  });

  test("has no crossing branches, and says so truly", () => {
    fc.assert(
      fc.property(small, (shape) => {
        const board = layPinboard(inputOf(shape));
        expect(board.crossings).toBe(0);
        expect(crossingsOf(board)).toBe(0);
      }),
      SEED,
    );
  });

  test("has no overlapping holders, and says so truly", () => {
    fc.assert(
      fc.property(small, (shape) => {
        const board = layPinboard(inputOf(shape));
        expect(board.overlaps).toBe(0);
        expect(overlapsOf(board)).toBe(0);
      }),
      SEED,
    );
  });

  test("keeps its margin, is no smaller than its bound, and fits the bench unless a finding says so", () => {
    fc.assert(
      fc.property(small, (shape) => {
        const input = inputOf(shape);
        const board = layPinboard(input);
        for (const p of board.branches.flatMap((b) => b.line)) {
          expect(p.xMm).toBeGreaterThanOrEqual(60 - 1e-6);
          expect(p.yMm).toBeGreaterThanOrEqual(60 - 1e-6);
          expect(p.xMm).toBeLessThanOrEqual(board.widthMm - 60 + 1e-6);
          expect(p.yMm).toBeLessThanOrEqual(board.heightMm - 60 + 1e-6);
        }
        expect(board.area.value).toBe(board.widthMm * board.heightMm);
        expect(board.area.lowerBound).toBeLessThanOrEqual(board.area.value);
        const tooLarge = board.widthMm > HARNESS.board_width_mm || board.heightMm > HARNESS.board_height_mm;
        expect(rules(input).includes("pinboard-too-large")).toBe(tooLarge);
      }),
      SEED,
    );
  });

  test("does not depend on the order of rows", () => {
    fc.assert(
      fc.property(small, fc.nat(1000), (shape, turn) => {
        const input = inputOf(shape);
        const rotated = <T>(list: readonly T[]): readonly T[] => [
          ...list.slice(turn % list.length),
          ...list.slice(0, turn % list.length),
        ];
        const other = {
          ...input,
          nodes: rotated(input.nodes).toReversed(),
          branches: rotated(input.branches).toReversed(),
          holderSizes: new Map([...input.holderSizes].toReversed()),
        };
        expect(layPinboard(other)).toEqual(layPinboard(input));
      }),
      SEED,
    );
  });

  test("laid by settled pegs is the same again, whatever the order of the choices", () => {
    fc.assert(
      fc.property(small, (shape) => {
        const input = inputOf(shape);
        const board = layPinboard(input);
        const pegs = new Map([...settled(board)].toReversed());
        const again = layPinboard({ ...input, pegs });
        expect(again.nodes).toEqual(board.nodes);
        expect(again.branches).toEqual(board.branches);
        expect(again.holders).toEqual(board.holders);
        expect(rules({ ...input, pegs }).filter((r) => r.startsWith("pinboard-peg"))).toEqual([]);
      }),
      SEED,
    );
  });

  test("that is settled moves no peg when a tail is added", () => {
    fc.assert(
      fc.property(small, fc.nat(1000), (shape, pick) => {
        const input = inputOf(shape);
        const board = layPinboard(input);
        const waypoints = input.nodes.filter((n) => n.kind === "waypoint");
        const at = waypoints[pick % waypoints.length];
        if (at === undefined) return;
        const leaf: TreeNode = { ...at, id: "landing:new", kind: "landing", breakout: false };
        const bundle = { ...(input.branches[0]?.bundle ?? NO_BUNDLE), wires: 1 };
        const tail: SizedBranch = {
          id: "tail:new",
          kind: "tail",
          a: at.id,
          b: leaf.id,
          routeMm: 118,
          lengthMm: 120,
          wireIds: ["w.new"],
          bundle,
        };
        const grown = layPinboard({
          ...input,
          nodes: [...input.nodes, leaf],
          branches: [...input.branches, tail],
          pegs: settled(board),
        });
        const places = new Map(grown.nodes.map((n) => [n.id, n.at]));
        for (const node of board.nodes) expect(places.get(node.id)).toEqual(node.at);
        const line = grown.branches.find((b) => b.id === "tail:new")?.line ?? [];
        expect(Math.abs(polylineLength(line) - 120)).toBeLessThan(0.001);
      }),
      SEED,
    );
  });
});

const NO_BUNDLE: SizedBranch["bundle"] = {
  wires: 1,
  packedMm: 1.6,
  lowerBoundMm: 1.6,
  ruleMm: 1.92,
  laidMm: 1.8,
  tieId: null,
  sleeveId: null,
};

describe("usual harnesses", () => {
  test("a comb and a star have no overlaps, no crossings, and room for hands", () => {
    for (const maker of [
      combTree(20, 60, 5),
      combTree(45, 70, 6),
      starTree(6, 450, 4, 7),
      starTree(4, 600, 6, 8),
    ]) {
      const input = maker.input();
      const board = layPinboard(input);
      expect([board.crossings, board.overlaps]).toEqual([0, 0]);
      expect(rules(input)).toEqual([]);
    }
  });

  test("a trunk longer than the bench is folded round bend pegs", () => {
    const board = layPinboard(combTree(45, 70, 6).input());
    expect(board.bendPegs.length).toBeGreaterThanOrEqual(2);
    expect(board.widthMm).toBeLessThanOrEqual(HARNESS.board_width_mm);
    expect(board.heightMm).toBeLessThanOrEqual(HARNESS.board_height_mm);
  });

  test("an underside is drawn mirrored in x: drawing the same from above mirrors it back", () => {
    const input = combTree(8, 80, 3).input();
    const above = {
      ...input,
      nodes: input.nodes.map(
        (n): TreeNode => ({ ...n, place: { ...n.place, side: "top", xMm: -n.place.xMm } }),
      ),
    };
    const { side: _under, ...fromBelow } = layPinboard(input);
    const { side: _top, ...fromAbove } = layPinboard(above);
    expect(fromBelow).toEqual(fromAbove);
    expect(fromBelow.kind).toBe("planar");
  });

  test("a stretch over a hinge is straight and has no ties", () => {
    const maker = new TreeMaker();
    let at = maker.waypoint(0, 0, null);
    maker.landing(at, 270, 100, 6);
    for (let i = 1; i <= 12; i++) {
      at = maker.waypoint(0, i * 250, at, i % 3 === 0 ? "crossing" : "lane");
      maker.landing(at, 0, 90, 3);
      maker.landing(at, 180, 90, 3);
    }
    const board = layPinboard(maker.input());
    const hinges = maker.input().branches.filter((b) => b.kind === "crossing");
    expect(hinges).toHaveLength(4);
    expect(board.bendPegs.length).toBeGreaterThan(0);
    for (const hinge of hinges) {
      const branch = board.branches.find((b) => b.id === hinge.id);
      expect(branch?.line).toHaveLength(2);
      expect(branch?.tiesMm).toEqual([]);
    }
  });

  test("ties stand on both sides of every breakout and no further apart than the spacing", () => {
    const input = combTree(6, 200, 9).input();
    const board = layPinboard(input);
    const lane = board.branches.find(
      (b) => b.id.startsWith("l") && b.lengthMm === 200 && b.tiesMm.length > 0,
    );
    expect(lane?.tiesMm).toEqual([15, 71.7, 128.3, 185]);
  });
});

describe("crowded harnesses", () => {
  test("branches do not cross even where nothing else fits", () => {
    for (const seed of [5, 7]) {
      const board = layPinboard(randomTree(80, seed).input());
      expect([board.crossings, crossingsOf(board)]).toEqual([0, 0]);
    }
  });

  test("a layout in cones never crosses, before or after it is improved", () => {
    const bench = { widthMm: 2280, heightMm: 780, origin: null };
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 60 }), fc.nat(100_000), (landings, seed) => {
        const tree = boardTree(randomTree(landings, seed).input());
        const drawing = drawingOf(tree, layInCones(tree, bench, 40));
        expect(measure(itemsOf(tree, drawing), 40).crossings).toEqual([]);
      }),
      { seed: 77, numRuns: 20 },
    );
  });

  test("the work grows with the limbs: counted steps, not seconds", () => {
    const bench = { widthMm: 6000, heightMm: 2000, origin: null };
    for (const teeth of [10, 40, 90]) {
      const tree = boardTree(combTree(teeth, 60, 1).input());
      const layout = unfold({ tree, bench, handRoomMm: 40, chosenDeg: new Map() });
      expect(layout.steps / layout.limbs.length).toBeLessThan(250);
    }
  });
});

test("an empty harness has an empty board", () => {
  const board = layPinboard({ ...combTree(2, 50, 1).input(), nodes: [], branches: [] });
  expect([board.nodes.length, board.branches.length, board.crossings, board.overlaps]).toEqual([0, 0, 0, 0]);
});
