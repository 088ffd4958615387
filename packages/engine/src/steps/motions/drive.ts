import { boxOf, compareText, type OrderEffort, shortestPathOrder } from "@pinwright/kernel";
import type { FastenerItem } from "../../model/index.ts";
import { patchesOf } from "../derive/split.ts";

/** A fastener with what it is driven by. */
export interface Drive {
  readonly fastener: FastenerItem;
  /** Tool of the shop, else the drive itself. */
  readonly bit: string;
  /** Tool that holds its nut; blank: none. */
  readonly nutTool: string;
  /** How many things of the same step must be in place before: those of a lower layer are driven first. */
  readonly layer: number;
}

/** Fasteners in the order in which they are driven. */
export interface Driven {
  readonly fastenerIds: readonly string[];
  /** Bits and boxes in the order of use, repeats beside each other once. */
  readonly bits: readonly string[];
  readonly boxes: readonly string[];
  /** Way of the hand from the first to the last, in the passes that it takes, in mm. */
  readonly walkMm: number;
}

/**
 * A hand that walks a step: exact up to 8 holes of a box, else insertion, 2-opt and Or-opt without kicks or a bound.
 * Ten kicks for each hole would take 20 times as long and save up to 6 % of a walk over random holes: half a second.
 */
const WALK: OrderEffort = { kicksPerNode: 0, boundSteps: 0, exactNodes: 8 };

/** Holes that are walked as one; more are walked in patches of so many. */
const ONE_WALK = 30;
const PATCH = 12;
const NO_BOX = { minXMm: 0, minYMm: 0, maxXMm: 0, maxYMm: 0 };

/** Bits and boxes that one pass over some fasteners takes. */
interface Pass {
  readonly drives: readonly Drive[];
  readonly bits: readonly string[];
  readonly boxes: readonly string[];
  readonly walkMm: number;
}

/**
 * The order in which the fasteners of a step are driven: layer by layer, in each the same bit together, in each bit the
 * same box, and in each box the shortest walk of the hand from where it is; at first from the corner nearest to the
 * builder's left hand. So changes are fewest first, then the walk is short. What is started loose is gone over once
 * more, the last first, when everything stands: the bits are used in turned order then, and the first change is saved.
 */
export function driveOrder(drives: readonly Drive[]): Driven {
  const first = passOf(drives);
  const again = first.drives.filter(({ fastener }) => isGoneOver(fastener)).reverse();
  const bits = [...first.bits];
  for (const { bit } of again) if (bits.at(-1) !== bit) bits.push(bit);
  const back = lengthOf([...first.drives.slice(-1), ...again]);
  return {
    fastenerIds: first.drives.map(({ fastener }) => fastener.id),
    bits,
    boxes: first.boxes,
    walkMm: Math.round(first.walkMm + back),
  };
}

/** Started loose, and driven home only when all are. */
const isGoneOver = ({ moments }: FastenerItem): boolean =>
  moments.includes("start") && moments.includes("tighten");

/** The same in one pass, whatever the moments of the fasteners. */
export function driveOrderOnce(drives: readonly Drive[]): Driven {
  const { drives: order, bits, boxes, walkMm } = passOf(drives);
  return { fastenerIds: order.map(({ fastener }) => fastener.id), bits, boxes, walkMm: Math.round(walkMm) };
}

function passOf(drives: readonly Drive[]): Pass {
  const order: Drive[] = [];
  const layers = [...new Set(drives.map(({ layer }) => layer))].sort((a, b) => a - b);
  for (const layer of layers) {
    const own = drives.filter((drive) => drive.layer === layer);
    for (const bit of begunWith(order.at(-1)?.bit, bitsOf(own))) {
      const alike = own.filter((drive) => drive.bit === bit);
      const types = [...new Set(alike.map(({ fastener }) => fastener.type.id))].sort(compareText);
      for (const type of begunWith(order.at(-1)?.fastener.type.id, types))
        order.push(
          ...walked(
            alike.filter(({ fastener }) => fastener.type.id === type),
            order.at(-1),
          ),
        );
    }
  }
  const bits: string[] = [];
  const boxes: string[] = [];
  for (const { bit, fastener } of order) {
    if (bits.at(-1) !== bit) bits.push(bit);
    if (boxes.at(-1) !== fastener.type.id) boxes.push(fastener.type.id);
  }
  return { drives: order, bits, boxes, walkMm: lengthOf(order) };
}

/** Bits in code-point order, those of what is gone over again last: the second pass begins with them. */
function bitsOf(drives: readonly Drive[]): readonly string[] {
  const again = new Set(drives.filter(({ fastener }) => isGoneOver(fastener)).map(({ bit }) => bit));
  return [...new Set(drives.map(({ bit }) => bit))].sort(
    (a, b) => Number(again.has(a)) - Number(again.has(b)) || compareText(a, b),
  );
}

/** The same names beginning with the one at hand, if it is among them. */
const begunWith = (first: string | undefined, names: readonly string[]): readonly string[] =>
  first === undefined || !names.includes(first) ? names : [first, ...names.filter((name) => name !== first)];

const apart = (a: FastenerItem, b: FastenerItem): number =>
  Math.hypot(a.place.xMm - b.place.xMm, a.place.yMm - b.place.yMm);

/**
 * The shortest walk over these from the one nearest to where the hand is; over more than one card holds, patch by patch.
 */
function walked(drives: readonly Drive[], from: Drive | undefined): readonly Drive[] {
  if (drives.length <= ONE_WALK) return walkedPatch(drives, from);
  const byId = new Map(drives.map((drive) => [drive.fastener.id, drive]));
  const spots = drives.map(({ fastener: { id, place } }) => ({ id, ...place, weight: 1 }));
  const order: Drive[] = [];
  for (const { ids } of patchesOf(spots, boxOf(spots) ?? NO_BOX, PATCH))
    order.push(
      ...walkedPatch(
        ids.flatMap((id) => byId.get(id) ?? []),
        order.at(-1) ?? from,
      ),
    );
  return order;
}

function walkedPatch(drives: readonly Drive[], from: Drive | undefined): readonly Drive[] {
  const sorted = [...drives].sort((a, b) => compareText(a.fastener.id, b.fastener.id));
  if (sorted.length < 2) return sorted;
  const nearness = ({ fastener }: Drive): number =>
    from === undefined ? fastener.place.yMm + fastener.place.xMm : apart(from.fastener, fastener);
  let start = 0;
  sorted.forEach((drive, i) => {
    const best = sorted[start];
    if (best !== undefined && nearness(drive) < nearness(best)) start = i;
  });
  const matrix = sorted.map((a) => sorted.map((b) => apart(a.fastener, b.fastener)));
  return shortestPathOrder(matrix, start, undefined, WALK).order.flatMap((i) => sorted[i] ?? []);
}

function lengthOf(drives: readonly Drive[]): number {
  let sum = 0;
  drives.forEach(({ fastener }, i) => {
    const last = drives[i - 1];
    if (last !== undefined) sum += apart(last.fastener, fastener);
  });
  return sum;
}
