import type { BoxMm, PointMm } from "@pinwright/kernel";
import type { Item } from "./item.ts";
import type { Limb } from "./limb.ts";
import type { Leg } from "./placing.ts";
import type { BoardTree } from "./tree.ts";

/** What is laid first and never moved by the search: a trunk, the root alone, or pegs that are held. */
export interface Base {
  readonly nodeAt: ReadonlyMap<number, PointMm>;
  /** Direction in which the base runs at each of its nodes. */
  readonly directionAt: ReadonlyMap<number, number>;
  /** Lines of its branches, and the node that each is drawn from. */
  readonly lineOf: ReadonlyMap<number, { readonly from: number; readonly line: readonly PointMm[] }>;
  readonly items: readonly Item[];
  readonly box: BoxMm;
  /** It is made of pegs that are held, so its lines may end at any node. */
  readonly isHeld: boolean;
}

/** One way of laying a limb, with what a builder would give not to have it that way. */
export interface Candidate {
  readonly legs: readonly Leg[];
  readonly dislike: number;
  /** Direction on the board that a person chose for its start, in place of the first turn. */
  readonly fixedDeg?: number;
}

/** The room that there is: fixed in place when the base holds pegs, else only as large as this. */
export interface Bench {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Lower left corner when the base is fixed to the board; null when the layout may still be moved. */
  readonly origin: PointMm | null;
}

export interface LayoutTask {
  readonly tree: BoardTree;
  readonly base: Base;
  readonly limbs: readonly Limb[];
  readonly candidates: (limb: number) => readonly Candidate[];
  readonly bench: Bench;
  readonly handRoomMm: number;
}
