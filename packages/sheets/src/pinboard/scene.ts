import type { HarnessResult, LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { bodyHash } from "../compose/body-hash.ts";
import { at, box, LINE, rect, stroke, TEXT } from "../compose/draw.ts";
import { type Balloon, type LabelRequest, placeLabels } from "../compose/label-placer.ts";
import type { Box, Mark, PagePoint } from "../compose/mark.ts";
import type { Obstacle } from "../compose/obstacle.ts";
import { type Cuttable, cuttable } from "../drawing/window.ts";
import { type BranchDrawing, drawBranch } from "./branch.ts";
import { type DimensionDrawing, drawDimension } from "./dimension.ts";
import { drawHolder, type HolderDrawing, holderLabel } from "./holder.ts";
import { pegMarks } from "./peg.ts";
import { type Run, runsOf } from "./run.ts";

export interface SceneOptions {
  readonly language: SheetLanguage;
  /** Hole that a peg stands in. Common practice, no source. */
  readonly pegHoleMm: number;
}

/**
 * A pinboard as marks: origin at the upper left corner of the board, true to scale. What tiles, roll and DXF are
 * cut from.
 */
export interface Scene {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marks: readonly Mark[];
  /** The marks as windows look at them. */
  readonly cuttable: readonly Cuttable[];
  /** Body hash of the marks. */
  readonly hash: string;
  readonly balloons: readonly Balloon[];
  readonly branches: readonly BranchDrawing[];
  readonly holders: readonly HolderDrawing[];
  readonly pegs: readonly PagePoint[];
}

/** Draws the pinboard of one harness. Labels never overlap; those without room come back as balloons. */
export function drawScene(line: LineResult, harness: HarnessResult, options: SceneOptions): Scene {
  const { pinboard } = harness;
  const toPage = (p: { readonly xMm: number; readonly yMm: number }): PagePoint =>
    at(p.xMm, pinboard.heightMm - p.yMm);
  const sized = new Map(harness.branches.map((b) => [b.id, b]));
  const branches = pinboard.branches.map((b) => drawBranch(b, b.line.map(toPage), sized.get(b.id)));
  const holders = pinboard.holders.map((h) => drawHolder(line.machine, h, toPage(h.at)));
  const places = new Map(pinboard.nodes.map((n) => [n.id, toPage(n.at)]));
  const solid: Obstacle[] = [
    ...branches.flatMap((b) => b.obstacles),
    ...holders.map((h): Obstacle => ({ kind: "box", box: h.box })),
  ];
  const dimensions = dimensionRuns(runsOf(harness, branches, places), solid);
  const pegs = [
    ...pinboard.nodes.filter((n) => n.peg).map((n) => toPage(n.at)),
    ...pinboard.bendPegs.map(toPage),
  ];
  const obstacles: Obstacle[] = [
    ...solid,
    ...dimensions.flatMap((d) => d.obstacles),
    ...pegs.map((p): Obstacle => ({ kind: "stretch", a: p, b: p, halfMm: options.pegHoleMm })),
  ];
  const bounds: Box = box(0, 0, pinboard.widthMm, pinboard.heightMm);
  const requests: LabelRequest[] = [
    ...holders.map((h) => holderLabel(h, options.language)),
    ...dimensions.map((d) => d.label),
    ...spliceLabels(harness, toPage),
  ];
  const labels = placeLabels(requests, obstacles, [], bounds);
  const { widthMm, heightMm } = pinboard;
  const marks: Mark[] = [
    rect(box(0, 0, widthMm, heightMm), stroke("ink", LINE.medium)),
    ...branches.map((b) => b.edge),
    ...branches.map((b) => b.ground),
    ...branches.flatMap((b) => b.marks),
    ...dimensions.flatMap((d) => d.marks),
    ...holders.flatMap((h) => h.marks),
    ...pegs.flatMap((p) => pegMarks(p, options.pegHoleMm)),
    ...spliceMarks(harness, toPage),
    ...labels.marks,
  ];
  return {
    widthMm,
    heightMm,
    marks,
    cuttable: cuttable(marks),
    hash: bodyHash([{ widthMm, heightMm, marks }]),
    balloons: labels.balloons,
    branches,
    holders,
    pegs,
  };
}

/** Dimensions one after the other: each keeps off the dimension lines before it. */
function dimensionRuns(runs: readonly Run[], solid: readonly Obstacle[]): readonly DimensionDrawing[] {
  const taken = [...solid];
  return runs.map((run) => {
    const drawing = drawDimension(run, taken);
    taken.push(...drawing.obstacles);
    return drawing;
  });
}

function splicePlaces(
  harness: HarnessResult,
  toPage: (p: { readonly xMm: number; readonly yMm: number }) => PagePoint,
): { readonly id: string; readonly at: PagePoint }[] {
  const nodes = new Map(harness.pinboard.nodes.map((n) => [n.id, n.at]));
  return harness.splices.flatMap((s) => {
    const node = nodes.get(harness.route.spliceAt.get(s.id) ?? "");
    return node === undefined ? [] : [{ id: s.id, at: toPage(node) }];
  });
}

/** A splice: a diamond at its node. */
function spliceMarks(
  harness: HarnessResult,
  toPage: (p: { readonly xMm: number; readonly yMm: number }) => PagePoint,
): Mark[] {
  return splicePlaces(harness, toPage).map(({ at: p }) => ({
    kind: "polygon",
    points: [at(p.xMm - 3, p.yMm), at(p.xMm, p.yMm - 3), at(p.xMm + 3, p.yMm), at(p.xMm, p.yMm + 3)],
    stroke: stroke("ink", LINE.medium),
    fill: "paper",
    layer: "TIES",
  }));
}

function spliceLabels(
  harness: HarnessResult,
  toPage: (p: { readonly xMm: number; readonly yMm: number }) => PagePoint,
): LabelRequest[] {
  return splicePlaces(harness, toPage).map(({ id, at: p }) => ({
    id,
    lines: [{ text: id, heightMm: TEXT.small }],
    target: p,
    places: ({ widthMm, heightMm }) => [
      { middle: at(p.xMm + 5 + widthMm / 2, p.yMm - 5 - heightMm / 2), turnDeg: 0, cost: 1 },
      { middle: at(p.xMm - 5 - widthMm / 2, p.yMm - 5 - heightMm / 2), turnDeg: 0, cost: 1 },
      { middle: at(p.xMm + 5 + widthMm / 2, p.yMm + 5 + heightMm / 2), turnDeg: 0, cost: 1 },
      { middle: at(p.xMm - 5 - widthMm / 2, p.yMm + 5 + heightMm / 2), turnDeg: 0, cost: 1 },
    ],
    layer: "TEXT",
  }));
}
