import type { HarnessResult, LineResult } from "@pinwright/engine";
import { beforeAll, describe, expect, test } from "vitest";
import { leavesOf, type PlacedLeaf } from "../compose/leaves.ts";
import type { Leaf, PagePoint } from "../compose/mark.ts";
import { PAPERS } from "../compose/paper.ts";
import { along, lengthOf } from "../compose/plane.ts";
import { tileWindow } from "../drawing/tiled.ts";
import { tileBoard } from "../drawing/tiling.ts";
import { cuttable } from "../drawing/window.ts";
import { exampleLine, OPTIONS } from "../testing/first-light.ts";
import { drawScene, type Scene } from "./scene.ts";
import { composePinboardTiles } from "./tiles.ts";

let line: LineResult;
beforeAll(async () => {
  line = await exampleLine("first-light");
});

/** Places on a mark, a few millimetres apart; of a text and of solid marks the anchor alone. */
function places(leaf: Leaf): readonly PagePoint[] {
  const onLine = (points: readonly PagePoint[]): PagePoint[] => {
    const total = lengthOf(points);
    const count = Math.max(1, Math.ceil(total / 3));
    return Array.from({ length: count + 1 }, (_, i) => along(points, (total * i) / count).at);
  };
  switch (leaf.kind) {
    case "line":
      return onLine([leaf.from, leaf.to]);
    case "polyline":
      return onLine(leaf.points);
    case "polygon":
      return leaf.points;
    case "area":
      return leaf.rings.flat();
    case "rect":
      return [];
    default:
      return [leaf.at];
  }
}

/** A mark in the coordinates of the board, to a micrometre, as text that can be compared. */
function keyOf(leaf: Leaf, dx: number, dy: number): string {
  const moved = JSON.stringify(leaf, (key, value: unknown) => {
    if (typeof value !== "number") return value;
    const shift = key === "xMm" ? dx : key === "yMm" ? dy : 0;
    return Math.round((value - shift) * 1000) / 1000 + 0;
  });
  return moved;
}

describe.each(["a3", "a4"] as const)("%s tiles", (size) => {
  const window = tileWindow(size === "a3" ? PAPERS["a3-landscape"] : PAPERS["a4-landscape"]);

  function tilesOf(harness: HarnessResult): {
    scene: Scene;
    shown: { leaf: Leaf; at: PlacedLeaf["clip"]; key: string }[][];
    windows: { xMm: number; yMm: number }[];
  } {
    const scene = drawScene(line, harness, OPTIONS);
    const document = composePinboardTiles(line, harness, scene, size, OPTIONS);
    const tiling = tileBoard(scene, window, 10, cuttable(scene.marks));
    const printed = tiling.tiles.filter((t) => t.printed);
    const pages = document.pages.slice(document.pages.length - printed.length);
    return {
      scene,
      windows: printed.map((t) => t.window),
      shown: pages.map((page, i) => {
        const tile = printed[i];
        const dx = window.xMm - (tile?.window.xMm ?? 0);
        const dy = window.yMm - (tile?.window.yMm ?? 0);
        return leavesOf(page.marks)
          .filter((p) => p.clip !== null)
          .map((p) => ({ leaf: p.leaf, at: p.clip, key: keyOf(p.leaf, dx, dy) }));
      }),
    };
  }

  test("put together they give the roll: every place of every mark lies on a tile that draws it there", () => {
    for (const harness of line.harnesses.values()) {
      const { scene, shown, windows } = tilesOf(harness);
      const keys = shown.map((marks) => new Set(marks.map((m) => m.key)));
      for (const { leaf } of leavesOf(scene.marks)) {
        const key = keyOf(leaf, 0, 0);
        for (const p of places(leaf)) {
          const found = windows.some(
            (w, i) =>
              p.xMm >= w.xMm &&
              p.xMm <= w.xMm + window.widthMm &&
              p.yMm >= w.yMm &&
              p.yMm <= w.yMm + window.heightMm &&
              keys[i]?.has(key),
          );
          expect(found, `${harness.harness.id}: ${key} at ${p.xMm}, ${p.yMm}`).toBe(true);
        }
      }
    }
  });

  test("all that a tile shows of the drawing stands on the roll, but for the marks of its seams", () => {
    for (const harness of line.harnesses.values()) {
      const { scene, shown } = tilesOf(harness);
      const roll = new Set(leavesOf(scene.marks).map(({ leaf }) => keyOf(leaf, 0, 0)));
      for (const marks of shown) {
        for (const { leaf, key } of marks) if (leaf.layer !== "BORDER") expect(roll.has(key)).toBe(true);
      }
    }
  });
});
